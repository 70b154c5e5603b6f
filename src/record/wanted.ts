/** Which records an export holds: by day of finding, by status, by place. */
import {areasAt} from '../key/coast.ts';
import {distanceM} from '../place/distance.ts';
import {type Degrees, toGrid} from '../place/grid.ts';
import type {GridSquare} from '../place/grid-square.ts';
import {type RecordForExport, type Status, statusOf} from './for-export.ts';
import type {ToldRecord} from './told.ts';

/** A part of the map: round a point, in a grid square, or in an area of a region's key. */
export type Around =
	| {readonly kind: 'circle'; readonly centre: Degrees; readonly radiusM: number}
	| {readonly kind: 'square'; readonly square: GridSquare}
	| {readonly kind: 'area'; readonly area: string};

/** What is wanted; days are ISO 8601 and both belong to it. What is absent does not narrow. */
export type Wanted = {
	readonly from?: string | undefined;
	readonly to?: string | undefined;
	readonly statuses: readonly Status[];
	readonly around?: Around | undefined;
};

/** Whether a record is wanted by its day and status. */
export function isWanted(record: RecordForExport, {from, to, statuses}: Wanted): boolean {
	const day = record.draft.foundOn;
	return (
		(from === undefined || day >= from) &&
		(to === undefined || day <= to) &&
		statuses.includes(statusOf(record))
	);
}

/**
 * Whether a record lies there, by its point as told: a filter by the true place would tell where a hidden one is. A
 * record without a point lies nowhere.
 */
export function isAround({point, region}: Pick<ToldRecord, 'point' | 'region'>, around: Around): boolean {
	if (!point) return false;
	switch (around.kind) {
		case 'circle':
			return distanceM(point, around.centre) <= around.radiusM;
		case 'square': {
			const {grid, corner, sideM} = around.square;
			const {east, north} = toGrid(grid, point);
			const isInside = (value: number, edge: number) => value >= edge && value < edge + sideM;
			return isInside(east, corner.east) && isInside(north, corner.north);
		}
		case 'area':
			return areasAt(region.key, point).includes(around.area);
		default:
			return never(around);
	}
}

function never(value: never): never {
	throw new Error(`Expected a circle, a square or an area; got ${JSON.stringify(value)}`);
}
