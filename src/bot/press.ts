/** A button pressed: answered at once, looked up, and given to what it belongs to. */
import {findById} from '../store/finds.ts';
import {markWelcomed} from '../store/people.ts';
import {findSatAt} from '../store/seats.ts';
import {touchFind} from '../store/unfinished.ts';
import {setAnswerers} from './answerers.ts';
import {type Button, packButton, unpackButton} from './button.ts';
import {runCommand} from './by-button.ts';
import {actOnDraft} from './commands/drafts.ts';
import {actOnSort} from './commands/sort.ts';
import {type Ctx, type Desk, postHere, readerAt, sayHere} from './desk.ts';
import {beginFindHere, turnFind} from './find-turn.ts';
import {actOnMenu} from './menus.ts';
import {answerableFind, isDeleted, mayAnswer, ownFind} from './whose.ts';

/** What only the owner of a find may press. */
const ownersOption = 'throw';

/** Takes a press; what a stranger made up gets the present question. */
export async function press(ctx: Ctx): Promise<void> {
	const {desk, callbackQuery} = ctx;
	if (!callbackQuery) return;
	const button = unpackButton(callbackQuery.data ?? '');
	const isForeign = button !== undefined && (await belongsToOthers(desk, button));
	const {say} = readerAt(desk);
	const text = isForeign ? {text: say.say('not-yours')} : {};
	await postHere(desk, {kind: 'answer', callback: callbackQuery.id, ...text}, {role: 'say'});
	if (isForeign) return;
	return act(ctx, button ?? {kind: 'resume', find: 0});
}

/** Whether a button is for somebody else alone. */
async function belongsToOthers(desk: Desk, button: Button): Promise<boolean> {
	switch (button.kind) {
		case 'draft':
		case 'answerers':
			return (await ownFind(desk, button.find)) === 'not-yours';
		case 'resume':
			return (await answerableFind(desk, button.find)) === 'not-yours';
		case 'find': {
			const whose = button.option === ownersOption ? ownFind : answerableFind;
			return (await whose(desk, button.find)) === 'not-yours';
		}
		default:
			return false;
	}
}

async function act(ctx: Ctx, button: Button): Promise<void> {
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
			return resume(desk, button.find);
		case 'answerers':
		case 'draft':
		case 'find': {
			const row = await answerableFind(desk, button.find);
			if (row === 'none' || row === 'not-yours') return sayHere(desk, readerAt(desk).say.say('draft-gone'));
			if (button.kind === 'draft') return actOnDraft(desk, row, button.act);
			if (button.kind === 'answerers') return setAnswerers(desk, row, button.who);
			await turnFind(desk, row, {kind: 'press', turn: button.turn, option: button.option});
		}
	}
}

/** Shows the present question of a find, or of the one the person sits at. */
async function resume(desk: Desk, find: number): Promise<void> {
	const seat = await findSatAt(desk.tx, {chat: desk.chat.id, person: desk.person.id});
	const wanted = find === 0 ? seat : find;
	const row = wanted === undefined ? undefined : await findById(desk.tx, wanted);
	if (row && !isDeleted(row) && mayAnswer(desk, row)) {
		// Whoever looks at it again means to finish it.
		await touchFind(desk.tx, {find: row.id, now: desk.now});
		await turnFind(desk, row, {kind: 'resume'});
		return;
	}
	const {say} = readerAt(desk);
	return sayHere(desk, say.say('nothing-open'), [
		[{text: say.say('begin'), data: packButton({kind: 'begin'})}],
	]);
}
