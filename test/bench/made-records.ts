/** Saved records made up in bulk: every kind of a region, along its coast, with sizes, notes and photos. */
import {createHash} from 'node:crypto';
import type {Trail} from '../../src/find/trail.ts';
import type {Region} from '../../src/key/region.ts';
import {readPlace} from '../../src/place/place.ts';
import type {Draft} from '../../src/record/draft.ts';
import type {Db} from '../../src/store/schema.ts';

const atOnce = 500;
const begunAt = Date.UTC(2026, 0, 1);
const dayMs = 86_400_000;

/** Saves a record for each of the finds 1 to `records`, which have to be there. */
export async function fillRecords(
	db: Db,
	{records, region, trail}: {readonly records: number; readonly region: Region; readonly trail: Trail},
): Promise<void> {
	await db.transaction().execute(async tx => {
		for (let first = 0; first < records; first += atOnce) {
			const rows = await tx
				.selectFrom('find')
				.select(['id', 'uuid', 'person'])
				.where('id', '>', first)
				.where('id', '<=', Math.min(first + atOnce, records))
				.execute();
			await tx
				.insertInto('draft')
				.values(
					rows.map(({id, uuid, person}) => ({
						find: id,
						uuid,
						person,
						status: 'draft' as const,
						body: JSON.stringify(madeRecord(id, {uuid, region, trail})),
						version: 1,
						savedAt: begunAt + id,
						changedAt: begunAt + id,
					})),
				)
				.execute();
		}
		await tx
			.updateTable('person')
			.set({publicName: 'Somebody', coarseM: 1000})
			.where('id', '<=', 100)
			.execute();
	});
}

/** The record of find `index`, always the same one. */
export function madeRecord(
	index: number,
	{uuid, region, trail}: {readonly uuid: string; readonly region: Region; readonly trail: Trail},
): Draft {
	const taxa = Object.entries(region.profiles.taxa);
	const [taxon = '', profile] = taxa[index % taxa.length] ?? [];
	const [other = '', otherProfile] = taxa[(index + 1) % taxa.length] ?? [];
	const size = (mm: number) => ({
		mm,
		plusMinusMm: 1,
		typed: `${mm} mm`,
		method: 'typed' as const,
		countsAs: 'exact' as const,
		because: [],
	});
	return {
		id: uuid,
		region: {id: region.id, version: region.version},
		kind: 'egg-case',
		foundOn: new Date(begunAt + (index % 365) * dayMs).toISOString().slice(0, 10),
		zone: 'Europe/London',
		place: madePlace(index),
		count: 1 + (index % 4),
		soak: {state: 'soaked', hours: 20 + (index % 80) / 10},
		length: size(40 + (index % 60)),
		width: size(20 + (index % 40)),
		aprons: 'both',
		lost: [],
		seen: Object.entries(region.key.characters).map(([character, {states}]) => ({
			character,
			state: states[index % states.length] ?? '',
		})),
		ranking: [
			{taxon, scientificName: profile?.scientificName, probability: 0.94},
			{taxon: other, scientificName: otherProfile?.scientificName, probability: 0.05},
		],
		said: [taxon],
		leaves: [taxon],
		sure: 'very-likely',
		unusual: [],
		doubt: false,
		note: index % 3 === 0 ? `Number ${index}, "torn" at one end,\nbelow the old wall` : undefined,
		photos: [0, 1].map(photo => ({
			id: 2 * index + photo,
			hash: createHash('sha256').update(`${index}-${photo}`).digest('hex'),
		})),
		trail,
		language: 'en',
	};
}

/** By turns a grid square, coordinates and a name. */
function madePlace(index: number): Draft['place'] {
	const digits = (value: number) => String(value % 1000).padStart(3, '0');
	const written = [
		`SW ${digits(index)} ${digits(index * 7)}`,
		`50.${digits(index)}, -4.${digits(index * 3)}`,
		`Cove ${index % 50}`,
	];
	const read = readPlace(written[index % 3] ?? '');
	if (read.kind !== 'place') throw new Error(`Expected a place; got ${read.why}`);
	return read.place;
}
