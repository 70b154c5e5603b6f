/** Several cases on one photo, as a trail tells of them: shown, ticked, chosen as one kind, handed on. */
import type {Flow} from './flow.ts';
import type {Proposal, Tray, TrayCase} from './proposal.ts';
import type {Trail, TrailEvent} from './trail.ts';
import {type SetSizes, setSizes} from './tray-set.ts';

/** The question under which all that concerns a tray stands in a trail. */
export const trayQuestion = 'tray';

/** How far a tray has come. */
export type Trayed = {
	/** `passed`: left where one length was asked for, which is asked for again. */
	readonly stage: 'wanted' | 'shown' | 'chosen' | 'left' | 'passed';
	readonly origin: 'size' | 'tray' | 'rest';
	readonly tray: Tray | undefined;
	readonly picked: readonly number[];
	/** Taken out, since their lines lie wrong. */
	readonly out: readonly number[];
	/** What was ticked before each tick since the photo was last shown anew, oldest first. */
	readonly before: readonly (readonly number[])[];
	/** The photo of which the rest is another find's by now. */
	readonly handedOn: number | undefined;
	/** What was left on an earlier photo, when those that were chosen there were laid out once more. */
	readonly owed: Tray | undefined;
};

const nothing: Trayed = {
	stage: 'wanted',
	origin: 'tray',
	tray: undefined,
	picked: [],
	out: [],
	before: [],
	handedOn: undefined,
	owed: undefined,
};

/** How far the tray of a find has come; nothing where it has none. */
export function trayedFrom(events: readonly TrailEvent[] = []): Trayed | undefined {
	const [first] = events;
	return first && events.reduce(afterEvent, nothing);
}

function afterEvent(trayed: Trayed, {answer}: TrailEvent): Trayed {
	switch (answer.kind) {
		case 'tray-wanted':
			return {...nothing, handedOn: trayed.handedOn};
		case 'tray': {
			const {tray, origin} = answer;
			return {...nothing, stage: 'shown', origin, tray, handedOn: trayed.handedOn, owed: restOf(trayed)};
		}
		case 'picked':
			return {...trayed, picked: answer.numbers, before: [...trayed.before, trayed.picked]};
		case 'taken-out': {
			const picked = trayed.picked.filter(number => number !== answer.number);
			return {...trayed, picked, out: [...trayed.out, answer.number], before: []};
		}
		case 'one-kind':
			return {...trayed, stage: 'chosen', picked: answer.numbers};
		case 'tray-left':
			return {...trayed, stage: trayed.origin === 'size' ? 'passed' : 'left'};
		case 'handed-on':
			return {...trayed, handedOn: answer.photo};
		default:
			return trayed;
	}
}

/** The cases that may still be chosen. */
export function casesLeft({tray, out}: Trayed): readonly TrayCase[] {
	return tray?.cases.filter(({number}) => !out.includes(number)) ?? [];
}

/** The cases that are ticked or chosen. */
export function casesPicked(trayed: Trayed): readonly TrayCase[] {
	return casesLeft(trayed).filter(({number}) => trayed.picked.includes(number));
}

/** What is left for another find once a set was chosen; nothing when nothing is, or another find has it. */
export function restOf(trayed: Trayed | undefined): Tray | undefined {
	const rest = trayed && (leftOn(trayed) ?? trayed.owed);
	return rest?.photo === trayed?.handedOn ? undefined : rest;
}

function leftOn(trayed: Trayed): Tray | undefined {
	if (trayed.stage !== 'chosen' || !trayed.tray) return undefined;
	const cases = casesLeft(trayed).filter(({number}) => !trayed.picked.includes(number));
	return cases.length === 0 ? undefined : {...trayed.tray, cases};
}

/** That the rest was handed on, in front of all else: no Back takes it off, or there would be two finds of it. */
export function handedOn(trail: Trail, rest: Tray, at: number): Trail {
	return [{question: trayQuestion, answer: {kind: 'handed-on', photo: rest.photo}, at}, ...trail];
}

/** One case with one line as a tray of one. */
export function trayOfOne({lengths, width, outline, ...on}: Proposal): Tray | undefined {
	const [length, second] = lengths;
	if (!length || second) return undefined;
	const sizes = {length, ...(width ? {width} : {}), ...(outline ? {outline} : {})};
	return {...on, cases: [{number: 1, ...sizes}]};
}

/** The one case of a tray by itself. */
export function proposalOfOne({cases, ...on}: Tray): Proposal | undefined {
	const [only, second] = cases;
	if (!only || second) return undefined;
	const {length, width, outline} = only;
	return {...on, lengths: [length], ...(width ? {width} : {}), ...(outline ? {outline} : {})};
}

/** Whether its cases were laid in water since the photo: they grow there, so that it no longer tells how long they are. */
export function isOutgrown(trail: Trail, tray: Tray): boolean {
	const shown = trail.findLastIndex(({answer}) => answer.kind === 'tray' && answer.tray.photo === tray.photo);
	return tray.isOutgrown === true || trail.slice(shown + 1).some(({answer}) => answer.kind === 'soak');
}

/** What a chosen set answers: how many alike, and how long; an answer given since counts more. */
export function answersOfSet(flow: Flow, trail: Trail, trayed: Trayed | undefined): readonly TrailEvent[] {
	if (trayed?.stage !== 'chosen' || !trayed.tray) return [];
	const cases = casesPicked(trayed);
	const hasGrown = isOutgrown(trail, trayed.tray);
	const index = trail.findLastIndex(({answer}) => answer.kind === 'one-kind');
	const at = trail[index]?.at ?? 0;
	const {length, width, each} = setSizes(trayed.tray.reference, cases);
	return Object.entries(flow.around.steps).flatMap(([id, step]): readonly TrailEvent[] => {
		const question = step.says ?? id;
		const isAnsweredSince = trail.findLastIndex(event => event.question === question) > index;
		if (isAnsweredSince) return [];
		if (step.kind === 'count') return [{question, answer: {kind: 'count', count: cases.length}, at}];
		if (step.kind !== 'length' || hasGrown) return [];
		return [{question, answer: sizedAs({length, width, each}), at}];
	});
}

function sizedAs({length, width, each}: SetSizes): TrailEvent['answer'] {
	return {kind: 'sized', length, ...(width ? {width} : {}), each: [...each]};
}
