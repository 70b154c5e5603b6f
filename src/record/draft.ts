/** The draft record of one find: what its finder agreed to keep, as plain data with no name of a person. */
import {z} from 'zod';
import {type Length, references} from '../capsule/length.ts';
import {isUnusual} from '../key/coast.ts';
import type {Conclusion} from '../key/conclude.ts';
import type {Ranked} from '../key/evidence.ts';
import type {Observed, Sized} from '../key/observed.ts';
import type {Region} from '../key/region.ts';
import {type Place, placeSchema} from '../place/place.ts';

const sizeParts = {
	mm: z.number().positive(),
	/** Half-width in millimetres. */
	plusMinusMm: z.number().positive(),
	countsAs: z.enum(['exact', 'at-least']),
	/** Why it is only a lower bound; empty for `exact`. */
	because: z.array(z.enum(['dry', 'aprons', 'sides'])).readonly(),
};

const sizeSchema = z.discriminatedUnion('method', [
	/** `typed` is the text as the finder wrote it. */
	z.object({...sizeParts, typed: z.string().max(60), method: z.literal('typed')}).readonly(),
	/** Measured in a photo and confirmed by the finder. */
	z.object({...sizeParts, method: z.literal('photo'), reference: z.enum(references)}).readonly(),
]);

const rankedSchema = z
	.object({
		taxon: z.string(),
		/** Absent for what no profile of the region holds. */
		scientificName: z.string().optional(),
		/** Four decimals. */
		probability: z.number().min(0).max(1),
	})
	.readonly();

/** Checks a draft on its way in from its stored column. */
export const draftSchema = z
	.object({
		/** Names the find for ever, here and wherever it is sent. */
		id: z.uuid(),
		region: z.object({id: z.string(), version: z.string()}).readonly(),
		kind: z.enum(['egg-case', 'left-alive']),
		foundOn: z.iso.date(),
		/** IANA name of the zone in which the day was said. */
		zone: z.string(),
		place: placeSchema,
		/** Absent where nobody was asked to count: a case left alive. */
		count: z.number().int().positive().optional(),
		soak: z
			.object({
				state: z.enum(['dry', 'damp', 'soaked']),
				/** From the beginning of the bowl to its end, to a tenth; absent where the finder soaked it before. */
				hours: z.number().nonnegative().optional(),
			})
			.readonly()
			.optional(),
		length: sizeSchema.optional(),
		width: sizeSchema.optional(),
		/** Of several cases on one photo, of which `length` is the middle. */
		lengths: z.array(sizeSchema).readonly().optional(),
		aprons: z.enum(['both', 'incomplete', 'unknown']),
		lost: z.array(z.string()).readonly(),
		seen: z.array(z.object({character: z.string(), state: z.string()}).readonly()).readonly(),
		/** Best first, eight at most. */
		ranking: z.array(rankedSchema).max(8).readonly(),
		/** Taxa the finder was told, best first; empty when none was. */
		said: z.array(z.string()).readonly(),
		/** Where the key led. */
		leaves: z.array(z.string()).readonly(),
		sure: z.enum(['very-likely', 'likely', 'shortlist', 'unknown']),
		/** Taxa said that are unusual on this coast. */
		unusual: z.array(z.string()).readonly().default([]),
		/** The finder could not say for sure that it is an egg case. */
		doubt: z.boolean(),
		note: z.string().optional(),
		/** The number of the find whose answers were taken over, since this one looks the same. */
		alike: z.number().int().optional(),
		/** SHA-256 in hex once the picture is kept. */
		photos: z
			.array(
				z
					.object({
						id: z.number().int(),
						hash: z
							.string()
							.regex(/^[0-9a-f]{64}$/)
							.optional(),
					})
					.readonly(),
			)
			.readonly(),
		trail: z.array(z.unknown()).readonly(),
		language: z.string(),
	})
	.readonly();

/** A draft record, still open to change by its finder. */
export type Draft = z.output<typeof draftSchema>;

/** What is known of the find itself; the facts of a conversation fit as they are. */
export type SourceFacts = {
	readonly lives: boolean;
	readonly doubt: boolean;
	readonly photos: readonly number[];
	readonly place: Place | undefined;
	readonly date: string | undefined;
	readonly count: number | undefined;
	readonly lost: readonly string[];
	readonly soak: 'dry' | 'damp' | 'soaked' | undefined;
	readonly bowl: {readonly startedAt: number; readonly endedAt?: number} | undefined;
	readonly aprons: 'both' | 'incomplete' | 'unknown' | undefined;
	readonly length: Length | 'unmeasured' | undefined;
	/** The single lengths of several cases, of which `length` is the middle. */
	readonly each: readonly Length[];
	readonly width: Length | 'unmeasured' | undefined;
	readonly note: string | undefined;
	readonly alike?: number | undefined;
};

