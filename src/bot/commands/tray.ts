/** /tray: many cases on one photo, found, numbered and measured together. */
import {trayQuestion} from '../../find/tray.ts';
import {findById} from '../../store/finds.ts';
import {findSatAt} from '../../store/seats.ts';
import {type Ctx, regionOf} from '../desk.ts';
import {beginFindWith, turnFind} from '../find-turn.ts';
import {standingOf} from '../stored-trail.ts';
import {isOpen} from '../whose.ts';
import {start} from './start.ts';

/** Asks for one photo of all, once: written again, it puts the same question. */
export async function layTray(ctx: Ctx): Promise<void> {
	const {desk} = ctx;
	const {tx, chat, person, now} = desk;
	if (!person.isWelcomed) return start(ctx);
	const seat = await findSatAt(tx, {chat: chat.id, person: person.id});
	const row = seat === undefined ? undefined : await findById(tx, seat);
	const isAsked = row && isOpen(row) && row.person === person.id && standingOf(desk, row).at.kind === 'tray';
	if (isAsked) {
		await turnFind(desk, row, {kind: 'resume'});
		return;
	}
	const wanted = {question: trayQuestion, answer: {kind: 'tray-wanted'}, at: now} as const;
	return beginFindWith(desk, {region: regionOf(desk), trail: [wanted]});
}
