/** Pictures by what they show, as they wait with their words to be drawn when they are sent. */
import {z} from 'zod';

/** Whose key, and in whose words. */
const ofRegion = {region: z.string().min(1), language: z.string().min(1)};
const ofCharacter = {...ofRegion, character: z.string().min(1)};

const pointSchema = z.tuple([z.number(), z.number()]);
const markSchema = z.object({
	mm: z.number(),
	uncertaintyMm: z.number(),
	line: z.tuple([pointSchema, pointSchema]),
});
/** Where the borders of the aprons lie in a stored photo, in its pixels from the upper left. */
const endsSchema = z.object({front: pointSchema, back: pointSchema});

/** A picture by what it shows. */
export const pictureSchema = z.union([
	// Rows of an older program hold a path alone.
	z.string().transform(path => ({kind: 'drawing' as const, path})),
	z.discriminatedUnion('kind', [
		/** In rows of an older program, a file that is no longer there. */
		z.object({kind: z.literal('drawing'), path: z.string().min(1)}),
		/** What the questions that all regions share speak of. */
		z.object({
			kind: z.literal('around'),
			...ofRegion,
			which: z.enum(['parts', 'photo', 'soak', 'aprons']),
		}),
		/** The options of a question side by side, in the order of its buttons. */
		z.object({kind: z.literal('choices'), ...ofCharacter, options: z.array(z.string()).min(2).max(4)}),
		/** Where on a case a character is seen. */
		z.object({kind: z.literal('part'), ...ofCharacter}),
		/** A kind as its profile describes it; lost parts are drawn pale. */
		z.object({
			kind: z.literal('taxon'),
			...ofRegion,
			taxon: z.string().min(1),
			lost: z.array(z.enum(['horns', 'sides', 'surface', 'aprons'])).default([]),
		}),
		z.object({
			kind: z.literal('measuring'),
			...ofRegion,
			which: z.enum(['length', 'width']),
		}),
		/** A stored photo with what was measured on it, in pixels of that photo. */
		z.object({
			kind: z.literal('measured'),
			hash: z.string().regex(/^[0-9a-f]{64}$/),
			lengths: z.array(markSchema).min(1).max(2),
			width: markSchema.optional(),
			/** Round the capsule. */
			outline: z.array(pointSchema).optional(),
			/** Middles of what was seen and not measured. */
			unsure: z.array(pointSchema).optional(),
			/** What stands on the picture, in words. */
			title: z.string(),
		}),
		/** A stored photo of several cases, each with its number and what was measured, in pixels of that photo. */
		z.object({
			kind: z.literal('tray'),
			hash: z.string().regex(/^[0-9a-f]{64}$/),
			cases: z
				.array(
					z.object({
						number: z.number().int(),
						length: markSchema,
						outline: z.array(pointSchema).optional(),
					}),
				)
				.min(1),
			/** The corners of the sheet that they lie on. */
			sheet: z.array(pointSchema).optional(),
			unsure: z.array(pointSchema).optional(),
			title: z.string(),
		}),
		/** What a find came to, on one card: its photo beside a drawing of each likely name, and their lengths. */
		z.object({
			kind: z.literal('card'),
			...ofRegion,
			sure: z.enum(['very-likely', 'likely', 'shortlist']),
			/** Best first; `percent` as the words of the result say it. */
			names: z.array(z.object({taxon: z.string().min(1), percent: z.number()})).min(1),
			lost: z.array(z.enum(['horns', 'sides', 'surface', 'aprons'])).default([]),
			/** As measured; at least so long when `isLeast`. */
			length: z
				.object({mm: z.number().positive(), plusMinusMm: z.number().nonnegative(), isLeast: z.boolean()})
				.optional(),
			/** A stored photo by its hash; its scale is known when both ends of the case are. */
			photo: z.object({hash: z.string().min(1), ends: endsSchema.optional()}).optional(),
			/** Day and place in words, no finer than they may be shown. */
			found: z.string().optional(),
		}),
		/** How many cases of each kind, most first; a bar without a taxon has no drawing. */
		z.object({
			kind: z.literal('bars'),
			...ofRegion,
			heading: z.string().min(1),
			bars: z
				.array(
					z.object({
						label: z.string().min(1),
						scientificName: z.string().optional(),
						count: z.number().int().positive(),
						taxon: z.string().optional(),
					}),
				)
				.min(1),
		}),
		/** The cases of a year, month by month from January on. */
		z.object({
			kind: z.literal('months'),
			...ofRegion,
			heading: z.string().min(1),
			year: z.number().int(),
			label: z.string().min(1),
			counts: z.array(z.number().int().nonnegative()).length(12),
		}),
		/** Where cases lay, in degrees on WGS 84; one that is told no finer comes as a square. */
		z.object({
			kind: z.literal('map'),
			...ofRegion,
			heading: z.string().min(1),
			places: z
				.array(
					z.discriminatedUnion('kind', [
						z.object({
							kind: z.literal('point'),
							latitude: z.number(),
							longitude: z.number(),
							count: z.number().int().positive(),
						}),
						z.object({
							kind: z.literal('square'),
							south: z.number(),
							west: z.number(),
							north: z.number(),
							east: z.number(),
							count: z.number().int().positive(),
						}),
					]),
				)
				.min(1),
		}),
		/** A measured length in millimetres against those of the kinds it may be. */
		z.object({
			kind: z.literal('lengths'),
			...ofRegion,
			taxa: z.array(z.string()).min(1).max(6),
			mm: z.number().positive(),
			plusMinusMm: z.number().positive(),
			countsAs: z.enum(['exact', 'at-least']),
		}),
	]),
]);

/** A picture by what it shows, as it waits with its words. */
export type CallPicture = z.output<typeof pictureSchema>;
/** The card of a result, as it waits with its words. */
export type CallCard = Extract<CallPicture, {kind: 'card'}>;
