/** A survey day as a coordinator describes it and people are told of it. */
import {z} from 'zod';

/** Checks a day on its way in from its stored column. Times are UTC milliseconds. */
export const daySchema = z
	.object({
		title: z.string().min(1),
		/** WGS 84 degrees, and the zone whose clocks the day goes by. */
		spot: z.object({latitude: z.number(), longitude: z.number(), zone: z.string().min(1)}).readonly(),
		/** The place in the words of those who go there. */
		place: z.string().min(1),
		/** ISO date by the clocks of the place. */
		date: z.iso.date(),
		startsAt: z.number().int(),
		endsAt: z.number().int(),
		/** As the coordinator read it off the official table: nothing is worked out here. Absent where tides are small. */
		lowWater: z
			.object({at: z.number().int(), heightM: z.number().optional(), table: z.string().min(1)})
			.readonly()
			.optional(),
		meeting: z.string().min(1),
		bring: z.string().optional(),
		/** Whom to ask; public by the coordinator's choice. */
		contact: z.string().min(1),
		/** What is dangerous at this place beside the usual. */
		risks: z.string().optional(),
	})
	.readonly();

/** A survey day with all that people are told of it. */
export type Day = z.output<typeof daySchema>;

/** A find belongs to a day up to so far from its pin: a beach walked for an hour each way (our own choice). */
export const dayRadiusM = 2500;

/** Which parts of two versions of a day differ in what people have to know anew. */
export function changesBetween(before: Day, after: Day): readonly ('time' | 'place' | 'other')[] {
	const differs = (read: (day: Day) => unknown) =>
		JSON.stringify(read(before)) !== JSON.stringify(read(after));
	return [
		...(differs(day => [day.startsAt, day.endsAt]) ? ['time' as const] : []),
		...(differs(day => [day.spot, day.place, day.meeting]) ? ['place' as const] : []),
		...(differs(day => [day.title, day.lowWater, day.bring, day.contact, day.risks])
			? ['other' as const]
			: []),
	];
}
