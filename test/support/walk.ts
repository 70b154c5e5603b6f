/** A conversation walked by itself: at each question every answer that it offers or takes. */
import {askAt} from '../../src/find/ask.ts';
import type {FindEvent, FindState, Turn} from '../../src/find/events.ts';
import {observedFrom} from '../../src/find/facts.ts';
import type {Flow} from '../../src/find/flow.ts';
import type {Ask} from '../../src/find/question.ts';
import {type Standing, standAt} from '../../src/find/stand.ts';
import {trailSchema} from '../../src/find/trail.ts';
import {takeTurn} from '../../src/find/turn.ts';
import {intervalOf} from '../../src/key/observed.ts';
import {beginKey} from '../../src/key/states.ts';

/** A turn taken on a walk, how it was reached, and when (UTC ms). */
export type Place = {
	readonly turn: Turn;
	readonly ask: Ask;
	readonly path: readonly string[];
	readonly now: number;
};

/** A place with every answer there, and where each leads. */
export type Visit = Place & {readonly ways: readonly {readonly answer: Try; readonly after: Place}[]};

/** One answer: a name for it in the path, and the event. */
export type Try = {readonly name: string; readonly event: FindEvent};

export const begunAt = Date.UTC(2026, 4, 2, 9, 30);
const minuteMs = 60_000;

/** Buttons that lead out of the question or to a menu, and answer nothing. */
const asides: ReadonlySet<string> = new Set(['here', 'fresh', 'another', 'correct']);
const fileSays = {fix: {latitude: 50.12, longitude: -5.53, accuracyM: 6}, date: '2026-05-01'};
const written: Readonly<Record<string, readonly string[]>> = {
	place: ['the north beach', 'SW 465 304', '50.12, -5.53'],
	date: ['2 May 2026', '2026-04-30'],
	count: ['12'],
	note: ['found under weed'],
};

/** Takes one event at a place; the clock goes on by a minute. */
export function step(
	flow: Flow,
	from: {turn: FindState; now: number; path: readonly string[]},
	tried: Try,
): Place {
	const now = from.now + minuteMs;
	const {trail, turn} = from.turn;
	const taken = takeTurn(flow, {trail, turn}, {event: tried.event, moment: {now, zone: 'Europe/London'}});
	return {turn: taken, ask: askAt(flow, taken.standing), path: [...from.path, tried.name], now};
}

/** Where every find begins. */
export function beginning(flow: Flow): Place {
	return step(
		flow,
		{turn: {trail: [], turn: 1}, now: begunAt, path: []},
		{name: 'begin', event: {kind: 'begin'}},
	);
}

/** A find after all that was said: an option's id presses it, other words are written, an event is an event. */
export function talked(flow: Flow, ...said: readonly (string | FindEvent)[]): Place {
	return goingOn(flow, beginning(flow), ...said);
}

/** The same from a place on. */
export function goingOn(flow: Flow, from: Place, ...said: readonly (string | FindEvent)[]): Place {
	return said.reduce<Place>((place, word) => step(flow, place, tried(place, word)), from);
}

function tried({turn, ask}: Place, word: string | FindEvent): Try {
	if (typeof word !== 'string') return {name: word.kind, event: word};
	const isButton =
		['back', 'why', 'here', 'correct'].includes(word) || ask.options.some(({id}) => id === word);
	return isButton ? pressed(turn, word) : {name: word, event: {kind: 'text', text: word}};
}

/** Presses the button with this id on the newest question. */
export function pressed(turn: FindState, option: string): Try {
	return {name: option, event: {kind: 'press', turn: turn.turn, option}};
}

