/** Cards as results ask for them, and what they are drawn from. */
import {join} from 'node:path';
import type {DrawnFrom} from '../../src/draw/wanted.ts';
import {readRegion} from '../../src/key/region.ts';
import {projectRoot} from '../../src/settings.ts';
import type {CallCard} from '../../src/store/picture.ts';
import {readTexts} from '../../src/text/text.ts';

/** A region with its English sentences. */
export function drawnFrom(id: string): DrawnFrom {
	const root = projectRoot();
	const folders = ['src/text', 'flows', `flows/${id}`].map(folder => join(root, folder));
	return {region: readRegion(join(root, 'flows'), id), say: readTexts(folders).in('en')};
}

/** A likely case of the British Isles, 72 mm long; `more` changes what differs. */
export function cardOf(more: Partial<CallCard> = {}): CallCard {
	return {
		kind: 'card',
		region: 'british-isles',
		language: 'en',
		sure: 'likely',
		names: [{taxon: 'raja-clavata', percent: 83}],
		lost: [],
		length: {mm: 72, plusMinusMm: 1, isLeast: false},
		found: 'Found on 2 May 2026, Larkin Sands',
		...more,
	};
}

/** Five names, best first. */
export const shortlist = [
	{taxon: 'raja-undulata', percent: 45},
	{taxon: 'raja-microocellata', percent: 30},
	{taxon: 'raja-clavata', percent: 12},
	{taxon: 'raja-brachyura', percent: 6},
	{taxon: 'raja-montagui', percent: 4},
] as const;
