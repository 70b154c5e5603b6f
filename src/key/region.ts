/** A region's folder: the key and the profiles, as a key author writes them. */
import {createHash} from 'node:crypto';
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {z} from 'zod';
import {partialShapeSchema} from './shape.ts';
import {type Fault, type Read, sayFault, tryYaml} from './yaml.ts';

const id = z
	.string()
	.regex(/^[a-z][a-z0-9-]{0,23}$/, 'expected an id of a-z, 0-9 and -, at most 24 characters');
const taxonId = z.string().regex(/^[a-z][a-z0-9-]{0,39}$/, 'expected an id of a-z, 0-9 and -');
const share = z.number().min(0).max(1);
const rangeMm = z.tuple([z.number().positive(), z.number().positive()]);

const views = ['whole', 'front', 'back', 'rim', 'surface', 'cut', 'section', 'lying', 'faces'] as const;

/** What can be seen on a case, the part it is seen on, and the states it has. */
const characterSchema = z.strictObject({
	needs: z.array(id),
	states: z.array(id).min(2).max(4),
	/** How often people pick a wrong state although the part is there; judged, not measured. */
	error: share,
	/** What of a case each state stands for: a drawing is made of it. */
	draws: z.record(id, partialShapeSchema).optional(),
	/** From where it is best seen: the whole case, one part of it close up, from its side, cut across. */
	where: z.enum(views).optional(),
	/** On what the states are drawn side by side; a plain case without it. */
	on: partialShapeSchema.optional(),
	/** What the question has people compare with, and how many times it is taken. */
	against: z
		.strictObject({what: z.enum(['widths', 'horn', 'string']), times: z.number().positive()})
		.optional(),
});

const optionSchema = z.strictObject({leads: taxonId});
const bandSchema = z.strictObject({
	fromMm: z.number().positive().optional(),
	belowMm: z.number().positive().optional(),
	leads: taxonId,
});

/** A question of the key: a character that is looked at, or a measure cut into bands. */
const questionSchema = z.union([
	z.strictObject({look: id, options: z.record(id, optionSchema)}),
	z.strictObject({measure: z.enum(['length', 'width']), bands: z.array(bandSchema).min(2).max(4)}),
]);

const degrees = (most: number) => {
	const expected = 'expected longitude (-180 to 180), then latitude (-90 to 90)';
	return z.number().min(-most, expected).max(most, expected);
};

/** A stretch of sea and shore: a simple ring of our own, [longitude, latitude] in degrees, not closed. */
const areaSchema = z.strictObject({
	ring: z.array(z.tuple([degrees(180), degrees(90)])).min(3, 'expected three points or more'),
	source: z.string(),
});

export const keySchema = z.strictObject({
	begins: id,
	possibleMm: z.strictObject({length: rangeMm, width: rangeMm}),
	characters: z.record(id, characterSchema),
	questions: z.record(id, questionSchema),
	/** Ids that trails may still hold: where they went, or nothing when they are gone. */
	moved: z.array(z.strictObject({from: id, to: id.optional()})),
	/** Weights of the ordinal words used in profiles; ours, no count was published. */
	howCommon: z.record(id, z.number().positive()),
	/** Sea areas that profiles name; together they are the coast that the region covers. */
	areas: z.record(id, areaSchema).default({}),
	/** How much of its weight a taxon keeps outside its usual areas; ours, never zero. */
	elsewhere: share.default(0.05),
	/** Weight of all that the region's profiles do not hold. */
	somethingElse: share,
});

const citedSchema = {source: id, page: z.string().optional()};

/**
 * Sizes in millimetres; without mean and sd the middle and a quarter of the range stand in. A single
 * published size is both ends of its range; then `sd` is judged, and `basis` says how.
 */
const measureSchema = z.strictObject({
	range: rangeMm,
	mean: z.number().positive().optional(),
	sd: z.number().positive().optional(),
	...citedSchema,
	basis: z.string().optional(),
});

