/** One turn: trail and event in, trail and effects out. Nothing else happens here. */
import {askAt} from './ask.ts';
import {correctMenu, isCorrectable} from './correct.ts';
import type {Effect, FindEvent, FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import {hearPin, hearText} from './heard.ts';
import {asksSize, possibleOutcome} from './measured-photo.ts';
import {hearPress} from './press.ts';
import type {MeasuredPhoto} from './proposal.ts';
import type {Ask, Line} from './question.ts';
import {type Standing, standAt, withMovedIds} from './stand.ts';
import {type Answer, reopened, type Trail, withEvent, withoutLast} from './trail.ts';
import type {Heard, Moment} from './value.ts';

/** Photos of one album come one by one; the question waits this long for the next. */
const albumPauseMs = 1500;
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
	const go = (trail: Trail, chosen: Line | undefined): Turn => moveTo(flow, {find, before, trail, chosen});
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
		case 'odd':
			return stay(again({message: `help-odd-${event.what}`}));
		case 'photo':
			return takePhoto(flow, {find, before, photo: event.photo, now: moment.now});
		case 'measured':
			return takeMeasured(flow, {find, before, outcome: event.outcome, now: moment.now});
		case 'woke':
			if (before.at.kind !== 'step' || before.at.step.kind !== 'soaking') return stay();
			return takeAnswer(flow, {find, before, answer: {kind: 'woke'}, chosen: undefined, now: moment.now});
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
	const stay = (...effects: readonly Effect[]): Turn => ({...find, standing: before, effects});
	const ask = askAt(flow, before);
	// Also for a button that this question does not have: made up, or of an older program.
	const movedOn = stay({kind: 'ask', ask: {...ask, lead: {message: 'said-moved-on'}}, turn: find.turn});
	if (pressed.turn !== find.turn) return isTwicePressed(pressed) ? stay() : movedOn;
	if (option === 'back') {
		return ask.canBack
			? moveTo(flow, {find, before, trail: withoutLast(find.trail), chosen: {message: 'option-back'}})
			: movedOn;
	}
	if (option === 'why' && ask.why !== undefined) return stay({kind: 'explain', ask, turn: find.turn});
	const fix = /^fix-(.+)$/.exec(option)?.[1];
	if (fix !== undefined && isCorrectable(flow, before, fix)) {
		return moveTo(flow, {
			find,
			before,
			trail: reopened(find.trail, fix, moment.now),
			chosen: {message: 'option-correct'},
		});
	}
	// These also stand under lists of finds, whatever is asked here.
	if (option === 'fresh' || option === 'another' || option === 'walk')
		return stay({kind: 'begin', how: option});
	if (!ask.options.some(({id}) => id === option)) return movedOn;
	if (option === 'here') return stay({kind: 'ask-position'});
	if (option === 'correct') return stay({kind: 'ask', ask: correctMenu(flow, before), turn: find.turn});
	const heard = hearPress(before, {option, moment});
	if (heard?.kind === 'answer') {
		return takeAnswer(flow, {find, before, answer: heard.answer, chosen: heard.chosen, now: moment.now});
	}
	return heard ? stay({kind: 'ask', ask: {...ask, lead: heard.help}, turn: find.turn}) : movedOn;
}

type Taken = {
	readonly find: FindState;
	readonly before: Standing;
	readonly answer: Answer;
	readonly chosen: Line | undefined;
	readonly now: number;
};

function takeAnswer(flow: Flow, {find, before, answer, chosen, now}: Taken): Turn {
	const trail = withEvent(find.trail, {question: before.at.id, answer, at: now});
	return moveTo(flow, {find, before, trail, chosen});
}

type Move = {
	readonly find: FindState;
	readonly before: Standing;
	readonly trail: Trail;
	readonly chosen: Line | undefined;
};

function moveTo(flow: Flow, {find, before, trail, chosen}: Move): Turn {
	const after = standAt(flow, trail);
	// Buttons carry the turn, so this closes every keyboard sent before.
	const turn = find.turn + 1;
	const ask = askAgain(flow, after, becameOf(before, after));
	const isSameMessage = after.at.id === before.at.id && ask.kind === 'parts';
	const shown: readonly Effect[] = isSameMessage
		? [{kind: 'refresh', ask, turn, of: find.turn}]
		: [...(chosen ? [{kind: 'close', turn: find.turn, chosen} as const] : []), {kind: 'ask', ask, turn}];
	return {trail, turn, standing: after, effects: [...consequences(before, after), ...shown]};
}

