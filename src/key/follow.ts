/** The key followed from what is known to a conclusion, asking whoever can answer: a trail, a person, a simulation. */
import {type Conclusion, conclude, type Ranked, rank} from './evidence.ts';
import type {Observed} from './observed.ts';
import type {Region} from './region.ts';
import {beginKey, type KeyMachine, type KeySnapshot, stepKey, type Wanted, wantedBy} from './states.ts';
import {isAnswerTo, type TieBreak, tieBreak} from './tie-break.ts';

/** A question that the key, or one more after it, asks: a character to look at, or the width. */
export type Asks = TieBreak;

/** What is observed once the question is answered; nothing when nobody answers it. */
export type Answerer = (asks: Asks, observed: Observed) => Observed | undefined;

/** What the key and the evidence came to. */
export type Found = {
	readonly observed: Observed;
	readonly leaves: readonly string[];
	readonly ranking: readonly Ranked[];
	readonly conclusion: Conclusion;
};

/** How far the key was followed: what was answered, and the open question or the end. */
export type Followed = {
	readonly asked: readonly string[];
	readonly end:
		| {readonly kind: 'asks'; readonly asks: Asks}
		| {readonly kind: 'found'; readonly found: Found};
};

/** Under this name an answer to a question is kept: its character, or `width`. */
export function answerName(asks: Asks): string {
	return asks.kind === 'look' ? asks.character : 'width';
}

/** Follows the key; an answer that the question does not offer is passed over and the question put again. */
export function followKey(
	region: Region,
	machine: KeyMachine,
	begin: {observed: Observed; answer: Answerer},
): Followed {
	const asked: string[] = [];
	let observed = begin.observed;
	let snapshot = beginKey(machine, observed);
	for (let wanted = wantedBy(region, snapshot); wanted.kind !== 'done'; wanted = wantedBy(region, snapshot)) {
		const learnt = begin.answer(wanted, observed);
		if (!learnt) return {asked, end: {kind: 'asks', asks: wanted}};
		const next = answered(machine, snapshot, {wanted, learnt});
		if (next.value === snapshot.value) continue;
		asked.push(answerName(wanted));
		observed = learnt;
		snapshot = next;
	}
	const found = foundFrom(region, observed, snapshot.context.leaves);
	const asks = tieBreak(region, found);
	if (!asks) return {asked, end: {kind: 'found', found}};
	for (;;) {
		const learnt = begin.answer(asks, observed);
		if (!learnt) return {asked, end: {kind: 'asks', asks}};
		if (!isAnswerTo(region, asks, learnt)) continue;
		const last = foundFrom(region, learnt, found.leaves);
		return {asked: [...asked, answerName(asks)], end: {kind: 'found', found: last}};
	}
}

function answered(
	machine: KeyMachine,
	snapshot: KeySnapshot,
	step: {wanted: Wanted; learnt: Observed},
): KeySnapshot {
	const {wanted, learnt} = step;
	if (wanted.kind === 'look') {
		return stepKey(machine, snapshot, {type: 'seen', state: learnt.seen[wanted.character] ?? ''});
	}
	return learnt.width ? stepKey(machine, snapshot, {type: 'measured', sized: learnt.width}) : snapshot;
}

function foundFrom(region: Region, observed: Observed, leaves: readonly string[]): Found {
	const ranking = rank(region, observed);
	return {observed, leaves, ranking, conclusion: conclude(ranking, leaves)};
}