/** Every answer to the question at hand, sizes on both sides of each boundary of the key among them. */
export function answersAt(flow: Flow, {turn, ask}: Place): readonly Try[] {
	const buttons = ask.options.filter(({id}) => !asides.has(id)).map(({id}) => pressed(turn, id));
	const isSize = ask.kind === 'length' || ask.kind === 'width';
	const words = isSize ? sizesToTry(flow, ask.kind) : (written[ask.kind] ?? []);
	return [
		...buttons,
		...words.map(text => ({name: text, event: {kind: 'text', text} as const})),
		...(ask.kind === 'place'
			? [{name: 'pin', event: {kind: 'pin', latitude: 50.1, longitude: -5.5} as const}]
			: []),
		...(ask.kind === 'photos' && turn.standing.facts.photos.length < 2
			? [{name: 'photo', event: {kind: 'photo', photo: turn.standing.facts.photos.length + 1} as const}]
			: []),
		...(ask.kind === 'photos' && turn.standing.facts.photos.length > 0
			? [{name: 'told', event: {kind: 'photo-told', photo: 1, told: fileSays} as const}]
			: []),
		...(ask.kind === 'soaking' ? [{name: 'woke', event: {kind: 'woke'} as const}] : []),
	];
}

/** Each place once for every way into its question; inside the key once more for every band that its size leaves open. */
export function everyPlace(flow: Flow): readonly Visit[] {
	const visits: Visit[] = [];
	const met = new Set<string>();
	const open = [beginning(flow)];
	for (let place = open.shift(); place !== undefined; place = open.shift()) {
		const from = place;
		const ways = answersAt(flow, from).map(answer => ({answer, after: step(flow, from, answer)}));
		visits.push({...from, ways});
		for (const {answer, after} of ways) {
			const name = `${nameOf(from)} ${answer.name} ${nameOf(after)} ${bandsIn(flow, after)}`;
			if (!met.has(name)) open.push(after);
			met.add(name);
		}
	}
	return visits;
}

/** The questions of the key that a place has behind it, those among them that its sizes answered. */
export function keyQuestionsBehind(flow: Flow, {turn}: Place): readonly string[] {
	const {facts, at, found} = turn.standing;
	const isInKey = found !== undefined || at.kind === 'look' || at.kind === 'width';
	return isInKey ? beginKey(flow.key, observedFrom(facts)).context.visited : [];
}

/** The question of a place told from its other faces. */
export function nameOf({ask, turn}: Place): string {
	// A question that two steps share leads elsewhere for a case that lives.
	const lives = turn.standing.facts.lives ? '/lives' : '';
	// What a file tells is offered beside the other answers.
	const offered = turn.standing.lastHere?.answer.kind.startsWith('photo-') ? '/offered' : '';
	return `${ask.question}/${ask.kind}${lives}${offered}`;
}

/** Where a trail stands once it was written down and read again. */
export function storedStanding(flow: Flow, trail: FindState['trail']): Standing {
	return standAt(flow, trailSchema.parse(JSON.parse(JSON.stringify(trail))));
}

function bandsIn(flow: Flow, place: Place): string {
	const {length} = observedFrom(place.turn.standing.facts);
	if (!length || keyQuestionsBehind(flow, place).length === 0) return '';
	const [low, high] = intervalOf(length);
	const bands = bandsOf(flow, 'length').filter(
		band => high > (band.fromMm ?? 0) && low < (band.belowMm ?? Number.POSITIVE_INFINITY),
	);
	return JSON.stringify(bands);
}

function bandsOf(flow: Flow, measure: 'length' | 'width') {
	return Object.values(flow.region.key.questions).flatMap(question =>
		'measure' in question && question.measure === measure ? question.bands : [],
	);
}

/** Sizes around every boundary, one whose unit has to be asked, and the ends of what is possible. */
function sizesToTry(flow: Flow, measure: 'length' | 'width'): readonly string[] {
	const [least, most] = flow.region.key.possibleMm[measure];
	const edges = bandsOf(flow, measure).flatMap(({fromMm}) => (fromMm === undefined ? [] : [fromMm]));
	const around = [...new Set(edges)].flatMap(edge => [edge - 3, edge, edge + 3]);
	const fitting = [least, ...around, most].filter(mm => mm >= least && mm <= most);
	return [...fitting.map(mm => `${mm} mm`), '6'];
}
