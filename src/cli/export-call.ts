/** A call of `npm run export`, read and checked before anything is opened. */
import {parseArgs} from 'node:util';
import {z} from 'zod';
import {readSquare} from '../place/grid-square.ts';
import {gridSystem, readPlace} from '../place/place.ts';
import {type Status, statuses} from '../record/for-export.ts';
import type {Around, Wanted} from '../record/wanted.ts';

/** What `export --help` says. */
export const exportHelp = `npm run export -- --format FORMAT --out FILE

Writes the saved records to FILE, in place of what was there. Nothing that was deleted is in it.

  --format archive   a Darwin Core Archive: a zip of tables with their description
  --format csv       one table for a spreadsheet
  --format geojson   points for a map
  --format totals    a season in numbers: by kind, place, month and status, as JSON

  --from DAY         found on this day or later, such as 2026-05-02
  --to DAY           found on this day or before
  --status LIST      one or more of ${statuses.join(', ')},
                     with commas; without it all but not-an-egg-case
  --near PLACE       in this grid square ("SW 46 30"), or with --within round this place
  --within DISTANCE  500m or 5km
  --area NAME        in this area of a region's key, such as channel
  --with-photos      puts the photos into the archive, under media/
  --exact            shows every place as it is known: for your own work, never to be published

Places that a finder or a law wants hidden are told as a square, unless --exact is given; --near and
--area go by the place as told. Places that have only a name are in no square and no area.
What is said of the data as a whole stands in DATASET_FILE. Which database: DATABASE_URL or DATA_DIR,
as for the program.

Leaves with 0 when FILE is written, 1 when it is not, 2 when called wrongly.`;

/** Every form an export can have. */
export const formats = ['archive', 'csv', 'geojson', 'totals'] as const;

/** A call that can be carried out. */
export type ExportCall = {
	readonly format: (typeof formats)[number];
	readonly out: string;
	readonly wanted: Wanted;
	readonly withPhotos: boolean;
	readonly isExact: boolean;
};

const options = {
	help: {type: 'boolean', short: 'h'},
	format: {type: 'string'},
	out: {type: 'string'},
	from: {type: 'string'},
	to: {type: 'string'},
	status: {type: 'string'},
	near: {type: 'string'},
	within: {type: 'string'},
	area: {type: 'string'},
	'with-photos': {type: 'boolean'},
	exact: {type: 'boolean'},
} as const;

/** Reads a call; throws an Error that says what was expected and what came. `help` when that was asked for. */
export function readExportCall(args: readonly string[]): ExportCall | 'help' {
	const {values} = parseArgs({args: [...args], options});
	if (values.help) return 'help';
	const format = formats.find(known => known === values.format);
	if (!format)
		throw new Error(`Expected --format with one of ${formats.join(', ')}; got ${told(values.format)}`);
	if (values.out === undefined || values.out === '')
		throw new Error('Expected --out with the file to write; got none');
	const withPhotos = values['with-photos'] === true;
	if (withPhotos && format !== 'archive')
		throw new Error(`Expected --with-photos with --format archive; got --format ${format}`);
	const [from, to] = [dayFrom('--from', values.from), dayFrom('--to', values.to)];
	if (from !== undefined && to !== undefined && from > to)
		throw new Error(`Expected --from before --to; got ${from} and ${to}`);
	return {
		format,
		out: values.out,
		wanted: {from, to, statuses: statusesFrom(values.status), around: aroundFrom(values)},
		withPhotos,
		isExact: values.exact === true,
	};
}

function dayFrom(option: string, text: string | undefined): string | undefined {
	if (text === undefined || z.iso.date().safeParse(text).success) return text;
	throw new Error(`Expected ${option} with a day such as 2026-05-02; got "${text}"`);
}

function statusesFrom(text: string | undefined): readonly Status[] {
	if (text === undefined) return statuses.filter(status => status !== 'not-an-egg-case');
	return text.split(',').map(word => {
		const status = statuses.find(known => known === word.trim());
		if (status) return status;
		throw new Error(`Expected --status with any of ${statuses.join(', ')}; got "${word.trim()}"`);
	});
}

function aroundFrom(values: {
	readonly near?: string | undefined;
	readonly within?: string | undefined;
	readonly area?: string | undefined;
}): Around | undefined {
	const {near, within, area} = values;
	if (area !== undefined) {
		if (near === undefined && within === undefined) return {kind: 'area', area};
		throw new Error('Expected --area alone or --near; got both');
	}
	if (near === undefined) {
		if (within === undefined) return undefined;
		throw new Error('Expected --near beside --within; got none');
	}
	const read = readPlace(near);
	if (read.kind !== 'place' || read.place.kind === 'named')
		throw new Error(`Expected --near with a grid reference or coordinates; got "${near}"`);
	if (within !== undefined) return {kind: 'circle', centre: read.place, radiusM: metresFrom(within)};
	const square = gridSystem(read.place.system) && readSquare(near);
	if (square?.kind === 'square') return {kind: 'square', square: square.square};
	throw new Error(`Expected --within beside coordinates, such as --within 5km; got --near "${near}" alone`);
}

function metresFrom(text: string): number {
	const [, figure, unit] = /^(\d+(?:\.\d+)?) ?(m|km)$/i.exec(text.trim()) ?? [];
	const metres = Number(figure) * (unit?.toLowerCase() === 'km' ? 1000 : 1);
	if (metres > 0) return metres;
	throw new Error(`Expected --within with a distance such as 500m or 5km; got "${text}"`);
}

function told(text: string | undefined): string {
	return text === undefined ? 'none' : `"${text}"`;
}
