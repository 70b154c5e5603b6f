/** Cases sorted one after another: what is taken over from one that looks the same, and what never is. */
import type {Region} from '../key/region.ts';
import {backwards, trailForAnother} from './another.ts';
import {goOn} from './around.ts';
import type {Flow} from './flow.ts';
import {sizeAgainst} from './result.ts';
import {noteQuestion, type Standing, standAt, withMovedIds} from './stand.ts';
import {byQuestion, type Trail, type TrailEvent} from './trail.ts';
import {trayQuestion} from './tray.ts';

/** Under this name a trail says which find it was taken over from. */
const alikeQuestion = 'alike';

/**
 * The trail of a case that looks like another: its answers, but no size, photo or note of it, and it counts as one.
 * What is in `own` already stays as it is.
 */
export function trailAlike(
	flow: Flow,
	like: {readonly model: Trail; readonly find: number; readonly own?: Trail; readonly now: number},
): Trail {
	const own = like.own ?? [];
	const known = new Set(own.map(({question}) => question));
	const taken = [...byQuestion(withMovedIds(flow, like.model))]
		.filter(([question]) => !known.has(question))
		.flatMap(([question, events]) => takenOver(flow, question, events));
	const marker: TrailEvent = {
		question: alikeQuestion,
		answer: {kind: 'alike', find: like.find},
		at: like.now,
	};
	const isCounted = [...own, ...taken].some(({answer}) => answer.kind === 'count');
	const one = isCounted ? [] : countedAsOne(flow, like.now);
	return [marker, ...backwards(flow, [...own, ...taken, ...one])];
}

/** The trail of another case of the walk or bowl that looks different: it counts as one. */
export function trailOfNext(flow: Flow, from: Trail, now: number): Trail {
	const carried = trailForAnother(flow, {trail: from, standing: standAt(flow, from)});
	return backwards(flow, [...carried, ...countedAsOne(flow, now)]);
}

/** The trail of the first case of all, of which only its count is known: it counts as one. */
export function countedAsOne(flow: Flow, now: number): Trail {
	return Object.entries(flow.around.steps)
		.filter(([, step]) => step.kind === 'count')
		.map(([question]): TrailEvent => ({question, answer: {kind: 'count', count: 1}, at: now}));
}

/** The trail of a case that lay in the bowl with one found soft: it is taken out as soft as that. */
export function takenOut(flow: Flow, trail: Trail, at: number): Trail {
	const out = optionAt(flow, trail, {kind: 'soaking', option: goOn, at});
	return optionAt(flow, out, {kind: 'softness', option: 'softer', at});
}

/** Why a case is not what the one was named that it looks like: its length, or what came out with it. */
export type Misfit =
	| {readonly kind: 'length'; readonly lowMm: number; readonly highMm: number}
	| {readonly kind: 'name'};

/** Whether the name of the model fails the new length; nothing where it still is the name, or none is found yet. */
export function misfitOf(region: Region, {facts, found}: Standing, taxon: string): Misfit | undefined {
	if (!found) return undefined;
	const {length: sized} = found.observed;
	const {length: measured} = facts;
	if (sized && measured !== undefined && measured !== 'unmeasured') {
		const against = sizeAgainst(region, taxon, {measured, sized, which: 'length'});
		if (against && !against.fits) {
			return {kind: 'length', lowMm: Math.round(against.lowMm), highMm: Math.round(against.highMm)};
		}
	}
	const [name, ...others] = found.conclusion.names;
	return name?.taxon === taxon && others.length === 0 ? undefined : {kind: 'name'};
}

function takenOver(flow: Flow, question: string, events: readonly TrailEvent[]): readonly TrailEvent[] {
	// Of a tray, the number, the lengths and the rest are its own find's.
	if ([noteQuestion, alikeQuestion, trayQuestion].includes(question)) return [];
	const kept = events.filter(({answer}) => answer.kind !== 'photo');
	switch (flow.around.steps[question]?.kind) {
		case 'length':
		case 'result':
			return [];
		case 'count':
			return kept.map(event => ({...event, answer: {kind: 'count', count: 1}}));
		default:
			// A width is of the one case it was measured at; that it cannot be measured holds for both.
			return kept.filter(({answer}) => answer.kind !== 'sized' && answer.kind !== 'number');
	}
}

function optionAt(
	flow: Flow,
	trail: Trail,
	chosen: {readonly kind: 'soaking' | 'softness'; readonly option: string; readonly at: number},
): Trail {
	const {at} = standAt(flow, trail);
	if (at.kind !== 'step' || at.step.kind !== chosen.kind) return trail;
	return [...trail, {question: at.id, answer: {kind: 'option', option: chosen.option}, at: chosen.at}];
}
