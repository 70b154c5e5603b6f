/** A button pressed: answered at once, looked up, and given to what it belongs to. */
import {findById} from '../store/finds.ts';
import {markWelcomed, seatOf} from '../store/people.ts';
import {type Button, packButton, unpackButton} from './button.ts';
import {actOnDraft, listDrafts, ownFind} from './commands/drafts.ts';
import {makeInvitation} from './commands/invite.ts';
import {setRegion} from './commands/region.ts';
import {setZone} from './commands/settings.ts';
import {actOnTeam, listTeam} from './commands/team.ts';
import {type Ctx, type Desk, postHere, readerAt, sayHere} from './desk.ts';
import {beginFindHere, turnFind} from './find-turn.ts';
import {actOnMenu} from './menus.ts';

/** Takes a press; what a stranger made up gets the present question. */
export async function press(ctx: Ctx): Promise<void> {
	const {desk, callbackQuery} = ctx;
	if (!callbackQuery) return;
	const button = unpackButton(callbackQuery.data ?? '');
	const isForeign =
		button !== undefined && 'find' in button && (await ownFind(desk, button.find)) === 'not-yours';
	const {say} = readerAt(desk);
	const text = isForeign ? {text: say.say('not-yours')} : {};
	await postHere(desk, {kind: 'answer', callback: callbackQuery.id, ...text}, {role: 'say'});
	if (isForeign) return;
	return act(desk, button ?? {kind: 'resume', find: 0});
}

async function act(desk: Desk, button: Button): Promise<void> {
	switch (button.kind) {
		case 'begin':
			await markWelcomed(desk.tx, desk.person.id, desk.now);
			return beginFindHere(desk);
		case 'region':
			return setRegion(desk, button.region);
		case 'zone':
			return setZone(desk, button.zone);
		case 'invite':
			return makeInvitation(desk, button.role);
		case 'team':
			return actOnTeam(desk, button);
		case 'people':
			return listTeam(desk, button.from);
		case 'list':
			return listDrafts(desk, button.before);
		case 'menu':
			return actOnMenu(desk, button);
		case 'resume':
			return resume(desk, button.find);
		case 'draft':
		case 'find': {
			const row = await ownFind(desk, button.find);
			if (row === 'none' || row === 'not-yours') return sayHere(desk, readerAt(desk).say.say('draft-gone'));
			if (button.kind === 'draft') return actOnDraft(desk, row, button.act);
			await turnFind(desk, row, {kind: 'press', turn: button.turn, option: button.option});
		}
	}
}

/** Shows the present question of a find, or of the one the person sits at. */
async function resume(desk: Desk, find: number): Promise<void> {
	const seat = await seatOf(desk.tx, {chat: desk.chat.id, person: desk.person.id});
	const wanted = find === 0 ? seat : find;
	const row = wanted === undefined ? undefined : await findById(desk.tx, wanted);
	if (row && row.person === desk.person.id) {
		await turnFind(desk, row, {kind: 'resume'});
		return;
	}
	const {say} = readerAt(desk);
	return sayHere(desk, say.say('nothing-open'), [
		[{text: say.say('begin'), data: packButton({kind: 'begin'})}],
	]);
}
