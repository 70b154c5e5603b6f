/** A find gone on to where its trail now leads: the next question, and what else has to happen. */
import {askAt} from './ask.ts';
import type {Effect, FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import type {Ask, Line} from './question.ts';
import {type Standing, standAt} from './stand.ts';
import {type Answer, type Trail, withEvent, withoutOffers} from './trail.ts';
import {handedOn, isOutgrown, restOf} from './tray.ts';

/** A trail that grew or shrank, and what the closed question shows. */
export type Move = {
	readonly find: FindState;
	readonly before: Standing;
	readonly trail: Trail;
	readonly chosen: Line | undefined;
	readonly now: number;
	/** Said above the next question. */
	readonly lead?: Line | undefined;
};

/** An answer to the present question, or to another one where that is named. */
export type Taken = Omit<Move, 'trail'> & {readonly answer: Answer; readonly question?: string};

/** Takes an answer. */
export function takeAnswer(flow: Flow, {question, answer, ...taken}: Taken): Turn {
	const {find, before, now} = taken;
	const trail = withEvent(find.trail, {question: question ?? before.at.id, answer, at: now});
	return moveTo(flow, {...taken, trail});
}

/** Goes to where the trail leads; every keyboard shown before is closed by it. */
export function moveTo(flow: Flow, {find, before, trail, chosen, now, lead}: Move): Turn {
	const after = standAt(flow, trail);
	// Buttons carry the turn, so this closes every keyboard sent before.
	const turn = find.turn + 1;
	const ask = askAgain(flow, after, lead ?? becameOf(before, after));
	const isSameMessage = after.at.id === before.at.id && (ask.kind === 'parts' || isTicked(before, after));
	const shown: readonly Effect[] = isSameMessage
		? [{kind: 'refresh', ask, turn, of: find.turn}]
		: [...(chosen ? [{kind: 'close', turn: find.turn, chosen} as const] : []), {kind: 'ask', ask, turn}];
	const effects = [...consequences(before, after), ...shown];
	// Thrown away, it can still be taken back; a day later it is emptied.
	const isKept = outcomeOf(after) === 'kept';
	const isOver = outcomeOf(after) !== undefined && outcomeOf(before) === undefined;
	return isOver
		? handOn({trail: isKept ? withoutOffers(trail) : trail, turn, standing: after, effects}, now)
		: {trail, turn, standing: after, effects};
}

/** The rest of a tray goes to a find of its own, once. */
export function handOn(turn: Turn, now: number): Turn {
	const rest = restOf(turn.standing.trayed);
	if (!rest) return turn;
	const left = isOutgrown(turn.trail, rest) ? {...rest, isOutgrown: true} : rest;
	const effects = [...turn.effects, {kind: 'begin', how: 'rest', rest: left} as const];
	return {...turn, trail: handedOn(turn.trail, rest, now), effects};
}

/** Only the ticks changed: the photo with its numbers stays as it is. */
function isTicked({at: before}: Standing, {at: after}: Standing): boolean {
	if (before.kind !== 'tray' || after.kind !== 'tray' || before.trayed.stage !== 'shown') return false;
	const [old, now] = [before.trayed, after.trayed];
	return old.tray === now.tray && old.out.length === now.out.length;
}

/** Said above the next question: what became of the answer, where that is not plain. */
function becameOf(before: Standing, after: Standing): Line | undefined {
	const outcome = outcomeOf(after);
	if (outcome === 'kept' && before.isReopened) return {message: 'said-mended'};
	if (outcome === 'not-a-case') return {message: 'said-nothing-kept'};
	const isChosen = before.at.kind === 'tray' && after.trayed?.stage === 'chosen';
	return isChosen ? setLine(after) : undefined;
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

/** Which cases the questions to come are about. */
function setLine({trayed}: Standing): Line {
	const numbers = trayed?.picked ?? [];
	return {message: 'said-tray-set', values: {count: numbers.length, numbers: numbers.join(', ')}};
}

/** The present question with words above it. */
export function askAgain(flow: Flow, standing: Standing, lead: Line | undefined): Ask {
	const ask = askAt(flow, standing);
	return lead ? {...ask, lead} : ask;
}

function soakDue(standing: Standing): {dueAt: number; zone: string} | undefined {
	if (standing.at.kind !== 'step' || standing.at.step.kind !== 'soaking' || !standing.facts.bowl)
		return undefined;
	return {dueAt: standing.facts.bowl.dueAt, zone: standing.facts.bowl.zone};
}

/** How a find has come to its end; nothing while it goes on. */
export function outcomeOf(standing: Standing): string | undefined {
	return standing.at.kind === 'step' && standing.at.step.kind === 'end'
		? standing.at.step.outcome
		: undefined;
}
