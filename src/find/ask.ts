/** What is asked next at each question. */
import {letterOf} from '../draw/letter.ts';
import {cantTell} from '../key/observed.ts';
import type {Step} from './around.ts';
import {goOn} from './around.ts';
import {askPrint} from './ask-print.ts';
import {askSize} from './ask-size.ts';
import {askTray} from './ask-tray.ts';
import type {Flow} from './flow.ts';
import type {Ask, Option} from './question.ts';
import {viewResult} from './result.ts';
import type {Standing} from './stand.ts';
import {spotShown} from './value.ts';

/** The question of a standing. */
export function askAt(flow: Flow, standing: Standing): Ask {
	const {at} = standing;
	const print = askPrint(standing);
	if (print) return print;
	switch (at.kind) {
		case 'tray':
			return askTray(at.trayed);
		case 'look':
			return askLook(flow, at.id, standing);
		case 'width':
			return askSize(standing, 'width');
		case 'note':
			return {
				kind: 'note',
				question: at.id,
				text: {message: 'question-note'},
				options: [],
				canBack: true,
				takes: 'text',
			};
		case 'step':
			return askStep(flow, at, standing);
	}
}

function askLook(flow: Flow, character: string, standing: Standing): Ask {
	const states = flow.region.key.characters[character]?.states ?? [];
	return {
		kind: 'look',
		question: character,
		text: {message: `question-${character}`},
		options: [
			...states.map((state, index) => ({
				id: state,
				label: {message: `option-${character}-${state}`},
				letter: letterOf(index),
			})),
			{id: cantTell, label: {message: 'option-cant-tell'}},
		],
		shows: {kind: 'choices', character, options: states},
		picture: {kind: 'part', character},
		canBack: standing.hasPast,
		why: `why-${character}`,
	};
}

function askStep(flow: Flow, {id, step}: {id: string; step: Step}, standing: Standing): Ask {
	const says = step.says ?? id;
	const ask: Ask = {
		kind: step.kind,
		question: id,
		text: {message: `question-${says}`},
		options: [],
		...(step.picture === undefined ? {} : {picture: {kind: 'around', which: step.picture}}),
		canBack: standing.hasPast,
		...(isExplained(step) ? {why: `why-${says}`} : {}),
	};
	const offered = (...ids: readonly string[]) =>
		ids.map(option => ({id: option, label: {message: `option-${says}-${option}`}}));
	switch (step.kind) {
		case 'choice': {
			const options = offered(...Object.keys(step.options));
			return {
				...ask,
				options: step.cantTell ? [...options, {id: cantTell, label: {message: 'option-cant-tell'}}] : options,
			};
		}
		case 'notice':
			return {...ask, options: offered(goOn)};
		case 'photos':
			return askPhotos(ask, standing.facts.photos.length);
		case 'place':
			return askPlace(ask, standing);
		case 'date':
			return askDate({...ask, options: offered('today', 'yesterday'), takes: 'text'}, standing);
		case 'count':
			return {...ask, options: [1, 2, 3, 4, 5, 6].map(countOption), takes: 'text'};
		case 'parts':
			return askParts(ask, step.parts, standing);
		case 'soak':
			return {...ask, options: offered('two-hours', 'overnight', 'already', 'unsoaked')};
		case 'morning':
			return {...ask, options: step.hours.map(hourOption)};
		case 'soaking':
			return askSoaking({...ask, options: offered(goOn, 'another')}, standing);
		case 'softness':
			return {...ask, options: offered('softer', 'stiff', 'tomorrow')};
		case 'length':
			return askSize(standing, id);
		case 'result':
			return {
				...ask,
				options: offered('keep', 'correct', 'throw'),
				...(standing.found ? {result: viewResult(flow, standing, standing.found)} : {}),
			};
		case 'end':
			return askEnd(ask, step.outcome, standing);
		case 'key':
			throw new Error('Expected the key to ask its own questions; the walk stopped at the key itself');
	}
}

function askPhotos(ask: Ask, count: number): Ask {
	const option = count === 0 ? 'skip' : goOn;
	return {
		...ask,
		text: count === 0 ? ask.text : {message: 'question-photos-so-far', values: {count}},
		options: [{id: goOn, label: {message: `option-photo-${option}`}}],
		takes: 'photo',
	};
}

function askPlace(ask: Ask, {lastHere}: Standing): Ask {
	const here = {id: 'here', label: {message: 'option-here'}};
	const offer = lastHere?.answer;
	if (offer?.kind !== 'photo-place') return {...ask, options: [here], takes: 'place'};
	const photo = {id: 'photo', label: {message: 'option-photo-place'}};
	const values = spotShown(offer.place);
	return {
		...ask,
		text: {message: `${ask.text.message}-photo`, values},
		options: [photo, here],
		takes: 'place',
	};
}

function askDate(ask: Ask, {lastHere}: Standing): Ask {
	const offer = lastHere?.answer;
	if (offer?.kind !== 'photo-date') return ask;
	const label = {message: 'option-photo-date', values: {date: offer.date}};
	return {...ask, options: [{id: 'photo', label}, ...ask.options]};
}

function askParts(ask: Ask, parts: readonly string[], standing: Standing): Ask {
	const last = standing.lastHere?.answer;
	const marked = last?.kind === 'parts' ? last.parts : [];
	return {
		...ask,
		options: [
			...parts.map(part => ({
				id: part,
				label: {message: `option-part-${part}`, values: {marked: marked.includes(part) ? 'yes' : 'no'}},
			})),
			{id: goOn, label: {message: marked.length === 0 ? 'option-parts-whole' : 'option-parts-done'}},
		],
	};
}

function askSoaking(ask: Ask, standing: Standing): Ask {
	const {bowl} = standing.facts;
	return {...ask, times: bowl ? {due: bowl.dueAt, since: bowl.startedAt} : {}};
}

function askEnd(ask: Ask, outcome: string, standing: Standing): Ask {
	const {bowl, place} = standing.facts;
	const offered = (id: string, message = `option-end-${id}`) => ({id, label: {message}});
	const isLeft = standing.trayed?.stage === 'left';
	const more = bowl ? [offered('another', 'option-end-another-bowl'), offered('walk')] : [offered('walk')];
	return {
		...ask,
		...(isLeft
			? {text: {message: 'question-tray-left', values: {shown: standing.trayed?.tray ? 'yes' : 'no'}}}
			: {}),
		options: outcome === 'kept' && place ? [...more, offered('fresh')] : [offered('fresh')],
		canBack: outcome !== 'kept' && standing.hasPast,
	};
}

function isExplained(step: Step): boolean {
	return step.kind !== 'end' && step.kind !== 'result' && step.kind !== 'notice';
}

function countOption(count: number): Option {
	return {id: String(count), label: {message: 'option-count', values: {count: String(count)}}};
}

function hourOption(hour: number): Option {
	return {
		id: String(hour),
		label: {message: 'option-hour', values: {hour: `${String(hour).padStart(2, '0')}:00`}},
	};
}
