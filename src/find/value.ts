/** Written words read as values, each with how the closed question shows it. */
import {type LengthUnit, readLength} from '../capsule/length.ts';
import {type Place, readPlace, type Spot} from '../place/place.ts';
import {localDate, readDate} from './date.ts';
import type {Line} from './question.ts';
import type {Answer} from './trail.ts';

/** An answer and how the closed question shows it, or a sentence of help. */
export type Heard =
	| {readonly kind: 'answer'; readonly answer: Answer; readonly chosen: Line}
	| {readonly kind: 'help'; readonly help: Line};

/** When something came in: UTC milliseconds, and the zone of the person. */
export type Moment = {readonly now: number; readonly zone: string};

const longestNote = 500;
const mostAlike = 999;

/** Reads a size; a bare number that fits several units is kept until the unit is known. */
export function hearSize(
	possibleMm: readonly [number, number],
	text: string,
	unit: LengthUnit | undefined,
): Heard {
	const read = readLength(text, {possibleMm, unit});
	switch (read.kind) {
		case 'length':
			return {
				kind: 'answer',
				answer: {kind: 'sized', length: read.length},
				chosen: {
					message: 'chosen-length',
					values: {mm: read.length.mm, plusMinus: read.length.uncertaintyMm},
				},
			};
		case 'which-unit':
			return {
				kind: 'answer',
				answer: {kind: 'number', typed: read.typed, units: [...read.units]},
				chosen: {message: 'chosen-text', values: {text: read.typed}},
			};
		case 'refused':
			return help(`help-length-${read.why}`, {
				typed: read.typed,
				mm: read.mm === undefined ? '' : String(read.mm),
				least: possibleMm[0],
				most: possibleMm[1],
			});
	}
}

/** Reads a place as people write it. */
export function hearPlace(text: string): Heard {
	const read = readPlace(text);
	return read.kind === 'place'
		? answerPlace(read.place)
		: help(`help-place-${read.why}`, {heard: read.heard});
}

/** Takes a place, however it came. */
export function answerPlace(place: Place): Heard {
	const shown: Line =
		place.kind === 'named'
			? {message: 'chosen-text', values: {text: place.name}}
			: {message: 'chosen-spot', values: spotShown(place)};
	return {kind: 'answer', answer: {kind: 'place', place}, chosen: shown};
}

/** A spot as a sentence shows it: as it was written, else in degrees, with its radius in metres. */
export function spotShown(spot: Spot) {
	return {at: spot.verbatim ?? spotInDegrees(spot), uncertainty: spot.uncertaintyM};
}

function spotInDegrees(spot: {latitude: number; longitude: number}): string {
	return `${spot.latitude.toFixed(4)}, ${spot.longitude.toFixed(4)}`;
}

/** Reads a day, never one to come. */
export function hearDate(text: string, {now, zone}: Moment): Heard {
	const read = readDate(text, localDate(now, zone));
	if (read.kind === 'refused') return help(`help-date-${read.why}`, {heard: read.heard});
	return {
		kind: 'answer',
		answer: {kind: 'date', date: read.date},
		chosen: {message: 'chosen-date', values: {date: read.date}},
	};
}

/** Reads how many alike. */
export function hearCount(text: string): Heard {
	const match = /^(?:about\s+|~\s*)?(\d{1,6})$/i.exec(text.trim());
	const count = Number(match?.[1] ?? '');
	if (!match || count < 1) return help('help-count');
	if (count > mostAlike) return help('help-count-many', {most: mostAlike});
	return {
		kind: 'answer',
		answer: {kind: 'count', count},
		chosen: {message: 'option-count', values: {count: String(count)}},
	};
}

/** Reads the finder's own words. */
export function hearNote(text: string): Heard {
	const note = text.trim();
	if (note.length === 0 || note.length > longestNote) return help('help-note', {most: longestNote});
	return {
		kind: 'answer',
		answer: {kind: 'note', text: note},
		chosen: {message: 'chosen-text', values: {text: note}},
	};
}

/** A sentence of help: what to do here, and nothing is lost. */
export function help(message: string, values?: Line['values']): Heard {
	return {kind: 'help', help: values ? {message, values} : {message}};
}
