/** What a photo was measured to show: sizes, and the lines that are drawn on it for a yes. */
import {z} from 'zod';
import {references} from '../capsule/length.ts';
import {declinedWhys as readingWhys} from '../capsule/reading.ts';

const pointSchema = z.tuple([z.number().int(), z.number().int()]);
const lineSchema = z.tuple([pointSchema, pointSchema]);

/** Two end points in pixels of the kept photo. */
export type PhotoLine = z.output<typeof lineSchema>;

const measuredSchema = z.object({
	mm: z.number().positive(),
	uncertaintyMm: z.number().positive(),
	line: lineSchema,
});

export const proposalSchema = z.object({
	/** The photo by its id, and the SHA-256 in hex of the picture as it is kept. */
	photo: z.number().int(),
	hash: z.string().regex(/^[0-9a-f]{64}$/),
	reference: z.enum(references),
	/** One length, or two where either of two edges may be the end of the capsule. */
	lengths: z.array(measuredSchema).min(1).max(2),
	width: measuredSchema.optional(),
});

/** Sizes read from a photo, before the person has said yes; millimetres, half-widths of 90 % intervals. */
export type Proposal = z.output<typeof proposalSchema>;

/** Why no size was taken from a photo. */
export const declinedWhys = [...readingWhys, 'no-width', 'impossible', 'failed'] as const;

/** What became of measuring a photo. */
export type MeasuredPhoto =
	| {readonly kind: 'proposed'; readonly proposal: Proposal}
	| {readonly kind: 'declined'; readonly why: (typeof declinedWhys)[number]};
