/** The key's part of a replay: the trail's answers followed until the key asks something new. */
import {type Conclusion, conclude, type Ranked, rank} from '../key/evidence.ts';
import type {Observed} from '../key/observed.ts';
import {beginKey, type KeySnapshot, stepKey, type Wanted, wantedBy} from '../key/states.ts';
import {type Facts, observedFrom} from './facts.ts';
import type {Flow} from './flow.ts';
import type {TrailEvent} from './trail.ts';

/** The question under which the width stands in a trail. */
export const widthQuestion = 'width';

/** What the key and the evidence came to. */
export type Found = {
	readonly observed: Observed;
	readonly leaves: readonly string[];
	readonly ranking: readonly Ranked[];
	readonly conclusion: Conclusion;
};

/** How far the key came: what was answered on the way, and what it asks or came to. */
export type KeyWalk = {
	readonly facts: Facts;
	readonly answered: readonly string[];
	readonly asks: {readonly kind: 'look' | 'width'; readonly id: string} | undefined;
	readonly found: Found | undefined;
};

/** Walks the key with the events in `queues`, taking out the ones it uses. */
export function walkKey(flow: Flow, begun: Facts, queues: Map<string, readonly TrailEvent[]>): KeyWalk {
	let facts: Facts = {...begun, length: begun.length ?? 'unmeasured'};
	let snapshot = beginKey(flow.key, observedFrom(facts));
	const answered: string[] = [];
	for (;;) {
		const wanted = wantedBy(flow.region, snapshot);
		if (wanted.kind === 'done')
			return {facts, answered, asks: undefined, found: foundFrom(flow, facts, snapshot)};
		const id = wanted.kind === 'look' ? wanted.character : widthQuestion;
		const [event, ...rest] = queues.get(id) ?? [];
		if (!event) return {facts, answered, asks: {kind: wanted.kind, id}, found: undefined};
		queues.set(id, rest);
		const learnt = learnInKey(facts, wanted, event);
		const next = stepWith(flow, snapshot, {wanted, facts: learnt});
		// A state that the key no longer offers is passed over: its question is asked anew.
		if (next.value === snapshot.value) continue;
		answered.push(id);
		facts = learnt;
		snapshot = next;
	}
}

function learnInKey(facts: Facts, wanted: Wanted, {answer}: TrailEvent): Facts {
	if (wanted.kind === 'look' && answer.kind === 'option')
		return {...facts, seen: {...facts.seen, [wanted.character]: answer.option}};
	if (wanted.kind === 'width' && answer.kind === 'sized') return {...facts, width: answer.length};
	if (wanted.kind === 'width' && answer.kind === 'unmeasured') return {...facts, width: 'unmeasured'};
	return facts;
}

function stepWith(flow: Flow, snapshot: KeySnapshot, step: {wanted: Wanted; facts: Facts}): KeySnapshot {
	const {seen, width} = observedFrom(step.facts);
	if (step.wanted.kind === 'look') {
		return stepKey(flow.key, snapshot, {type: 'seen', state: seen[step.wanted.character] ?? ''});
	}
	return width ? stepKey(flow.key, snapshot, {type: 'measured', sized: width}) : snapshot;
}

function foundFrom(flow: Flow, facts: Facts, snapshot: KeySnapshot): Found {
	const observed = observedFrom(facts);
	const ranking = rank(flow.region, observed);
	const {leaves} = snapshot.context;
	return {observed, leaves, ranking, conclusion: conclude(ranking, leaves)};
}
