/** Photos and what was measured on them, taken by the question at hand. */
import {askAt} from './ask.ts';
import type {Effect, FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import {asksPhoto, asksSize, possibleOutcome} from './measured-photo.ts';
import {askAgain, outcomeOf, takeAnswer} from './move.ts';
import type {MeasuredPhoto} from './proposal.ts';
import type {Line} from './question.ts';
import {type Standing, standAt} from './stand.ts';
import {withEvent} from './trail.ts';
import {trayQuestion} from './tray.ts';

/** Photos of one album come one by one; the question waits this long for the next. */
const albumPauseMs = 1500;

/** Takes a photo; where a size is asked for, or many cases are, it is measured. */
export function takePhoto(
	flow: Flow,
	{find, before, photo, now}: {find: FindState; before: Standing; photo: number; now: number},
): Turn {
	// The same photo again counts once; one that was taken back with “Back” counts anew.
	const isKnown = find.trail.some(({answer}) => answer.kind === 'photo' && answer.photo === photo);
	if (isKnown && !asksPhoto(before)) {
		return {...find, standing: before, effects: [{kind: 'ask', ask: askAt(flow, before), turn: find.turn}]};
	}
	const isAsked = before.at.kind === 'step' && before.at.step.kind === 'photos';
	const question = isAsked ? before.at.id : 'photo';
	const trail = isKnown
		? find.trail
		: withEvent(find.trail, {question, answer: {kind: 'photo', photo}, at: now});
	const standing = standAt(flow, trail);
	// The question stays open: a size may be written while the photo is measured.
	if (asksPhoto(before)) {
		const line = {message: asksSize(before) ? 'said-measuring' : 'said-measuring-tray'};
		return {
			...{trail, turn: find.turn, standing},
			effects: [
				{kind: 'measure', photo},
				{kind: 'say', line},
			],
		};
	}
	const ask = isAsked ? askAt(flow, standing) : askAgain(flow, standing, {message: 'said-photo-added'});
	// The turn stays, so that a button pressed between two photos of an album still counts.
	const effects: Effect[] = [{kind: 'ask', ask, turn: find.turn, settleMs: albumPauseMs}];
	if (outcomeOf(standing) === 'kept') effects.push({kind: 'keep'});
	return {trail, turn: find.turn, standing, effects};
}

/** Takes what was measured; after its question was answered it changes nothing. */
export function takeMeasured(
	flow: Flow,
	taken: {find: FindState; before: Standing; outcome: MeasuredPhoto; now: number},
): Turn {
	const {find, before, now} = taken;
	const stay = (...effects: readonly Effect[]): Turn => ({...find, standing: before, effects});
	if (!asksPhoto(before)) return stay();
	const outcome = possibleOutcome(flow, before, taken.outcome);
	const chosen = {message: 'chosen-photo'};
	switch (outcome.kind) {
		case 'declined':
			return stay({
				kind: 'ask',
				ask: askAgain(flow, before, declinedLine(before, outcome)),
				turn: find.turn,
			});
		case 'proposed': {
			const answer = {kind: 'proposed', proposal: outcome.proposal} as const;
			return takeAnswer(flow, {find, before, answer, chosen, now});
		}
		case 'tray': {
			const origin = asksSize(before) ? 'size' : 'tray';
			const answer = {kind: 'tray', tray: outcome.tray, origin} as const;
			return takeAnswer(flow, {find, before, question: trayQuestion, answer, chosen, now});
		}
	}
}

/** What to do about a photo that was not measured; a length may be written, but not those of a tray. */
function declinedLine(before: Standing, {why, aboutMm}: Extract<MeasuredPhoto, {kind: 'declined'}>): Line {
	const [low, high] = aboutMm ?? [0, 0];
	const instead = before.at.kind === 'tray' ? 'none' : before.at.kind === 'width' ? 'width' : 'length';
	const values = {
		instead,
		about: aboutMm && instead === 'length' ? 'yes' : 'no',
		low: Math.round(low / 10),
		high: Math.round(high / 10),
	};
	return {message: `help-photo-${why}`, values};
}
