/** What came of a survey day, in numbers and places; nobody's name is in it. */
import {z} from 'zod';

const count = z.number().int().nonnegative();
const degrees = z.number();

/** Checks a result on its way in from its stored column. */
export const resultSchema = z
	.object({
		cases: count,
		finds: count,
		/** How many people saved finds. */
		finders: count,
		/** How many heads said that they come. */
		heads: count,
		/** How long the day was meant to last. */
		minutes: count,
		/** Most first. */
		kinds: z.array(z.object({region: z.string(), taxon: z.string(), cases: count}).readonly()).readonly(),
		oneOfSeveral: count,
		unnamed: count,
		leftAlive: count,
		unchecked: count,
		/** Hidden in squares where they have to be. */
		places: z
			.array(
				z.discriminatedUnion('kind', [
					z.object({kind: z.literal('point'), latitude: degrees, longitude: degrees, count}),
					z.object({
						kind: z.literal('square'),
						south: degrees,
						west: degrees,
						north: degrees,
						east: degrees,
						count,
					}),
				]),
			)
			.readonly(),
	})
	.readonly();

/** The result of a day. */
export type Result = z.output<typeof resultSchema>;
