/** A specimen taken through the key the way a conversation would take it: asked, ranked, named. */
import {type Asks, type Found, followKey} from './follow.ts';
import {cantTell, type Observed} from './observed.ts';
import type {Region} from './region.ts';
import type {KeyMachine} from './states.ts';
import {isAnswerTo} from './tie-break.ts';

/** What was asked of a specimen, and what it came to. */
export type Named = Found & {
	/** Characters and `width` in the order they were asked for; the length is known before the key begins. */
	readonly asked: readonly string[];
};

/** Names a specimen by what is asked of it; what it does not show is answered with `cantTell`. Throws on a made-up state. */
export function nameSpecimen(region: Region, machine: KeyMachine, specimen: Observed): Named {
	const length = specimen.length ?? {kind: 'unknown' as const};
	const {asked, end} = followKey(region, machine, {
		observed: {seen: {}, length, width: undefined, lost: specimen.lost, spot: specimen.spot},
		answer: (asks, observed) => shown(region, specimen, {asks, observed}),
	});
	if (end.kind !== 'found')
		throw new Error(`Expected every question to be answered; "${end.asks.question}" was not`);
	return {asked, ...end.found};
}

function shown(region: Region, specimen: Observed, step: {asks: Asks; observed: Observed}): Observed {
	const {asks, observed} = step;
	const learnt: Observed =
		asks.kind === 'width'
			? {...observed, width: specimen.width ?? {kind: 'unknown'}}
			: {...observed, seen: {...observed.seen, [asks.character]: specimen.seen[asks.character] ?? cantTell}};
	if (!isAnswerTo(region, asks, learnt)) {
		throw new Error(
			`Expected an answer that question "${asks.question}" of region "${region.id}" offers; got ${JSON.stringify(specimen)}`,
		);
	}
	return learnt;
}
