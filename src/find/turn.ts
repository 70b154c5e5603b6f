/** One turn: trail and event in, trail and effects out. Nothing else happens here. */
import {askAt} from './ask.ts';
import {correctMenu, isCorrectable} from './correct.ts';
import type {Effect, FindEvent, FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import {hearPin, hearText} from './heard.ts';
import {askAgain, handOn, moveTo, takeAnswer} from './move.ts';
import {takeTold} from './photo-told.ts';
import {takeMeasured, takePhoto} from './photo-turn.ts';
import {hearPress} from './press.ts';
import {takePrint} from './print.ts';
import type {Line} from './question.ts';
import {type Standing, standAt, withMovedIds} from './stand.ts';
import {reopened, type Trail, withoutLast} from './trail.ts';
import {isLateTick, takeTrayPress} from './tray-turn.ts';
import type {Heard, Moment} from './value.ts';

/** The same button pressed again within this time is a shaky finger, not a new wish. */
const twicePressedMs = 5000;

/** Takes one event to its end. */
export function takeTurn(flow: Flow, stored: FindState, input: {event: FindEvent; moment: Moment}): Turn {
	// Else an answer changed under the new name of its question would stand behind the one under the old.
	const find: FindState = {...stored, trail: withMovedIds(flow, stored.trail)};
	const before = standAt(flow, find.trail);
	const {event, moment} = input;
	const stay = (...effects: readonly Effect[]): Turn => ({...find, standing: before, effects});
	const again = (lead?: Line): Effect => ({kind: 'ask', ask: askAgain(flow, before, lead), turn: find.turn});
	const go = (trail: Trail, chosen: Line | undefined): Turn =>
		moveTo(flow, {find, before, trail, chosen, now: moment.now});
	const take = (heard: Heard): Turn => {
		if (heard.kind === 'help') return stay(again(heard.help));
		return takeAnswer(flow, {find, before, answer: heard.answer, chosen: heard.chosen, now: moment.now});
	};
	switch (event.kind) {
		case 'begin':
		case 'resume':
			return stay(again());
		case 'text':
			return take(hearText(flow, before, {text: event.text, moment}));
		case 'pin':
			return take(hearPin(before, event));
		case 'photo-told':
			return takeTold(flow, {find, before, photo: event.photo, told: event.told, moment});
		case 'odd':
			return stay(again({message: `help-odd-${event.what}`}));
		case 'photo':
			return takePhoto(flow, {find, before, photo: event.photo, now: moment.now});
		case 'measured':
			return takeMeasured(flow, {find, before, outcome: event.outcome, now: moment.now});
		case 'woke':
			if (before.at.kind !== 'step' || before.at.step.kind !== 'soaking') return stay();
			return takeAnswer(flow, {find, before, answer: {kind: 'woke'}, chosen: undefined, now: moment.now});
		case 'put-aside':
			return handOn(stay(), moment.now);
		case 'mend':
			return go(reopened(find.trail, event.question, moment.now), undefined);
		case 'press':
			return takePress(flow, {find, before, moment, ...event});
	}
}

type Pressed = {
	readonly find: FindState;
	readonly before: Standing;
	readonly moment: Moment;
	readonly turn: number;
	readonly option: string;
};

function takePress(flow: Flow, pressed: Pressed): Turn {
	const {find, before, moment, option} = pressed;
	const {now} = moment;
	const stay = (...effects: readonly Effect[]): Turn => ({...find, standing: before, effects});
	const ask = askAt(flow, before);
	// Also for a button that this question does not have: made up, or of an older program.
	const movedOn = stay({kind: 'ask', ask: {...ask, lead: {message: 'said-moved-on'}}, turn: find.turn});
	if (pressed.turn !== find.turn && !isLateTick(before, find.turn - pressed.turn))
		return isTwicePressed(pressed) ? stay() : movedOn;
	if (option === 'back') {
		return ask.canBack
			? moveTo(flow, {find, before, trail: withoutLast(find.trail), chosen: {message: 'option-back'}, now})
			: movedOn;
	}
	if (option === 'why' && ask.why !== undefined) return stay({kind: 'explain', ask, turn: find.turn});
	const fix = /^fix-(.+)$/.exec(option)?.[1];
	if (fix !== undefined && isCorrectable(flow, before, fix)) {
		return moveTo(flow, {
			find,
			before,
			trail: reopened(find.trail, fix, now),
			chosen: {message: 'option-correct'},
			now,
		});
	}
	// These also stand under lists of finds, whatever is asked here.
	if (option === 'fresh' || option === 'another' || option === 'walk')
		return stay({kind: 'begin', how: option});
	const special =
		takePrint(flow, {find, before, option, now}) ??
		takeTrayPress(flow, {find, before, option, turnsBehind: find.turn - pressed.turn, now});
	if (special) return special;
	if (!ask.options.some(({id}) => id === option)) return movedOn;
	if (option === 'here') return stay({kind: 'ask-position'});
	if (option === 'correct') return stay({kind: 'ask', ask: correctMenu(flow, before), turn: find.turn});
	const heard = hearPress(before, {option, moment});
	if (heard?.kind === 'answer') {
		return takeAnswer(flow, {find, before, answer: heard.answer, chosen: heard.chosen, now});
	}
	return heard ? stay({kind: 'ask', ask: {...ask, lead: heard.help}, turn: find.turn}) : movedOn;
}

function isTwicePressed({find, moment, turn}: Pressed): boolean {
	const last = find.trail.at(-1);
	return turn === find.turn - 1 && last !== undefined && moment.now - last.at < twicePressedMs;
}
