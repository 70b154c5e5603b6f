/** What one photo has to say to finds. */
import type {Interval, MeasuredCase, Outcome, ReferenceKind, Refusal} from './outcome.ts';
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

/** One of several cases on a photo. */
export type ReadCase = {
	readonly length: ReadSize;
	readonly width?: ReadSize | undefined;
	/** Round the capsule, in pixels of the upright photo. */
	readonly outline?: readonly Point[] | undefined;
	/** What its shape suggests, never more. */
	readonly shape?: 'long' | 'broad' | undefined;
};

/** Why no size was read from a photo, by what to do about it. */
export const declinedWhys = [
	'no-reference',
	'coin',
	'letter',
	'wrong-reference',
	'no-case',
	'cut-off',
	'several',
	'dark',
	'small',
	'far',
	'tilted',
	'blurred',
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
			readonly outline?: readonly Point[] | undefined;
			/** Middles of bodies that were seen and not measured. */
			readonly unsure: readonly Point[];
	  }
	| {
			readonly kind: 'several';
			readonly reference: ReferenceKind;
			readonly cases: readonly ReadCase[];
			/** The corners of the sheet that they lie on; absent where they lie beside a card. */
			readonly sheet?: readonly Point[] | undefined;
			readonly unsure: readonly Point[];
	  }
	| {
			readonly kind: 'declined';
			readonly why: (typeof declinedWhys)[number];
			/** By a coin: between what the case may be long, no measurement. */
			readonly aboutMm?: Interval | undefined;
	  }
) & {readonly hidden?: readonly Point[] | undefined};

const whyOf: Readonly<Record<Refusal, (typeof declinedWhys)[number]>> = {
	'cut-off': 'cut-off',
	'too-small-case': 'small',
	'far-reference': 'far',
	'too-small': 'small',
	'odd-shape': 'no-case',
	'no-case': 'no-case',
	'unclear-ends': 'unsure',
	tilted: 'tilted',
	blurred: 'blurred',
	'no-reference': 'no-reference',
	coin: 'coin',
	letter: 'letter',
	'other-reference': 'wrong-reference',
	dark: 'dark',
	'too-heavy': 'unreadable',
	'too-many-pixels': 'unreadable',
	heic: 'unreadable',
	'no-photo': 'unreadable',
};

/** What finds may take from a measured photo: one case, one with two readings of its length, or several cases. */
export function readingFrom(outcome: Outcome): PhotoReading {
	// A card bears its owner's name and number.
	const hidden = outcome.reference === 'card' ? outcome.referencePx : undefined;
	if (outcome.kind === 'declined') {
		const {why, aboutMm} = outcome;
		return {kind: 'declined', why: whyOf[why], hidden, ...(aboutMm ? {aboutMm} : {})};
	}
	const {reference} = outcome;
	const cases = outcome.cases.map(caseOf);
	const unsure = (outcome.unsure ?? []).map(({atPx}) => atPx);
	const [first] = cases;
	if (!first) return {kind: 'declined', why: 'unsure', hidden};
	if (outcome.kind === 'measured' && cases.length > 1) {
		const sheet = reference === 'card' ? undefined : outcome.referencePx;
		return {kind: 'several', reference, cases, sheet, unsure, hidden};
	}
	const lengths = cases.slice(0, 2).map(({length}) => length);
	return {kind: 'read', reference, lengths, width: first.width, outline: first.outline, unsure, hidden};
}

function caseOf(one: MeasuredCase): ReadCase {
	const {widthMm, widthIntervalMm, widthLinePx} = one;
	return {
		length: sizeOf(one.lengthMm, one.lengthIntervalMm, one.lengthLinePx),
		width:
			widthMm === undefined || !widthIntervalMm || !widthLinePx
				? undefined
				: sizeOf(widthMm, widthIntervalMm, widthLinePx),
		outline: one.outlinePx,
		shape: one.shape,
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
