/** What a photo was measured to show: sizes, and the lines that are drawn on it for a yes. */
import {z} from 'zod';
import {references} from '../capsule/length.ts';
import {declinedWhys as readingWhys} from '../capsule/reading.ts';

/** Across and down in whole pixels of the kept photo. */
export const pointSchema = z.tuple([z.number().int(), z.number().int()]);
const lineSchema = z.tuple([pointSchema, pointSchema]);

/** Two end points in pixels of the kept photo. */
export type PhotoLine = z.output<typeof lineSchema>;

/** A size in millimetres with the half-width of its 90 % interval and its line. */
export const measuredSchema = z.object({
	mm: z.number().positive(),
	uncertaintyMm: z.number().positive(),
	line: lineSchema,
});

/** What is known of the print that a photo was measured by; absent for things that nobody prints. */
export const printStates = ['exact', 'unsure', 'unasked'] as const;

/** The photo that sizes were read from, and by what. */
export const measuredOnSchema = z.object({
	/** The photo by its id, and the SHA-256 in hex of the picture as it is kept. */
	photo: z.number().int(),
	hash: z.string().regex(/^[0-9a-f]{64}$/),
	reference: z.enum(references),
	print: z.enum(printStates).optional(),
	/** Bodies that were seen and not measured, by their middles. */
	unsure: z.array(pointSchema).optional(),
});

export const proposalSchema = measuredOnSchema.extend({
	/** One length, or two where either of two edges may be the end of the capsule. */
	lengths: z.array(measuredSchema).min(1).max(2),
	width: measuredSchema.optional(),
	/** Round the capsule. */
	outline: z.array(pointSchema).optional(),
});

/** Sizes read from a photo, before the person has said yes; millimetres, half-widths of 90 % intervals. */
export type Proposal = z.output<typeof proposalSchema>;

/** One of several cases on a photo; its number is what it is called there. */
export const trayCaseSchema = z.object({
	number: z.number().int().positive(),
	length: measuredSchema,
	width: measuredSchema.optional(),
	outline: z.array(pointSchema).optional(),
	/** What its shape suggests, never more. */
	shape: z.enum(['long', 'broad']).optional(),
});

/** Several cases read from one photo, before the person has said which are one kind. */
export const traySchema = measuredOnSchema.extend({
	cases: z.array(trayCaseSchema).min(1).readonly(),
	/** The corners of the sheet that they lie on. */
	sheet: z.array(pointSchema).optional(),
	/** They lay in water since the photo, where cases grow: its lengths no longer count. */
	isOutgrown: z.boolean().optional(),
});

/** One of several cases on a photo. */
export type TrayCase = z.output<typeof trayCaseSchema>;
/** Several cases on one photo. */
export type Tray = z.output<typeof traySchema>;

/** Why no size was taken from a photo. */
export const declinedWhys = [...readingWhys, 'no-width', 'impossible', 'failed', 'sheet-wrong'] as const;

/** What became of measuring a photo. */
export type MeasuredPhoto =
	| {readonly kind: 'proposed'; readonly proposal: Proposal}
	| {readonly kind: 'tray'; readonly tray: Tray}
	| {
			readonly kind: 'declined';
			readonly why: (typeof declinedWhys)[number];
			/** Between what the case may be long, where a coin lay beside it. */
			readonly aboutMm?: readonly [number, number];
	  };
