/** What was found, counted: by kind where one name is sure enough, and apart what is one of several or has no name. */
import type {Draft} from './draft.ts';

/** A saved record as far as it is counted; a verifier's word counts more than the key's. */
export type Counted = {
	readonly draft: Pick<Draft, 'kind' | 'said' | 'count'> & {readonly region: {readonly id: string}};
	readonly decision?: {readonly outcome: string; readonly name?: string | undefined} | undefined;
};

/** So many cases of one kind. */
export type KindCount = {readonly region: string; readonly taxon: string; readonly cases: number};

/** The cases of some finds, each counted once. */
export type Tally = {
	/** Most first. */
	readonly kinds: readonly KindCount[];
	/** Of which several names are possible: not counted with any of them. */
	readonly oneOfSeveral: number;
	readonly unnamed: number;
	readonly leftAlive: number;
	readonly cases: number;
	readonly finds: number;
	/** Finds that nobody who knows egg cases has looked at. */
	readonly unchecked: number;
};

/** Counts records; those that a verifier found to be no egg case are left out. */
export function tallyOf(records: readonly Counted[]): Tally {
	const counted = records.filter(({decision}) => decision?.outcome !== 'not-an-egg-case');
	const kinds = new Map<string, KindCount>();
	const apart = {several: 0, unnamed: 0, alive: 0};
	for (const {draft, decision} of counted) {
		const cases = draft.count ?? 1;
		const names = namesOf(draft, decision);
		const [taxon, ...others] = names;
		if (draft.kind === 'left-alive') apart.alive += cases;
		else if (taxon === undefined) apart.unnamed += cases;
		else if (others.length > 0) apart.several += cases;
		else {
			const region = draft.region.id;
			const id = `${region} ${taxon}`;
			kinds.set(id, {region, taxon, cases: (kinds.get(id)?.cases ?? 0) + cases});
		}
	}
	return {
		kinds: [...kinds.values()].toSorted((a, b) => b.cases - a.cases || a.taxon.localeCompare(b.taxon)),
		oneOfSeveral: apart.several,
		unnamed: apart.unnamed,
		leftAlive: apart.alive,
		cases: counted.reduce((sum, {draft}) => sum + (draft.count ?? 1), 0),
		finds: counted.length,
		unchecked: counted.filter(({decision}) => decision === undefined).length,
	};
}

/** The names that a find counts for; a genus or family counts as several. */
function namesOf({said}: Counted['draft'], decision: Counted['decision']): readonly string[] {
	if (decision?.outcome === 'other-name' && decision.name !== undefined) return [decision.name];
	if (decision?.outcome === 'higher-rank') return [decision.name ?? '', ''];
	return said;
}
