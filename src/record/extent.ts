/** What a run of records spans: how many, from which day to which, and the box round their points. */
import type {ToldRecord} from './told.ts';

/** The span of records; days are ISO 8601, the box WGS 84 degrees, the last change UTC milliseconds. */
export type Extent = {
	readonly records: number;
	readonly firstDay?: string;
	readonly lastDay?: string;
	readonly box?: {
		readonly west: number;
		readonly east: number;
		readonly south: number;
		readonly north: number;
	};
	readonly lastChange?: number;
};

/** The span of no record at all. */
export const nothingYet: Extent = {records: 0};

/** The span of all records so far and one more. */
export function extended(extent: Extent, {day, point, changedAt}: ToldRecord): Extent {
	const {firstDay = day, lastDay = day, lastChange = changedAt} = extent;
	const box = boxed(extent.box, point);
	return {
		records: extent.records + 1,
		firstDay: day < firstDay ? day : firstDay,
		lastDay: day > lastDay ? day : lastDay,
		...(box ? {box} : {}),
		lastChange: Math.max(lastChange, changedAt),
	};
}

function boxed(box: Extent['box'], point: ToldRecord['point']): Extent['box'] {
	if (!point) return box;
	const {latitude, longitude} = point;
	const {west, east, south, north} = box ?? {
		west: longitude,
		east: longitude,
		south: latitude,
		north: latitude,
	};
	return {
		west: Math.min(west, longitude),
		east: Math.max(east, longitude),
		south: Math.min(south, latitude),
		north: Math.max(north, latitude),
	};
}