/** Said above the next question: what became of the answer, where that is not plain. */
function becameOf(before: Standing, after: Standing): Line | undefined {
	const outcome = outcomeOf(after);
	if (outcome === 'kept' && before.isReopened) return {message: 'said-mended'};
	return outcome === 'not-a-case' ? {message: 'said-nothing-kept'} : undefined;
}

/** What has to happen because the find stands elsewhere now. */
function consequences(before: Standing, after: Standing): readonly Effect[] {
	const effects: Effect[] = [];
	const dueBefore = soakDue(before);
	const dueAfter = soakDue(after);
	if (dueAfter && dueAfter.dueAt !== dueBefore?.dueAt) effects.push({kind: 'remind', ...dueAfter});
	if (dueBefore && !dueAfter) effects.push({kind: 'forget-reminder'});
	const outcome = outcomeOf(after);
	if (outcome !== outcomeOf(before)) {
		if (outcome === 'kept') effects.push({kind: 'keep'});
		if (outcome === 'thrown') effects.push({kind: 'throw'});
	}
	return effects;
}

function takePhoto(
	flow: Flow,
	{find, before, photo, now}: {find: FindState; before: Standing; photo: number; now: number},
): Turn {
	// The same photo again counts once; one that was taken back with “Back” counts anew.
	const isKnown = find.trail.some(({answer}) => answer.kind === 'photo' && answer.photo === photo);
	if (isKnown && !asksSize(before)) {
		return {...find, standing: before, effects: [{kind: 'ask', ask: askAt(flow, before), turn: find.turn}]};
	}
	const isAsked = before.at.kind === 'step' && before.at.step.kind === 'photos';
	const question = isAsked ? before.at.id : 'photo';
	const trail = isKnown
		? find.trail
		: withEvent(find.trail, {question, answer: {kind: 'photo', photo}, at: now});
	const standing = standAt(flow, trail);
	const ask = isAsked ? askAt(flow, standing) : askAgain(flow, standing, {message: 'said-photo-added'});
	// The question stays open: a size may be written while the photo is measured.
	if (asksSize(before)) {
		return {
			...{trail, turn: find.turn, standing},
			effects: [
				{kind: 'measure', photo},
				{kind: 'say', line: {message: 'said-measuring'}},
			],
		};
	}
	// The turn stays, so that a button pressed between two photos of an album still counts.
	const effects: Effect[] = [{kind: 'ask', ask, turn: find.turn, settleMs: albumPauseMs}];
	if (outcomeOf(standing) === 'kept') effects.push({kind: 'keep'});
	return {trail, turn: find.turn, standing, effects};
}

/** A photo that was measured after its question was answered changes nothing. */
function takeMeasured(
	flow: Flow,
	taken: {find: FindState; before: Standing; outcome: MeasuredPhoto; now: number},
): Turn {
	const {find, before, now} = taken;
	const stay = (...effects: readonly Effect[]): Turn => ({...find, standing: before, effects});
	if (!asksSize(before)) return stay();
	const outcome = possibleOutcome(flow, before.at.kind === 'width' ? 'width' : 'length', taken.outcome);
	if (outcome.kind === 'declined') {
		const lead = {message: `help-photo-${outcome.why}`};
		return stay({kind: 'ask', ask: askAgain(flow, before, lead), turn: find.turn});
	}
	const answer = {kind: 'proposed', proposal: outcome.proposal} as const;
	return takeAnswer(flow, {find, before, answer, chosen: {message: 'chosen-photo'}, now});
}

function isTwicePressed({find, moment, turn}: Pressed): boolean {
	const last = find.trail.at(-1);
	return turn === find.turn - 1 && last !== undefined && moment.now - last.at < twicePressedMs;
}

function askAgain(flow: Flow, standing: Standing, lead: Line | undefined): Ask {
	const ask = askAt(flow, standing);
	return lead ? {...ask, lead} : ask;
}

function soakDue(standing: Standing): {dueAt: number; zone: string} | undefined {
	if (standing.at.kind !== 'step' || standing.at.step.kind !== 'soaking' || !standing.facts.bowl)
		return undefined;
	return {dueAt: standing.facts.bowl.dueAt, zone: standing.facts.bowl.zone};
}

function outcomeOf(standing: Standing): string | undefined {
	return standing.at.kind === 'step' && standing.at.step.kind === 'end'
		? standing.at.step.outcome
		: undefined;
}
