/** A button pressed: answered at once, looked up, and given to what it belongs to. */
import type {FindRow} from '../store/finds.ts';
import {markWelcomed} from '../store/people.ts';
import {findSatAt} from '../store/seats.ts';
import {touchFind} from '../store/unfinished.ts';
import {setAnswerers} from './answerers.ts';
import {type Button, packButton, unpackButton} from './button.ts';
import {runCommand} from './by-button.ts';
import {actOnDraft} from './commands/drafts.ts';
import {actOnSort} from './commands/sort.ts';
import {type Ctx, type Desk, postHere, readerAt, sayHere, sitterAt} from './desk.ts';
import {beginFindHere, turnFind} from './find-turn.ts';
import {actOnMenu} from './menus.ts';
import {answerableFind, ownFind} from './whose.ts';

/** What only the owner of a find may press. */
const ownersOption = 'throw';

/** Takes a press; what a stranger made up gets the present question. */
export async function press(ctx: Ctx): Promise<void> {
	const {desk, callbackQuery} = ctx;
	if (!callbackQuery) return;
	const button = unpackButton(callbackQuery.data ?? '') ?? presentQuestion;
	const found = await findOf(desk, button);
	const isForeign = found === 'not-yours';
	const text = isForeign ? {text: readerAt(desk).say.say('not-yours')} : {};
	await postHere(desk, {kind: 'answer', callback: callbackQuery.id, ...text}, {role: 'say'});
	if (!isForeign) await act(ctx, button, found);
}

/** Carries no find: the one that the person sits at. */
const presentQuestion: Button = {kind: 'resume', find: 0};

/** The find that a button is about, when the one who pressed may do with it what the button says. */
async function findOf(desk: Desk, button: Button): Promise<FindRow | 'none' | 'not-yours'> {
	switch (button.kind) {
		case 'draft':
		case 'answerers':
			return ownFind(desk, button.find);
		case 'find':
			return button.option === ownersOption ? ownFind(desk, button.find) : answerableFind(desk, button.find);
		case 'resume':
			return button.find === 0 ? seatedFind(desk) : answerableFind(desk, button.find);
		default:
			return 'none';
	}
}

async function seatedFind(desk: Desk): Promise<FindRow | 'none'> {
	const find = await findSatAt(desk.tx, sitterAt(desk));
	const row = find === undefined ? 'none' : await answerableFind(desk, find);
	return row === 'not-yours' ? 'none' : row;
}

async function act(ctx: Ctx, button: Button, found: FindRow | 'none'): Promise<void> {
	const {desk} = ctx;
	switch (button.kind) {
		case 'begin':
			await markWelcomed(desk.tx, desk.person.id, desk.now);
			return beginFindHere(desk);
		case 'menu':
			return actOnMenu(desk, button);
		case 'sort':
			return actOnSort(desk, button);
		case 'command':
			return runCommand(ctx, button.command);
		case 'resume':
			return resume(desk, found);
		case 'answerers':
		case 'draft':
		case 'find': {
			if (found === 'none') return sayHere(desk, readerAt(desk).say.say('draft-gone'));
			if (button.kind === 'draft') return actOnDraft(desk, found, button.act);
			if (button.kind === 'answerers') return setAnswerers(desk, found, button.who);
			await turnFind(desk, found, {kind: 'press', turn: button.turn, option: button.option});
		}
	}
}

/** Shows the present question of a find. */
async function resume(desk: Desk, found: FindRow | 'none'): Promise<void> {
	if (found !== 'none') {
		// Whoever looks at it again means to finish it.
		await touchFind(desk.tx, {find: found.id, now: desk.now});
		await turnFind(desk, found, {kind: 'resume'});
		return;
	}
	const {say} = readerAt(desk);
	return sayHere(desk, say.say('nothing-open'), [
		[{text: say.say('begin'), data: packButton({kind: 'begin'})}],
	]);
}