/** What the key and the evidence came to. */
export type SourceFound = {
	readonly observed: Observed;
	readonly leaves: readonly string[];
	readonly ranking: readonly Ranked[];
	readonly conclusion: Conclusion;
};

/** All that a draft is made from. */
export type DraftSource = {
	readonly uuid: string;
	readonly region: Region;
	readonly facts: SourceFacts;
	/** `undefined` for a case that was left alive. */
	readonly found: SourceFound | undefined;
	readonly trail: readonly unknown[];
	readonly zone: string;
	readonly language: string;
	/** SHA-256 in hex of the photos already kept, by photo id. */
	readonly photoHashes?: ReadonlyMap<number, string>;
};

const mostRanked = 8;
const hourMs = 3_600_000;

/** Makes the draft of a find; throws an Error when the find has no day or no place. */
export function draftFrom(source: DraftSource): Draft {
	const {facts, found, region} = source;
	const {date, place} = facts;
	if (date === undefined || place === undefined) {
		const lacking = [...(date === undefined ? ['day'] : []), ...(place === undefined ? ['place'] : [])];
		throw new Error(
			`Expected find "${source.uuid}" to have a day and a place; it lacks ${lacking.join(' and ')}`,
		);
	}
	return {
		id: source.uuid,
		region: {id: region.id, version: region.version},
		kind: facts.lives ? 'left-alive' : 'egg-case',
		foundOn: date,
		zone: source.zone,
		place,
		count: facts.count,
		...(facts.lives ? {} : measuredFrom(facts, found?.observed)),
		aprons: facts.aprons ?? 'unknown',
		lost: facts.lost,
		seen: Object.entries(found?.observed.seen ?? {}).map(([character, state]) => ({character, state})),
		ranking: (found?.ranking ?? []).slice(0, mostRanked).map(ranked => rankedFrom(region, ranked)),
		said: (found?.conclusion.names ?? []).map(({taxon}) => taxon),
		leaves: found?.leaves ?? [],
		sure: found?.conclusion.sure ?? 'unknown',
		unusual: unusualAmong(region, found),
		doubt: facts.doubt,
		note: facts.note,
		alike: facts.alike,
		photos: facts.photos.map(id => ({id, hash: source.photoHashes?.get(id)})),
		trail: source.trail,
		language: source.language,
	};
}

function unusualAmong({key, profiles}: Region, found: SourceFound | undefined): readonly string[] {
	const names = (found?.conclusion.names ?? []).map(({taxon}) => taxon);
	return names.filter(id => {
		const profile = profiles.taxa[id];
		return profile !== undefined && isUnusual(key, profile, found?.observed.spot);
	});
}

function rankedFrom(region: Region, {taxon, probability}: Ranked): Draft['ranking'][number] {
	return {
		taxon,
		scientificName: region.profiles.taxa[taxon]?.scientificName,
		probability: Number(probability.toFixed(4)),
	};
}

function measuredFrom(
	facts: SourceFacts,
	observed: Observed | undefined,
): Pick<Draft, 'soak' | 'length' | 'width' | 'lengths'> {
	const dry = facts.soak === 'soaked' ? [] : ['dry' as const];
	const aprons = facts.aprons === 'both' ? [] : ['aprons' as const];
	const sides = facts.lost.includes('sides') ? ['sides' as const] : [];
	const each = facts.each.map(one => sizeFrom(one, observed?.length, [...dry, ...aprons]));
	return {
		soak: facts.soak && {state: facts.soak, hours: hoursInBowl(facts)},
		length: sizeFrom(facts.length, observed?.length, [...dry, ...aprons]),
		width: sizeFrom(facts.width, observed?.width, [...dry, ...sides]),
		...(each.length > 1 ? {lengths: each.filter(one => one !== undefined)} : {}),
	};
}

function hoursInBowl({soak, bowl}: SourceFacts): number | undefined {
	if (soak !== 'soaked' || bowl?.endedAt === undefined) return undefined;
	return Math.max(0, Math.round((bowl.endedAt - bowl.startedAt) / (hourMs / 10)) / 10);
}

function sizeFrom(
	measured: Length | 'unmeasured' | undefined,
	sized: Sized | undefined,
	because: readonly ('dry' | 'aprons' | 'sides')[],
): Draft['length'] {
	if (measured === undefined || measured === 'unmeasured') return undefined;
	const {mm, uncertaintyMm: plusMinusMm, ...how} = measured;
	// The record says what the ranking took; the reasons are only told beside it.
	const isLowerBound = sized ? sized.kind === 'at-least' : because.length > 0;
	return {
		mm,
		plusMinusMm,
		...how,
		countsAs: isLowerBound ? 'at-least' : 'exact',
		because: isLowerBound ? because : [],
	};
}
