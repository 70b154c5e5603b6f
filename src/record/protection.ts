/** How coarse the place of a record has to be told in public, and why. */
import type {Region, Taxon} from '../key/region.ts';
import type {CoarseSideM} from '../place/coarse-square.ts';
import type {RecordForExport, VerifiedName} from './for-export.ts';

/** The side of the square that hides a place, and the reasons in words. */
export type Hiding = {readonly sideM: CoarseSideM; readonly because: readonly string[]};

// A name that was not said, but that the record gives at least this probability, hides the place as well; judged.
const leastProbability = 0.1;

/**
 * How a record's place is hidden: because its finder wishes so, because a kind that it may be is protected, or both,
 * and then in the larger square. `undefined` when it need not be.
 */
export function hidingOf(record: RecordForExport, region: Region): Hiding | undefined {
	const laws = taxaOf(record, region).flatMap(taxon => lawOf(taxon, region));
	const wish = record.coarseM === undefined ? [] : [{sideM: record.coarseM, reason: 'as its finder wishes'}];
	const reasons = [...wish, ...laws];
	const [largest] = reasons.map(({sideM}) => sideM).sort((one, other) => other - one);
	return largest && {sideM: largest, because: [...new Set(reasons.map(({reason}) => reason))]};
}

/** The profiles a record may stand for: what a verifier named, else what the finder was told or may have found. */
function taxaOf({draft, verification}: RecordForExport, {profiles}: Region): readonly Taxon[] {
	const likely = draft.ranking.filter(({probability}) => probability >= leastProbability);
	const finder = [...draft.said, ...likely.map(({taxon}) => taxon)].flatMap(id => profiles.taxa[id] ?? []);
	switch (verification?.outcome) {
		case 'not-an-egg-case':
			return [];
		case 'other-name':
			return namedBy(verification.name, profiles.taxa);
		case 'higher-rank':
			return [...finder, ...namedBy(verification.name, profiles.taxa)];
		default:
			return finder;
	}
}

function namedBy({scientificName}: VerifiedName, taxa: Region['profiles']['taxa']): readonly Taxon[] {
	return Object.values(taxa).filter(
		taxon =>
			taxon.scientificName === scientificName ||
			taxon.scientificName.split(' ')[0] === scientificName ||
			taxon.family === scientificName,
	);
}

function lawOf(taxon: Taxon, {profiles}: Region) {
	if (!taxon.protected) return [];
	const {sideM, source, page} = taxon.protected;
	const law = [profiles.sources[source]?.citation ?? source, ...(page === undefined ? [] : [page])].join(
		', ',
	);
	return [{sideM, reason: `since ${taxon.scientificName} is protected by ${law}`}];
}
