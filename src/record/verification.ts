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
export function verificationFrom(decision: Decision, region: Region): Verification {
	const {outcome, name = ''} = decision;
	const look = {at: decision.at, by: decision.publicName ?? namelessVerifier, remarks: remarksOf(decision)};
	switch (outcome) {
		case 'agreed':
		case 'not-an-egg-case':
			return {...look, outcome};
		case 'other-name':
		case 'higher-rank':
			return {...look, outcome, name: nameGiven(name, region)};
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

/** A scientific name as a verifier gives it, with what the region knows of it; its ids may change, names do not. */
export function nameGiven(scientificName: string, {profiles}: Region): VerifiedName {
	const taxon = Object.values(profiles.taxa).find(one => one.scientificName === scientificName);
	if (!taxon) return {scientificName, taxonRank: rankOf(scientificName)};
	return {scientificName, scientificNameAuthorship: taxon.authorship || undefined, taxonRank: taxon.rank};
}

/** Names of families end in -idae, those of species are two words (ICZN, 4th edition, articles 29.2 and 5.1). */
function rankOf(scientificName: string): VerifiedName['taxonRank'] {
	if (scientificName.endsWith('idae')) return 'family';
	return scientificName.includes(' ') ? 'species' : 'genus';
}

function remarksOf({reason, words}: Decision): string | undefined {
	const known = reasons.find(one => one === reason);
	const said = [...(known ? [because[known]] : []), ...(words === undefined ? [] : [words])];
	return said.length === 0 ? undefined : said.join('; ');
}
