/** What the trail says so far, gathered step by step. */
import type {Length} from '../capsule/length.ts';
import type {Observed, Sized} from '../key/observed.ts';
import type {Shortening} from '../key/shrink.ts';
import type {Place} from '../place/place.ts';
import type {Notes} from './around.ts';
import type {Proposal} from './proposal.ts';
import type {Soak, TrailEvent} from './trail.ts';

/** A size as measured, or that it could not be measured. */
export type Measured = Length | 'unmeasured';

/** All that a find has said of itself up to where it stands. */
export type Facts = {
	/** Alive, attached or with something inside: left where it is. */
	readonly lives: boolean;
	/** The finder could not say for sure that it is an egg case. */
	readonly doubt: boolean;
	readonly photos: readonly number[];
	readonly place: Place | undefined;
	readonly date: string | undefined;
	readonly count: number | undefined;
	readonly lost: readonly string[];
	readonly soak: 'dry' | 'damp' | 'soaked' | undefined;
	readonly bowl:
		| {readonly startedAt: number; readonly dueAt: number; readonly zone: string; readonly endedAt?: number}
		| undefined;
	readonly aprons: 'both' | 'incomplete' | 'unknown' | undefined;
	readonly length: Measured | undefined;
	/** The single lengths of several cases on one photo, of which `length` is the middle. */
	readonly each: readonly Length[];
	readonly width: Measured | undefined;
	/** The photo on which the length was measured; nothing when it was written. */
	readonly measuredOn: Proposal | undefined;
	readonly seen: Readonly<Record<string, string>>;
	readonly note: string | undefined;
	/** The find whose answers were taken over. */
	readonly alike: number | undefined;
};

export const noFacts: Facts = {
	lives: false,
	doubt: false,
	photos: [],
	place: undefined,
	date: undefined,
	count: undefined,
	lost: [],
	soak: undefined,
	bowl: undefined,
	aprons: undefined,
	length: undefined,
	each: [],
	width: undefined,
	measuredOn: undefined,
	seen: {},
	note: undefined,
	alike: undefined,
};

/** The facts after one event at a step, with what its option tells the record. */
export function learn(facts: Facts, event: TrailEvent, notes: Notes = {}): Facts {
	const noted: Facts = {
		...facts,
		lives: notes.lives ?? facts.lives,
		doubt: notes.doubt ?? facts.doubt,
		soak: notes.soak ?? facts.soak,
		aprons: notes.aprons ?? facts.aprons,
		bowl: facts.bowl && notes.soak === 'soaked' ? {...facts.bowl, endedAt: event.at} : facts.bowl,
	};
	const {answer} = event;
	switch (answer.kind) {
		case 'place':
			return {...noted, place: answer.place};
		case 'date':
			return {...noted, date: answer.date};
		case 'count':
			return {...noted, count: answer.count};
		case 'parts':
			return {...noted, lost: answer.parts};
		case 'sized':
			return {
				...noted,
				length: answer.length,
				each: answer.each ?? [],
				width: answer.width ?? noted.width,
				measuredOn: answer.length.method === 'photo' ? noted.measuredOn : undefined,
			};
		case 'proposed':
			return {...noted, measuredOn: answer.proposal};
		case 'unmeasured':
			return {...noted, length: 'unmeasured', each: []};
		case 'soak':
			return {...noted, bowl: bowlOf(noted, answer)};
		case 'option':
		case 'note':
		case 'photo-place':
		case 'photo-date':
		case 'photo':
		case 'number':
		case 'not-quite':
		case 'woke':
		case 'reopen':
		case 'alike':
		case 'tray-wanted':
		case 'tray':
		case 'picked':
		case 'taken-out':
		case 'one-kind':
		case 'tray-left':
		case 'handed-on':
			return noted;
	}
}

/** What the key and the ranking may use. */
export function observedFrom(facts: Facts): Observed {
	const lost = facts.aprons === 'incomplete' ? [...facts.lost, 'aprons'] : facts.lost;
	return {
		seen: facts.seen,
		lost,
		...(facts.place?.kind === 'spot' ? {spot: facts.place} : {}),
		length: sizedFrom(
			facts.length,
			lowerBoundOf(facts).map(reason =>
				reason === 'aprons' && facts.aprons !== 'incomplete' ? 'perhaps-aprons' : reason,
			),
		),
		width: sizedFrom(facts.width, narrowedBy(facts)),
	};
}

/** Why the measured length counts as a lower bound; empty when it counts as it is. */
export function lowerBoundOf(facts: Facts): readonly ('dry' | 'aprons')[] {
	return [
		...(facts.soak === 'soaked' ? [] : ['dry' as const]),
		...(facts.aprons === 'both' ? [] : ['aprons' as const]),
	];
}

/** Why the measured width counts as a lower bound; empty when it counts as it is. */
export function narrowedBy(facts: Facts): readonly ('dry' | 'sides')[] {
	return [
		...(facts.soak === 'soaked' ? [] : ['dry' as const]),
		...(facts.lost.includes('sides') ? ['sides' as const] : []),
	];
}

function sizedFrom(measured: Measured | undefined, shortBy: readonly Shortening[]): Sized | undefined {
	if (measured === undefined) return undefined;
	if (measured === 'unmeasured') return {kind: 'unknown'};
	const {mm, uncertaintyMm} = measured;
	return shortBy.length > 0
		? {kind: 'at-least', mm, uncertaintyMm, shortBy}
		: {kind: 'exact', mm, uncertaintyMm};
}

function bowlOf(facts: Facts, soak: Soak): Facts['bowl'] {
	return {startedAt: facts.bowl?.startedAt ?? soak.startedAt, dueAt: soak.dueAt, zone: soak.zone};
}
