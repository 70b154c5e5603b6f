/** The key followed from what is known to a conclusion, asking whoever can answer: a trail, a person, a simulation. */
import {type Conclusion, conclude} from './conclude.ts';
import {type Ranked, rank} from './evidence.ts';
import {cantTell, type Observed} from './observed.ts';
import type {Region} from './region.ts';
import {beginKey, type KeyMachine, type KeySnapshot, stepKey, type Wanted, wantedBy} from './states.ts';
import {
	gainOfLook,
	isAnswerTo,
	type TieBreak,
	tieBreak,
	widthWorthIt,
	worthAskingOnTheWay,
} from './tie-break.ts';

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
	/** Puts a question until its answer is taken; nothing when nobody answers. */
	const put = <T>(
		asks: Asks,
		observed: Observed,
		take: (learnt: Observed) => T | undefined,
	): T | undefined => {
		for (;;) {
			const learnt = begin.answer(asks, observed);
			const taken = learnt && take(learnt);
			if (learnt && !taken) continue;
			if (taken) asked.push(answerName(asks));
			return taken;
		}
	};
	let observed = begin.observed;
	let snapshot = beginKey(machine, observed);
	for (let wanted = wantedBy(region, snapshot); wanted.kind !== 'done'; wanted = wantedBy(region, snapshot)) {
		if (isIdle(region, {wanted, observed, leaves: snapshot.context.leaves})) {
			snapshot = passed(machine, snapshot, wanted);
			continue;
		}
		const [from, asks] = [snapshot, wanted];
		const step = put(asks, observed, told => {
			const next = answered(machine, from, {asks, told});
			return next.value === from.value ? undefined : {next, told};
		});
		if (!step) return {asked, end: {kind: 'asks', asks}};
		snapshot = step.next;
		observed = step.told;
	}
	const {leaves} = snapshot.context;
	for (const next of [widthWorthIt, tieBreak]) {
		const asks = next(region, foundFrom(region, observed, leaves));
		if (!asks) continue;
		const learnt = put(asks, observed, told => (isAnswerTo(region, asks, told) ? told : undefined));
		if (!learnt) return {asked, end: {kind: 'asks', asks}};
		observed = learnt;
	}
	return {asked, end: {kind: 'found', found: foundFrom(region, observed, leaves)}};
}

/**
 * Whether a question of the key is passed by: once a way has come to a name, the other ways still open
 * are asked about only where an answer is expected to tell something.
 */
function isIdle(
	region: Region,
	{wanted, observed, leaves}: {wanted: Asks; observed: Observed; leaves: readonly string[]},
): boolean {
	if (wanted.kind !== 'look' || leaves.length === 0 || observed.seen[wanted.character]) return false;
	return gainOfLook(region, rank(region, observed), wanted.character) < worthAskingOnTheWay;
}

/** Leaves every way of a question open, without anything being answered. */
function passed(machine: KeyMachine, snapshot: KeySnapshot, wanted: Wanted): KeySnapshot {
	const next = stepKey(machine, snapshot, {type: 'seen', state: cantTell});
	if (next.value === snapshot.value) {
		throw new Error(`Expected "${JSON.stringify(wanted)}" to be passed by; the walk stands still`);
	}
	return next;
}

function answered(
	machine: KeyMachine,
	snapshot: KeySnapshot,
	{asks, told}: {asks: Asks; told: Observed},
): KeySnapshot {
	if (asks.kind === 'look') {
		return stepKey(machine, snapshot, {type: 'seen', state: told.seen[asks.character] ?? ''});
	}
	return told.width ? stepKey(machine, snapshot, {type: 'measured', sized: told.width}) : snapshot;
}

function foundFrom(region: Region, observed: Observed, leaves: readonly string[]): Found {
	const ranking = rank(region, observed);
	return {observed, leaves, ranking, conclusion: conclude(ranking, leaves)};
}
