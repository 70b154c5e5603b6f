/** Where and when the file of a photo says it was taken: offered at the questions for place and day, never assumed. */
import type {PhotoMetadata} from '../place/photo-metadata.ts';
import {placeFromPhoto} from '../place/place.ts';
import {localDate, readDate} from './date.ts';
import type {FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import {askAgain} from './move.ts';
import {type Standing, standAt} from './stand.ts';
import {type Answer, byQuestion, type TrailEvent, withEvent} from './trail.ts';
import type {Moment} from './value.ts';

type Told = {
	readonly find: FindState;
	readonly before: Standing;
	readonly photo: number;
	readonly told: PhotoMetadata;
	readonly moment: Moment;
};

/** Notes what a file tells for questions that nobody has answered yet; the first file of a find is believed to tell. */
export function takeTold(flow: Flow, taken: Told): Turn {
	const {find, before, photo} = taken;
	const stay: Turn = {...find, standing: before, effects: []};
	const isOver = before.at.kind === 'step' && before.at.step.kind === 'end';
	if (isOver || !before.facts.photos.includes(photo)) return stay;
	const offers = offersOf(flow, taken).filter(({question}) => !byQuestion(find.trail).get(question)?.length);
	if (offers.length === 0) return stay;
	const trail = offers.reduce(withEvent, find.trail);
	const standing = standAt(flow, trail);
	const isAsked = offers.some(({question}) => question === standing.at.id);
	const ask = askAgain(flow, standing, {message: 'said-photo-told'});
	return {trail, turn: find.turn, standing, effects: isAsked ? [{kind: 'ask', ask, turn: find.turn}] : []};
}

function offersOf(flow: Flow, {photo, told: {fix, date}, moment: {now, zone}}: Told): readonly TrailEvent[] {
	const offer = (kind: 'place' | 'date', answer: Answer) =>
		questionsOf(flow, kind).map(question => ({question, answer, at: now}));
	const isPast = date !== undefined && readDate(date, localDate(now, zone)).kind === 'date';
	return [
		...(fix ? offer('place', {kind: 'photo-place', photo, place: placeFromPhoto(fix)}) : []),
		...(isPast ? offer('date', {kind: 'photo-date', photo, date}) : []),
	];
}

function questionsOf(flow: Flow, kind: 'place' | 'date'): readonly string[] {
	const steps = Object.entries(flow.around.steps).filter(([, step]) => step.kind === kind);
	return [...new Set(steps.map(([id, step]) => step.says ?? id))];
}
