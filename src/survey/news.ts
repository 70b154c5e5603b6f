/** What is told of a day, as it waits to be told. */
import {z} from 'zod';
import {distanceM} from '../place/distance.ts';
import type {Asked} from '../store/audience.ts';
import {type Day, daySchema} from './day.ts';
import {resultSchema} from './result.ts';

/** Checks news on their way in from their stored column. */
export const newsSchema = z
	.object({
		/** Names the day in calendars. */
		uuid: z.string().min(1),
		/** Which version of the day this is. */
		sequence: z.number().int(),
		region: z.string().min(1),
		/** The person who called for the day. */
		coordinator: z.number().int().optional(),
		day: daySchema,
		/** The day as it was told before, for a change. */
		before: daySchema.optional(),
		/** What came of it, once it is over. */
		result: resultSchema.optional(),
	})
	.readonly();

/** What is told of a day, with all that it takes to tell it. */
export type News = z.output<typeof newsSchema>;

/** “Near me” reaches so far (our own choice: an hour's drive). */
export const nearM = 50_000;

/** Whether a day is one that somebody asked to be told of. */
export function isAskedFor(
	asked: Asked,
	news: Pick<News, 'region' | 'coordinator'> & {readonly day: Pick<Day, 'spot'>},
): boolean {
	switch (asked.kind) {
		case 'coast':
			return asked.region === news.region;
		case 'coordinator':
			return asked.coordinator === news.coordinator;
		case 'near':
			return distanceM(asked, news.day.spot) <= nearM;
	}
}
