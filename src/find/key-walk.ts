/** The key's part of a replay: the trail's answers followed until the key asks something new. */
import {type Asks, answerName, type Found, followKey} from '../key/follow.ts';
import {isAnswerTo} from '../key/tie-break.ts';
import {type Facts, observedFrom} from './facts.ts';
import type {Flow} from './flow.ts';
import type {TrailEvent} from './trail.ts';

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
	const {asked, end} = followKey(flow.region, flow.key, {
		observed: observedFrom(facts),
		answer: (asks, observed) => {
			const [event, ...rest] = queues.get(answerName(asks)) ?? [];
			if (!event) return undefined;
			queues.set(answerName(asks), rest);
			const learnt = learnInKey(facts, asks, event);
			// A state that the key no longer offers is passed over: its question is asked anew.
			if (!isAnswerTo(flow.region, asks, observedFrom(learnt))) return observed;
			facts = learnt;
			return observedFrom(facts);
		},
	});
	if (end.kind === 'found') return {facts, answered: asked, asks: undefined, found: end.found};
	return {facts, answered: asked, asks: {kind: end.asks.kind, id: answerName(end.asks)}, found: undefined};
}

function learnInKey(facts: Facts, asks: Asks, {answer}: TrailEvent): Facts {
	if (asks.kind === 'look' && answer.kind === 'option')
		return {...facts, seen: {...facts.seen, [asks.character]: answer.option}};
	if (asks.kind === 'width' && answer.kind === 'sized') return {...facts, width: answer.length};
	if (asks.kind === 'width' && answer.kind === 'unmeasured') return {...facts, width: 'unmeasured'};
	return facts;
}
