/** Made-up records on their way out, for tests of exports. */
import type {Region} from '../../src/key/region.ts';
import type {RecordForExport} from '../../src/record/for-export.ts';
import {type Manner, type ToldRecord, tellRecord} from '../../src/record/told.ts';
import {draftWith, testland, uuid} from './made-up.ts';

export const savedAt = Date.UTC(2026, 4, 3, 10, 40);
export const licence = 'http://creativecommons.org/licenses/by/4.0/legalcode';
export const openly: Manner = {isExact: false, occurrenceStatus: 'detected', licence};
export const hash = 'ab'.repeat(32);

/** The made-up region with one kind that a made-up law protects in squares of 10 km. */
export const guarded: Region = {
	...testland,
	profiles: {
		sources: {...testland.profiles.sources, law: {citation: 'Made-up Act 2000', fromMemory: false}},
		taxa: {
			...testland.profiles.taxa,
			'testa-minor': {
				...kind('testa-minor'),
				protected: {sideM: 10_000, source: 'law', page: 'Schedule 1'},
			},
		},
	},
};

export function recordWith(
	change: Parameters<typeof draftWith>[0] = {},
	more: Partial<RecordForExport> = {},
): RecordForExport {
	const draft = {...draftWith(change), photos: [{id: 4}, {id: 5, hash}]};
	return {draft, savedAt, changedAt: savedAt + 1000, ...more};
}

/** The record of another find, number 0 to 99. */
export function numbered(record: RecordForExport, number: number): RecordForExport {
	const id = uuid.replace(/..$/, String(number).padStart(2, '0'));
	return {...record, draft: {...record.draft, id}};
}

export function told(record: RecordForExport, region: Region = testland, manner = openly): ToldRecord {
	return tellRecord(record, region, manner);
}

export async function* inTurn<Item>(items: readonly Item[]): AsyncGenerator<Item> {
	for (const item of items) yield await Promise.resolve(item);
}

function kind(id: string) {
	const found = testland.profiles.taxa[id];
	if (!found) throw new Error(`Expected a made-up kind "${id}"`);
	return found;
}
