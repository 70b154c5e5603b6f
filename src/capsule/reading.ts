/** What one photo has to say to one find. */
import type {Interval, Outcome, ReferenceKind, Refusal} from './outcome.ts';
import type {Point} from './raster.ts';

/** A size with the line it was measured along. */
export type ReadSize = {
	/** Millimetres, rounded to a tenth. */
	readonly mm: number;
	/** Half of the 90 % interval, in millimetres, rounded up to a tenth. */
	readonly uncertaintyMm: number;
	/** Two points in pixels of the upright photo. */
	readonly line: readonly [Point, Point];
};

/** Why no size was read from a photo, by what to do about it. */
export const declinedWhys = [
	'no-reference',
	'wrong-reference',
	'no-case',
	'cut-off',
	'several',
	'dark',
	'small',
	'tilted',
	'unsure',
	'unreadable',
] as const;

/** Sizes with their lines on the photo, or why there are none; `hidden` is what nobody else may see. */
export type PhotoReading = (
	| {
			readonly kind: 'read';
			readonly reference: ReferenceKind;
			/** One length, or two where either of two edges may be the end of the capsule. */
			readonly lengths: readonly ReadSize[];
			readonly width?: ReadSize | undefined;
	  }
	| {readonly kind: 'declined'; readonly why: (typeof declinedWhys)[number]}
) & {readonly hidden?: readonly Point[] | undefined};

const whyOf: Readonly<Record<Refusal, (typeof declinedWhys)[number]>> = {
	'cut-off': 'cut-off',
	'too-small-case': 'small',
	'too-small': 'small',
	'odd-shape': 'no-case',
	'no-case': 'no-case',
	'unclear-ends': 'unsure',
	tilted: 'tilted',
	'no-reference': 'no-reference',
	coin: 'no-reference',
	letter: 'wrong-reference',
	'other-reference': 'wrong-reference',
	dark: 'dark',
	'too-heavy': 'unreadable',
	'too-many-pixels': 'unreadable',
	heic: 'unreadable',
	'no-photo': 'unreadable',
};

/** What one find may take from a measured photo: one case, or one case with two readings of its length. */
export function readingFrom(outcome: Outcome): PhotoReading {
	// A card bears its owner's name and number.
	const hidden = outcome.reference === 'card' ? outcome.referencePx : undefined;
	if (outcome.kind === 'declined') return {kind: 'declined', why: whyOf[outcome.why], hidden};
	const {reference, cases} = outcome;
	const [first, second] = cases;
	if (!first || (outcome.kind === 'measured' && second)) return {kind: 'declined', why: 'several', hidden};
	return {
		kind: 'read',
		reference,
		lengths: cases.slice(0, 2).map(one => sizeOf(one.lengthMm, one.lengthIntervalMm, one.lengthLinePx)),
		width:
			first.widthMm === undefined || !first.widthIntervalMm || !first.widthLinePx
				? undefined
				: sizeOf(first.widthMm, first.widthIntervalMm, first.widthLinePx),
		hidden,
	};
}

function sizeOf(mm: number, [from, to]: Interval, [start, end]: readonly [Point, Point]): ReadSize {
	const widest = Math.max(mm - from, to - mm);
	return {
		mm: Math.round(mm * 10) / 10,
		// Rounded up: an interval may not lose its ends.
		uncertaintyMm: Math.max(0.1, Math.ceil(widest * 10 - 1e-6) / 10),
		line: [start, end],
	};
}
