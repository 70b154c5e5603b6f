/** What measuring a photo may come to, as it passes between threads and into a stored row. */
import {z} from 'zod';

const point = z.tuple([z.number(), z.number()]).readonly();

const measuredCase = z
	.object({
		lengthMm: z.number().positive(),
		/** Holds the true length nine times in ten. */
		lengthIntervalMm: point,
		/** Absent where the flanks could not be seen well enough. */
		widthMm: z.number().positive().optional(),
		widthIntervalMm: point.optional(),
		/** Points are pixels of the upright photo. */
		lengthLinePx: z.tuple([point, point]).readonly(),
		widthLinePx: z.tuple([point, point]).readonly().optional(),
		/** Round the capsule without horns and tendrils; at most 48 points. */
		outlinePx: z.array(point).readonly().optional(),
		/** What its shape suggests, never more: long and slim, or broad; absent between the two. */
		shape: z.enum(['long', 'broad']).optional(),
	})
	.readonly();

/** One case as measured. */
export type MeasuredCase = z.infer<typeof measuredCase>;

/** An interval that holds the true value nine times in ten, in millimetres. */
export type Interval = z.infer<typeof point>;

const referenceKind = z.enum(['a4', 'card', 'sheet']);

/** What a photo was measured by. */
export type ReferenceKind = z.infer<typeof referenceKind>;

const refusal = z.enum([
	'too-heavy',
	'too-many-pixels',
	'heic',
	'no-photo',
	'too-small',
	'dark',
	'no-reference',
	'coin',
	'other-reference',
	'letter',
	'no-case',
	'cut-off',
	'too-small-case',
	'far-reference',
	'odd-shape',
	'unclear-ends',
	'tilted',
	'blurred',
]);

/** Why a photo was not measured. */
export type Refusal = z.infer<typeof refusal>;

const withCases = {
	reference: referenceKind,
	/** The four corners of the reference, to be blurred where it is a card. */
	referencePx: z.array(point).readonly(),
	cases: z.array(measuredCase).readonly(),
	/** Bodies that were seen and not measured, by their middles, so that nobody thinks them counted. */
	unsure: z
		.array(z.object({atPx: point, why: refusal}).readonly())
		.readonly()
		.optional(),
};

/** Checks an outcome on its way in from another thread or a stored row. */
export const outcomeSchema = z
	.discriminatedUnion('kind', [
		z.object({kind: z.literal('measured'), ...withCases}),
		/** Two readings of one case, between which nothing decides. */
		z.object({kind: z.literal('choose'), ...withCases}),
		z.object({
			kind: z.literal('declined'),
			why: refusal,
			/** By a coin: between what the case may be long, a class of size and no measurement. */
			aboutMm: point.optional(),
			reference: referenceKind.optional(),
			/** As above: a photo that is declined is kept all the same. */
			referencePx: withCases.referencePx.optional(),
		}),
	])
	.readonly();

/** The outcome for one photo: sizes, two readings of one case to choose from, or the reason for neither. */
export type Outcome = z.infer<typeof outcomeSchema>;
