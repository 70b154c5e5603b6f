/** Sizes read from one photo, made ready for its find. */
import {type PhotoReading, type ReadCase, type ReadSize, readingFrom} from '../capsule/reading.ts';
import type {MeasuredPhoto, Proposal, TrayCase} from '../find/proposal.ts';
import type {Measurer} from './measurer.ts';

type Pixels = readonly [number, number];

/** What to hide in the photo before it is kept, and what its find hears once it is. */
export type PhotoSizes = {
	readonly hidden?: readonly Pixels[] | undefined;
	readonly outcome: (kept: {readonly photo: number; readonly hash: string}) => MeasuredPhoto;
};

/** Reads sizes; a measurer that fails is an answer too, so that nobody waits for ever. */
export async function readSizes(
	{measure, log}: {measure: Measurer['measure']; log: (line: Readonly<Record<string, unknown>>) => void},
	{photo, bytes}: {readonly photo: number; readonly bytes: Uint8Array},
): Promise<PhotoSizes> {
	try {
		const reading = readingFrom(await measure(bytes));
		return {hidden: reading.hidden, outcome: kept => outcomeOf(reading, kept)};
	} catch (error) {
		log({level: 'error', what: 'photo not measured', photo, error: String(error)});
		return {outcome: () => ({kind: 'declined', why: 'failed'})};
	}
}

function outcomeOf(
	reading: PhotoReading,
	kept: {readonly photo: number; readonly hash: string},
): MeasuredPhoto {
	if (reading.kind === 'declined') {
		const {why, aboutMm} = reading;
		return {kind: 'declined', why, ...(aboutMm ? {aboutMm} : {})};
	}
	const {reference, unsure} = reading;
	const on = {...kept, reference, ...(unsure.length > 0 ? {unsure: unsure.map(wholePoint)} : {})};
	if (reading.kind === 'several') {
		const {cases, sheet} = reading;
		const lying = sheet ? {sheet: sheet.map(wholePoint)} : {};
		return {kind: 'tray', tray: {...on, ...lying, cases: inReadingOrder(cases).map(trayCase)}};
	}
	const {lengths, width, outline} = reading;
	const sizes = {lengths: lengths.map(whole), ...(width ? {width: whole(width)} : {})};
	return {
		kind: 'proposed',
		proposal: {...on, ...sizes, ...(outline ? {outline: outline.map(wholePoint)} : {})},
	};
}

/** Numbered as people read: row by row, a row being as high as half a case is long. */
function inReadingOrder(cases: readonly ReadCase[]): readonly ReadCase[] {
	const placed = cases.map(one => {
		const [[x1, y1], [x2, y2]] = one.length.line;
		return {one, x: (x1 + x2) / 2, y: (y1 + y2) / 2, long: Math.hypot(x2 - x1, y2 - y1)};
	});
	const rowPx = Math.min(...placed.map(({long}) => long)) / 2;
	let rows: (typeof placed)[] = [];
	for (const spot of placed.toSorted((one, other) => one.y - other.y)) {
		const row = rows.at(-1);
		const isSameRow = row !== undefined && spot.y - (row[0]?.y ?? 0) <= rowPx;
		rows = isSameRow ? [...rows.slice(0, -1), [...row, spot]] : [...rows, [spot]];
	}
	return rows.flatMap(row => row.toSorted((one, other) => one.x - other.x).map(({one}) => one));
}

function trayCase({length, width, outline, shape}: ReadCase, index: number): TrayCase {
	return {
		number: index + 1,
		length: whole(length),
		...(width ? {width: whole(width)} : {}),
		...(outline ? {outline: outline.map(wholePoint)} : {}),
		...(shape ? {shape} : {}),
	};
}

type Size = Proposal['lengths'][number];

function whole({mm, uncertaintyMm, line: [from, to]}: ReadSize): Size {
	return {mm, uncertaintyMm, line: [wholePoint(from), wholePoint(to)]};
}

function wholePoint([x, y]: Pixels): [number, number] {
	return [Math.round(x), Math.round(y)];
}
