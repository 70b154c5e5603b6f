/** Questions that are answered lose their buttons. */
import type {Keyboard} from '../store/call.ts';
import {post, rowsOfTurn} from '../store/outbox.ts';
import type {Desk} from './desk.ts';
import {escaped} from './words.ts';

/** Every message of a turn loses its buttons, in whatever chat it stands; the newest shows what was answered. */
export async function closeTurn(
	{tx, now}: Desk,
	closed: {readonly find: number; readonly turn: number; readonly answered: string},
): Promise<void> {
	const {find, turn, answered} = closed;
	const none: Keyboard = [];
	for (const [index, shown] of (await rowsOfTurn(tx, {find, turn})).entries()) {
		if (shown.call.kind !== 'send' && shown.call.kind !== 'edit') continue;
		const html = index === 0 ? `${shown.call.html}\n\n${escaped(answered)}` : shown.call.html;
		const call = {kind: 'edit' as const, row: shown.id, html, keyboard: none};
		await post(tx, {chat: shown.chat, call, role: 'close', find, now});
	}
}
