/** What one photo was read to show, as it leaves the measuring thread. */
import {z} from 'zod';
import {references} from './length.ts';
import type {Interval, Outcome, Refusal} from './outcome.ts';
import type {Point} from './raster.ts';

const pointSchema = z.tuple([z.number(), z.number()]);
const sizeSchema = z.object({
	/** Millimetres, rounded to a tenth. */
	mm: z.number().positive(),
	/** Half of the 90 % interval, in millimetres. */
	uncertaintyMm: z.number().positive(),
	line: z.tuple([pointSchema, pointSchema]),
});

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

/** Something in the photo that nobody else may see, such as a bank card: its corners in pixels. */
const hiddenSchema = z.array(pointSchema).length(4).optional();

export const photoReadingSchema = z.discriminatedUnion('kind', [
	z.object({
		kind: z.literal('read'),
		reference: z.enum(references),
		/** One length, or two where either of two edges may be the end of the capsule; lines in pixels. */
		lengths: z.array(sizeSchema).min(1).max(2),
		width: sizeSchema.optional(),
		/** The outline of the capsule, a closed ring in pixels of the photo. */
		outline: z.array(pointSchema),
		hidden: hiddenSchema,
	}),
	z.object({kind: z.literal('declined'), why: z.enum(declinedWhys), hidden: hiddenSchema}),
]);

/** Sizes with their lines on the photo, or why there are none. */
export type PhotoReading = z.output<typeof photoReadingSchema>;

const whyOf: Readonly<Record<Refusal, (typeof declinedWhys)[number]>> = {
	'cut-off': 'cut-off',
	'too-small-case': 'small',
	'too-small': 'small',
	'odd-shape': 'no-case',
	'no-case': 'no-case',
	'unclear-ends': 'unsure',
	tilted: 'tilted',
	'no-reference': 'no-reference',
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
	const hidden =
		outcome.reference === 'card' && outcome.referencePx ? fourOf(outcome.referencePx) : undefined;
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
		outline: [],
		hidden,
	};
}

type Size = z.output<typeof sizeSchema>;

function sizeOf(mm: number, [from, to]: Interval, [start, end]: readonly [Point, Point]): Size {
	const widest = Math.max(mm - from, to - mm);
	return {
		mm: Math.round(mm * 10) / 10,
		// Rounded up: an interval may not lose its ends.
		uncertaintyMm: Math.max(0.1, Math.ceil(widest * 10 - 1e-6) / 10),
		line: [[...start], [...end]],
	};
}

function fourOf(points: readonly Point[]): [number, number][] {
	return points.map(([x, y]) => [x, y]);
}
