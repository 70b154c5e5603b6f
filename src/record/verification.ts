/** What a verifier decided, as a record tells it: a name with its rank, and why. */
import type {Region} from '../key/region.ts';
import type {Decision} from '../store/decisions.ts';
import type {Draft} from './draft.ts';
import type {Verification, VerifiedName} from './for-export.ts';

/** Reasons a verifier may give with a tap, as records tell them. */
const because = {
	size: 'its size',
	shape: 'its shape, horns or strings',
	surface: 'its surface or its rim',
	coast: 'the coast on which it lay',
	worn: 'it is too worn to tell more',
	photo: 'the photos show no more',
} as const;

/** A reason that needs no writing. */
export type Reason = keyof typeof because;

/** Every reason that needs no writing, in the order in which they are offered. */
export const reasons: readonly Reason[] = ['size', 'shape', 'surface', 'coast', 'worn', 'photo'];

/** Said where a verifier chose no name to be called by, or is forgotten. */
const namelessVerifier = 'a verifier of the survey';

/** The decision that counts, as a record tells it. */
export function verificationFrom(decision: Decision, draft: Draft, region: Region): Verification {
	const {outcome, name = ''} = decision;
	const look = {at: decision.at, by: decision.publicName ?? namelessVerifier, remarks: remarksOf(decision)};
	switch (outcome) {
		case 'agreed':
		case 'not-an-egg-case':
			return {...look, outcome};
		case 'other-name':
			return {...look, outcome, name: speciesName(name, draft, region)};
		case 'higher-rank':
			return {...look, outcome, name: higherName(name)};
	}
}

/** The kinds that a verifier may name, the likeliest first, then the others by their names. */
export function taxaToName(draft: Draft, {profiles}: Region): readonly string[] {
	const known = Object.keys(profiles.taxa);
	const ranked = draft.ranking.map(({taxon}) => taxon).filter(taxon => known.includes(taxon));
	const others = known.filter(taxon => !ranked.includes(taxon));
	const byName = (taxon: string) => profiles.taxa[taxon]?.scientificName ?? taxon;
	return [...ranked, ...others.toSorted((a, b) => byName(a).localeCompare(byName(b)))];
}

/** Genera and families of those kinds, in the same order. */
export function higherToName(draft: Draft, region: Region): readonly string[] {
	const names = taxaToName(draft, region).flatMap(id => {
		const taxon = region.profiles.taxa[id];
		if (!taxon) return [];
		const genus = taxon.rank === 'family' ? [] : [taxon.scientificName.split(' ')[0] ?? ''];
		return [...genus, taxon.family];
	});
	return [...new Set(names)];
}

/** The rank of a name above the species: names of families end in -idae (ICZN, 4th edition, article 29.2). */
export function higherName(scientificName: string): VerifiedName {
	return {scientificName, taxonRank: scientificName.endsWith('idae') ? 'family' : 'genus'};
}

function speciesName(id: string, draft: Draft, {profiles}: Region): VerifiedName {
	const taxon = profiles.taxa[id];
	if (taxon) {
		const {scientificName, authorship, rank} = taxon;
		return {scientificName, scientificNameAuthorship: authorship || undefined, taxonRank: rank};
	}
	// A later key may no longer hold it; the draft was ranked with the key of its day.
	const ranked = draft.ranking.find(one => one.taxon === id)?.scientificName;
	if (ranked !== undefined) return {scientificName: ranked, taxonRank: 'species'};
	throw new Error(`Expected a kind of ${draft.region.id} or of the ranking of ${draft.id}; got "${id}"`);
}

function remarksOf({reason, words}: Decision): string | undefined {
	const known = reasons.find(one => one === reason);
	const said = [...(known ? [because[known]] : []), ...(words === undefined ? [] : [words])];
	return said.length === 0 ? undefined : said.join('; ');
}
