/** The questions around the key as an XState machine: one state for each step, the same arrows. */
import {initialTransition, type SnapshotFrom, setup, transition} from 'xstate';
import {type Around, goOn, type Step, type Way, waysOf} from './around.ts';
import {type Facts, learn, noFacts} from './facts.ts';
import type {Answer, TrailEvent} from './trail.ts';

type Context = {readonly facts: Facts};

/** An answer taken at a step; `option` names the arrow, or nothing when more of the same may follow. */
export type Answered = {
	readonly type: 'answered';
	readonly option: string | undefined;
	readonly event: TrailEvent;
};

/** The machine of the steps around the key. */
export type AroundMachine = ReturnType<typeof compileAround>;
/** Where that machine stands, with the facts it has gathered. */
export type AroundSnapshot = SnapshotFrom<AroundMachine>;

type Heard = {readonly context: Context; readonly event: Answered};

const base = setup({types: {context: emptyContext(), events: anyEvent()}});

/** Builds the machine once; a step of kind `end` is final. */
export function compileAround(around: Around) {
	return base.createMachine({
		id: 'around',
		context: {facts: noFacts},
		initial: around.begins,
		states: Object.fromEntries(Object.entries(around.steps).map(([id, step]) => [id, stateOf(step)])),
	});
}

// A turn replays its trail before and after the event: what was worked out for an event lasts as long as that does.
const beginnings = new WeakMap<AroundMachine, AroundSnapshot>();
const steps = new WeakMap<AroundSnapshot, WeakMap<TrailEvent, AroundSnapshot>>();

/** Where every find begins. */
export function beginAround(machine: AroundMachine): AroundSnapshot {
	const known = beginnings.get(machine);
	if (known) return known;
	const [begun] = initialTransition(machine);
	beginnings.set(machine, begun);
	return begun;
}

/** The snapshot after one event; an answer that fits no arrow of the step changes nothing. */
export function stepAround(
	machine: AroundMachine,
	snapshot: AroundSnapshot,
	event: TrailEvent,
): AroundSnapshot {
	const known = steps.get(snapshot)?.get(event);
	if (known) return known;
	const [next] = transition(machine, snapshot, {type: 'answered', option: optionOf(event.answer), event});
	const after = steps.get(snapshot) ?? new WeakMap<TrailEvent, AroundSnapshot>();
	steps.set(snapshot, after.set(event, next));
	return next;
}

/** Which arrow an answer takes; nothing for one that may be followed by more. */
export function optionOf(answer: Answer): string | undefined {
	switch (answer.kind) {
		case 'option':
			return answer.option;
		case 'place':
		case 'date':
		case 'count':
		case 'sized':
		case 'unmeasured':
		case 'soak':
		case 'woke':
			return goOn;
		case 'photo':
		case 'parts':
		case 'number':
		case 'proposed':
		case 'not-quite':
		case 'note':
		case 'photo-place':
		case 'photo-date':
		case 'reopen':
		case 'alike':
		case 'tray-wanted':
		case 'tray':
		case 'picked':
		case 'taken-out':
		case 'one-kind':
		case 'tray-left':
		case 'handed-on':
			return undefined;
	}
}

function stateOf(step: Step) {
	if (step.kind === 'end') return {type: 'final' as const};
	return {on: {answered: [...waysOf(step).map(arrow), {actions: noteWith(undefined)}]}};
}

function arrow(way: Way) {
	return {
		guard: ({event}: Heard) => event.option === way.option,
		target: way.leads,
		actions: noteWith(way),
	};
}

function noteWith(way: Way | undefined) {
	return base.assign({facts: ({context, event}: Heard) => learn(context.facts, event.event, way?.notes)});
}

function emptyContext(): Context {
	return {facts: noFacts};
}

function anyEvent(): Answered {
	return {type: 'answered', option: undefined, event: {question: '', answer: {kind: 'woke'}, at: 0}};
}
