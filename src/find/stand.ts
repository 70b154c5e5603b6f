/** Where a find stands: its trail replayed through the machines. */

import type {Found} from '../key/follow.ts';
import {goOn, type Step} from './around.ts';
import type {Facts} from './facts.ts';
import type {Flow} from './flow.ts';
import {walkKey} from './key-walk.ts';
import {type AroundSnapshot, beginAround, stepAround} from './machine.ts';
import {byQuestion, type Trail, type TrailEvent} from './trail.ts';
import {answersOfSet, type Trayed, trayedFrom, trayQuestion} from './tray.ts';

/** The question a find waits at: a step around the key, a character, the width, the finder's note, or a tray. */
export type At =
	| {readonly kind: 'step'; readonly id: string; readonly step: Step}
	| {readonly kind: 'look'; readonly id: string}
	| {readonly kind: 'width'; readonly id: string}
	| {readonly kind: 'note'; readonly id: string}
	| {readonly kind: 'tray'; readonly id: string; readonly trayed: Trayed};

/** Where a find stands: its question, and what its trail has said so far. */
export type Standing = {
	readonly at: At;
	readonly facts: Facts;
	/** The last thing heard at this very question: a photo more, a part marked, a number without a unit. */
	readonly lastHere: TrailEvent | undefined;
	/** Questions answered on the way here, in order. */
	readonly answered: readonly string[];
	/** What the key came to, once every question it needs is answered. */
	readonly found: Found | undefined;
	/** Several cases on one photo, of which this find may be some. */
	readonly trayed: Trayed | undefined;
	/** The question was answered before and is put again. */
	readonly isReopened: boolean;
	/** There is something to go back from. */
	readonly hasPast: boolean;
};

/** The question under which the finder's note stands in a trail. */
export const noteQuestion = 'note';

/** Replays a trail; events that no longer fit the key or the steps are passed over, never lost. */
export function standAt(flow: Flow, trail: Trail): Standing {
	const moved = withMovedIds(flow, trail);
	const groups = byQuestion(moved);
	const trayed = trayedFrom(groups.get(trayQuestion));
	const queues = new Map(groups);
	for (const event of answersOfSet(flow, moved, trayed)) queues.set(event.question, [event]);
	const note = groups.get(noteQuestion)?.at(-1)?.answer;
	const reached = reach(flow, queues);
	const isNoteOpen = isReopened(moved, noteQuestion);
	const at: At = isNoteOpen ? {kind: 'note', id: noteQuestion} : (atTray(flow, trayed) ?? reached.at);
	const lastHere = groups.get(at.id)?.at(-1);
	const isOpenAgain = isReopened(moved, at.id);
	return {
		...reached,
		at,
		facts: {
			...reached.facts,
			note: note?.kind === 'note' ? note.text : undefined,
			alike: moved.flatMap(({answer}) => (answer.kind === 'alike' ? [answer.find] : [])).at(-1),
			// Photos may come at any time, not only when asked for.
			photos: moved.flatMap(({answer}) => (answer.kind === 'photo' ? [answer.photo] : [])),
		},
		lastHere,
		trayed,
		isReopened: isOpenAgain,
		// What was carried from another case and still lies ahead is no past.
		hasPast:
			reached.answered.length > 0 || lastHere !== undefined || isOpenAgain || trayed?.stage === 'chosen',
	};
}

/** A tray is asked about before all else; one that was left ends the find that was begun for it. */
function atTray(flow: Flow, trayed: Trayed | undefined): At | undefined {
	if (trayed?.stage === 'wanted' || trayed?.stage === 'shown')
		return {kind: 'tray', id: trayQuestion, trayed};
	if (trayed?.stage !== 'left') return undefined;
	const steps = Object.entries(flow.around.steps);
	const [end] = steps.filter(([, step]) => step.kind === 'end' && step.outcome === 'thrown');
	return end && {kind: 'step', id: end[0], step: end[1]};
}

type Reached = Pick<Standing, 'at' | 'facts' | 'answered' | 'found'>;

function reach(flow: Flow, queues: Map<string, readonly TrailEvent[]>): Reached {
	const answered: string[] = [];
	let snapshot = beginAround(flow.machine);
	let inKey: Partial<Facts> = {};
	let found: Found | undefined;
	for (;;) {
		const id = String(snapshot.value);
		const step = flow.around.steps[id];
		if (!step) throw new Error(`Expected a step of flows/around.yaml; the walk stands at "${id}"`);
		const facts = {...snapshot.context.facts, ...inKey};
		if (step.kind === 'key') {
			const walk = walkKey(flow, facts, queues);
			answered.push(...walk.answered);
			inKey = {seen: walk.facts.seen, width: walk.facts.width, length: walk.facts.length};
			if (walk.asks) return {at: walk.asks, facts: walk.facts, answered, found: undefined};
			found = walk.found;
			snapshot = stepAround(flow.machine, snapshot, {
				question: id,
				answer: {kind: 'option', option: goOn},
				at: 0,
			});
			continue;
		}
		// Two steps that say the same are one question, answered once.
		const question = step.says ?? id;
		const [event, ...rest] = queues.get(question) ?? [];
		if (!event) return {at: {kind: 'step', id: question, step}, facts, answered, found};
		queues.set(question, rest);
		const next: AroundSnapshot = stepAround(flow.machine, snapshot, event);
		if (next.value !== snapshot.value && !answered.includes(question)) answered.push(question);
		snapshot = next;
	}
}

function isReopened(trail: Trail, question: string): boolean {
	return trail.some(event => event.question === question && event.answer.kind === 'reopen');
}

/** Ids that a key author renamed or dropped, brought up to date (`moved` in key.yaml). */
export function withMovedIds(flow: Flow, trail: Trail): Trail {
	const moves = new Map(flow.region.key.moved.map(({from, to}) => [from, to]));
	if (!trail.some(({question}) => moves.has(question))) return trail;
	return trail.flatMap(event => {
		if (!moves.has(event.question)) return [event];
		const to = moves.get(event.question);
		return to === undefined ? [] : [{...event, question: to}];
	});
}
