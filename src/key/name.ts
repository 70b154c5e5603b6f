/** A specimen taken through the key the way a conversation would take it: asked, ranked, named. */
import {type Conclusion, conclude, type Ranked, rank} from './evidence.ts';
import {cantTell, type Observed} from './observed.ts';
import type {Region} from './region.ts';
import {beginKey, type KeyMachine, stepKey, wantedBy} from './states.ts';

/** What the key asked of a specimen, and what it came to. */
export type Named = {
	/** Characters and `width` in the order they were asked for; the length is known before the key begins. */
	readonly asked: readonly string[];
	readonly leaves: readonly string[];
	/** What was answered to what was asked. */
	readonly observed: Observed;
	readonly ranking: readonly Ranked[];
	readonly conclusion: Conclusion;
};

/** Names a specimen by what the key asks of it; what it does not show is answered with `cantTell`. */
export function nameSpecimen(region: Region, machine: KeyMachine, specimen: Observed): Named {
	const asked: string[] = [];
	const length = specimen.length ?? {kind: 'unknown'};
	let snapshot = beginKey(machine, {seen: {}, length, width: undefined, lost: specimen.lost});
	for (let wanted = wantedBy(region, snapshot); wanted.kind !== 'done'; wanted = wantedBy(region, snapshot)) {
		asked.push(wanted.kind === 'look' ? wanted.character : 'width');
		const next =
			wanted.kind === 'look'
				? stepKey(machine, snapshot, {type: 'seen', state: specimen.seen[wanted.character] ?? cantTell})
				: stepKey(machine, snapshot, {type: 'measured', sized: specimen.width ?? {kind: 'unknown'}});
		if (next.value === snapshot.value) {
			throw new Error(
				`Expected an answer that question "${wanted.question}" of region "${region.id}" offers; got ${JSON.stringify(specimen)}`,
			);
		}
		snapshot = next;
	}
	const {observed, leaves} = snapshot.context;
	const ranking = rank(region, observed);
	return {asked, leaves, observed, ranking, conclusion: conclude(ranking, leaves)};
}
