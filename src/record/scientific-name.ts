/** The name of a record: the lowest rank that is sure, with what the finder was told beside it. */
import type {Region} from '../key/region.ts';
import type {Draft} from './draft.ts';

/** Darwin Core terms that carry a name and how sure it is. */
export type NameTerms = {
	readonly scientificName: string;
	readonly scientificNameAuthorship?: string | undefined;
	readonly taxonRank: 'species' | 'genus' | 'family' | 'class';
	readonly identificationQualifier?: string | undefined;
	readonly verbatimIdentification?: string | undefined;
};

type Named = Pick<NameTerms, 'scientificName' | 'scientificNameAuthorship' | 'taxonRank'>;

// Sharks, skates, rays and chimaeras all lay or have laid egg cases, and no smaller group holds them all. Ranked as a
// class as in Nelson, Grande & Wilson 2016, Fishes of the World (from memory); some lists rank it elsewhere.
const anyEggCase: Named = {scientificName: 'Chondrichthyes', taxonRank: 'class'};

/**
 * The name of a draft: the one very likely or likely name; for a shortlist the genus or family that all its names
 * share; else `Chondrichthyes` with the rank of class, which is all that "an egg case" says. `?` as the qualifier
 * means that it may be no egg case, `cf.` that the name is likely and no more.
 */
export function nameTerms(draft: Draft, region: Region): NameTerms {
	return {
		...nameOf(draft, region),
		identificationQualifier: draft.doubt ? '?' : draft.sure === 'likely' ? 'cf.' : undefined,
		verbatimIdentification: draft.kind === 'left-alive' ? undefined : told(draft),
	};
}

function nameOf(draft: Draft, region: Region): Named {
	// A later key may no longer hold a taxon of an earlier draft: then nothing is known of it but its name.
	const taxa = draft.said.map(taxon => region.profiles.taxa[taxon]);
	const known = taxa.filter(taxon => taxon !== undefined);
	const [first] = known;
	if (!first || known.length < taxa.length) return anyEggCase;
	switch (draft.sure) {
		case 'very-likely':
		case 'likely':
			return {
				scientificName: first.scientificName,
				scientificNameAuthorship: first.authorship || undefined,
				taxonRank: first.rank,
			};
		case 'shortlist': {
			const genus = genusOf(first);
			if (genus !== undefined && known.every(taxon => genusOf(taxon) === genus))
				return {scientificName: genus, taxonRank: 'genus'};
			return known.every(taxon => taxon.family === first.family)
				? {scientificName: first.family, taxonRank: 'family'}
				: anyEggCase;
		}
		case 'unknown':
			return anyEggCase;
		default:
			return never(draft.sure);
	}
}

function genusOf(taxon: {readonly scientificName: string; readonly rank: string}): string | undefined {
	return taxon.rank === 'family' ? undefined : taxon.scientificName.split(' ')[0];
}

const spoken = {
	'very-likely': 'very likely',
	likely: 'likely',
	shortlist: 'shortlist',
	unknown: 'unknown',
} as const;

function told({sure, said, ranking}: Draft): string {
	const names = said.map(taxon => ranking.find(ranked => ranked.taxon === taxon)?.scientificName ?? taxon);
	return names.length === 0 ? spoken[sure] : `${spoken[sure]}: ${names.join('; ')}`;
}

function never(value: never): never {
	throw new Error(`Expected a known sureness; got ${JSON.stringify(value)}`);
}