const taxonSchema = z.strictObject({
	scientificName: z.string().min(3),
	authorship: z.string(),
	family: z.string(),
	rank: z.enum(['species', 'genus', 'family']),
	/** Said with the result: photograph it rather than keep it. */
	leaveIt: z.boolean().default(false),
	/** By which law, and how large a square hides its places in what is published, in metres of a side. */
	protected: z
		.strictObject({
			sideM: z.union([z.literal(1000), z.literal(10_000), z.literal(100_000)]),
			...citedSchema,
		})
		.optional(),
	/** Both flaps at the ends are large, so that a case without them is a good deal shorter. */
	largeAprons: z.boolean().optional(),
	howCommon: id,
	/** Where its cases are laid or stranded; without it, anywhere in the region. */
	coast: z.strictObject({usual: z.array(id).min(1), ...citedSchema}).optional(),
	/** Absent where nobody has published it: then any possible size fits alike. */
	lengthMm: measureSchema.optional(),
	widthMm: measureSchema.optional(),
	/** The figure as printed, where it is flagged suspect and not used. */
	notUsed: z
		.array(
			z.strictObject({
				what: z.enum(['length', 'width']),
				range: rangeMm,
				mean: z.number().positive().optional(),
				why: z.string(),
				...citedSchema,
			}),
		)
		.default([]),
	/** For each character the share of cases seen in each state; our reading of the description. */
	states: z.record(id, z.record(id, share)),
	/** Characters on which no description was found; each speaks neither for nor against. */
	silent: z.array(id).default([]),
	described: z.strictObject(citedSchema),
	fact: z.strictObject(citedSchema),
	lookalikes: z.array(taxonId).default([]),
	/** What is known of its looks beside its states; sizes only where none was published, as a stand-in. */
	shape: partialShapeSchema
		.extend({source: id.optional(), page: z.string().optional(), basis: z.string().optional()})
		.optional(),
});

export const profilesSchema = z.strictObject({
	sources: z.record(
		id,
		z.strictObject({
			citation: z.string(),
			doi: z.string().optional(),
			note: z.string().optional(),
			/** Nobody published it, or nobody has read it: a result says so, and no page is asked for. */
			fromMemory: z.boolean().default(false),
		}),
	),
	taxa: z.record(taxonId, taxonSchema),
});

/** A key as `key.yaml` holds it. */
export type Key = z.output<typeof keySchema>;
/** One character of a key. */
export type Character = z.output<typeof characterSchema>;
/** One question of a key. */
export type Question = z.output<typeof questionSchema>;
/** The taxa of a region with their sources, as `profiles.yaml` holds them. */
export type Profiles = z.output<typeof profilesSchema>;
/** One taxon of a region. */
export type Taxon = z.output<typeof taxonSchema>;
/** A published size in millimetres with its source. */
export type Measure = z.output<typeof measureSchema>;

/** A region as data; `version` changes with every change of its key or profiles. */
export type Region = {
	readonly id: string;
	readonly folder: string;
	readonly version: string;
	readonly key: Key;
	readonly profiles: Profiles;
};

/** A region as read, with the line on which any of its values stands. */
export type RegionRead = {
	readonly region: Region;
	readonly keyLine: Read<Key>['lineOf'];
	readonly profilesLine: Read<Profiles>['lineOf'];
};

/** Reads a region's folder once; throws an Error with a line for each fault, by file and line. */
export function readRegion(folder: string, regionId: string): Region {
	const tried = tryRegion(folder, regionId);
	if (tried.kind === 'faults') throw new Error(tried.faults.map(sayFault).join('\n'));
	return tried.read.region;
}

/** Reads a region's folder once; a file that does not fit its schema comes back as faults. */
export function tryRegion(
	folder: string,
	regionId: string,
):
	| {readonly kind: 'read'; readonly read: RegionRead}
	| {readonly kind: 'faults'; readonly faults: readonly Fault[]} {
	const keyFile = join(folder, regionId, 'key.yaml');
	const profilesFile = join(folder, regionId, 'profiles.yaml');
	const key = tryYaml(keyFile, keySchema);
	const profiles = tryYaml(profilesFile, profilesSchema);
	if (key.kind === 'faults' || profiles.kind === 'faults') {
		return {
			kind: 'faults',
			faults: [key, profiles].flatMap(file => (file.kind === 'faults' ? file.faults : [])),
		};
	}
	const hash = createHash('sha256').update(readFileSync(keyFile)).update(readFileSync(profilesFile));
	const region = {
		id: regionId,
		folder: join(folder, regionId),
		version: hash.digest('hex').slice(0, 12),
		key: key.read.value,
		profiles: profiles.read.value,
	};
	return {kind: 'read', read: {region, keyLine: key.read.lineOf, profilesLine: profiles.read.lineOf}};
}
