/** What one photo was read to show, as it leaves the measuring thread. */
import {z} from 'zod';
import {references} from './length.ts';

const pointSchema = z.tuple([z.number(), z.number()]);
const sizeSchema = z.object({
	/** Millimetres, rounded to a tenth. */
	mm: z.number().positive(),
	/** Half of the 90 % interval, in millimetres. */
	uncertaintyMm: z.number().positive(),
	line: z.tuple([pointSchema, pointSchema]),
});

/** Why no size was read from a photo. */
export const declinedWhys = [
	'no-reference',
	'wrong-reference',
	'no-case',
	'cut-off',
	'several',
	'busy',
	'blurred',
	'dark',
	'small',
	'tilted',
	'unsure',
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
