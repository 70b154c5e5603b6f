/** The key compiled to an XState machine: one state for each question, the same arrows. */
import {initialTransition, type SnapshotFrom, setup, transition} from 'xstate';
import {cantTell, intervalOf, nothingObserved, type Observed, type Sized} from './observed.ts';
import type {Key, Question, Region} from './region.ts';

/** What a walk through the key has gathered; `open` holds ways not followed yet, `leaves` the taxa reached. */
export type KeyContext = {
	readonly observed: Observed;
	readonly open: readonly string[];
	readonly visited: readonly string[];
	readonly leaves: readonly string[];
};

/** `begin` hands in what is known; otherwise the type is a state seen, `cant-tell`, or `measured`. */
export type KeyEvent =
	| {readonly type: 'begin'; readonly observed: Observed}
	| {readonly type: 'seen'; readonly state: string}
	| {readonly type: 'measured'; readonly sized: Sized};

/** What the key wants to know next. */
export type Wanted =
	| {readonly kind: 'look'; readonly question: string; readonly character: string}
	| {readonly kind: 'width'; readonly question: string}
	| {readonly kind: 'done'};

/** The machine of a key. */
export type KeyMachine = ReturnType<typeof compileKey>;
/** Where that machine stands, with what the walk has gathered. */
export type KeySnapshot = SnapshotFrom<KeyMachine>;

type Guarded = {readonly context: KeyContext};
type Heard = {readonly context: KeyContext; readonly event: KeyEvent};

const empty: KeyContext = {observed: nothingObserved, open: [], visited: [], leaves: []};
const base = setup({types: {context: emptyContext(), events: anyEvent()}});

/** Builds the machine of a region once; states are the ids of questions and taxa, `crossing` and `done`. */
export function compileKey(region: Region) {
	const {key, profiles} = region;
	const questions = Object.entries(key.questions);
	const taxa = Object.keys(profiles.taxa);
	const places = [...questions.map(([id]) => id), ...taxa];
	return base.createMachine({
		id: `key-${region.id}`,
		context: empty,
		initial: 'waiting',
		states: {
			waiting: {
				on: {
					begin: {
						target: key.begins,
						actions: base.assign({
							observed: ({context, event}) => (event.type === 'begin' ? event.observed : context.observed),
						}),
					},
				},
			},
			...Object.fromEntries(questions.map(([id, question]) => [id, questionState(key, id, question)])),
			...Object.fromEntries(
				taxa.map(id => [
					id,
					{
						entry: base.assign({leaves: ({context}: Guarded) => [...new Set([...context.leaves, id])]}),
						always: {target: 'crossing'},
					},
				]),
			),
			crossing: {
				always: [
					...places.map(id => ({
						guard: ({context}: Guarded) => context.open[0] === id,
						target: id,
						actions: base.assign({open: ({context}: Guarded) => context.open.slice(1)}),
					})),
					{target: 'done'},
				],
			},
			done: {type: 'final'},
		},
	});
}

// Every walk begins at the same place.
const beginnings = new WeakMap<KeyMachine, KeySnapshot>();

/** Starts a walk with what is known and follows every arrow that needs no question. */
export function beginKey(machine: KeyMachine, observed: Observed): KeySnapshot {
	const waiting = beginnings.get(machine) ?? initialTransition(machine)[0];
	beginnings.set(machine, waiting);
	return stepKey(machine, waiting, {type: 'begin', observed});
}

/** The snapshot after one answer; an answer that fits no arrow changes nothing. */
export function stepKey(machine: KeyMachine, snapshot: KeySnapshot, event: KeyEvent): KeySnapshot {
	const [next] = transition(machine, snapshot, event);
	return next;
}

/** What the key asks in this snapshot. */
export function wantedBy(region: Region, snapshot: KeySnapshot): Wanted {
	if (snapshot.status === 'done') return {kind: 'done'};
	const id = String(snapshot.value);
	const question = region.key.questions[id];
	if (!question) throw new Error(`Expected a question of region "${region.id}"; the walk stands at "${id}"`);
	return 'look' in question
		? {kind: 'look', question: id, character: question.look}
		: {kind: 'width', question: id};
}

function questionState(key: Key, id: string, question: Question) {
	const entry = base.assign({visited: ({context}: Guarded) => [...new Set([...context.visited, id])]});
	return 'look' in question ? {entry, ...lookState(key, question)} : {entry, ...measureState(question)};
}

function lookState(key: Key, question: Extract<Question, {look: string}>) {
	const character = question.look;
	const needs = key.characters[character]?.needs ?? [];
	const ways = Object.entries(question.options).map(([state, {leads}]) => ({state, leads}));
	const isHidden = ({context}: Guarded) =>
		context.observed.seen[character] === cantTell || needs.some(part => context.observed.lost.includes(part));
	const note = base.assign({
		observed: ({context, event}: Heard) =>
			event.type === 'seen'
				? {...context.observed, seen: {...context.observed.seen, [character]: event.state}}
				: context.observed,
	});
	return {
		always: [
			...ways.map(({state, leads}) => ({
				guard: ({context}: Guarded) => context.observed.seen[character] === state,
				target: leads,
			})),
			{
				guard: isHidden,
				target: ways[0]?.leads ?? 'crossing',
				actions: base.assign({
					open: ({context}: Guarded) =>
						opened(
							context,
							ways.slice(1).map(way => way.leads),
						),
				}),
			},
		],
		on: {
			seen: {
				guard: ({event}: Heard) =>
					event.type === 'seen' && (event.state === cantTell || ways.some(way => way.state === event.state)),
				actions: note,
			},
		},
	};
}

function measureState(question: Extract<Question, {measure: string}>) {
	const {measure, bands} = question;
	const stillOpen = (context: KeyContext) => {
		const sized = sizeOf(context, measure);
		if (!sized) return [];
		const [low, high] = intervalOf(sized);
		return bands.filter(
			band =>
				(high > (band.fromMm ?? 0) || low >= (band.fromMm ?? 0)) &&
				low < (band.belowMm ?? Number.POSITIVE_INFINITY),
		);
	};
	return {
		always: bands.map(band => ({
			guard: ({context}: Guarded) => stillOpen(context)[0] === band,
			target: band.leads,
			actions: base.assign({
				open: ({context}: Guarded) =>
					opened(
						context,
						stillOpen(context)
							.slice(1)
							.map(other => other.leads),
					),
			}),
		})),
		on: {
			measured: {
				actions: base.assign({
					observed: ({context, event}: Heard) =>
						event.type === 'measured' ? {...context.observed, [measure]: event.sized} : context.observed,
				}),
			},
		},
	};
}

function sizeOf(context: KeyContext, measure: 'length' | 'width'): Sized | undefined {
	return measure === 'length' ? context.observed.length : context.observed.width;
}

/** The ways still to be followed, those seen before left out. */
function opened(context: KeyContext, leads: readonly string[]): readonly string[] {
	return [...new Set([...context.open, ...leads])].filter(lead => !context.visited.includes(lead));
}

function emptyContext(): KeyContext {
	return empty;
}

function anyEvent(): KeyEvent {
	return {type: 'seen', state: cantTell};
}
