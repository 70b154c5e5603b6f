/** How far a broadcast is, in one message of its coordinator that is changed as it goes. */
import {type Broadcast, broadcastById, markProgress, moveBroadcast} from '../store/broadcasts.ts';
import type {Keyboard} from '../store/call.ts';
import {dayById} from '../store/days.ts';
import {dropWaiting, type Ledger, ledgerOf} from '../store/deliveries.ts';
import {post} from '../store/outbox.ts';
import {personById} from '../store/people.ts';
import {chatOfRow} from '../store/said.ts';
import type {Tx} from '../store/schema.ts';
import {menuButton} from './button.ts';
import {type Desk, type House, readerAt, sayHere, shelfOf} from './desk.ts';
import {escaped} from './words.ts';

/** So many are told in a minute, as a rule (clockwork/pace.ts). */
const perMinute = 29 * 60;

/** Changes the coordinator's message to how far it is now; nothing where it is gone. */
export async function showProgress(
	house: House,
	tx: Tx,
	{broadcast, ledger}: {broadcast: Broadcast; ledger: Ledger},
): Promise<void> {
	const {progressRow: row, id, state} = broadcast;
	const day = await dayById(tx, broadcast.day);
	const chat = row === null ? undefined : await chatOfRow(tx, row);
	if (row === null || chat === undefined || !day?.person) return;
	const person = await personById(tx, day.person);
	const say = shelfOf(house, day.region).texts.in(person.language);
	const waiting = ledger.waiting + ledger.sending;
	const text = say.say('cast-progress', {
		state,
		sent: ledger.sent + ledger.unknown,
		waiting,
		failed: ledger.failed + ledger.gone,
		minutes: Math.ceil(waiting / perMinute),
	});
	const button = (act: 'pause' | 'go' | 'stop') => ({
		text: say.say(`cast-${act}`),
		data: menuButton('cast', act, String(id)),
	});
	const keyboard: Keyboard =
		state === 'running' || state === 'gathering' || state === 'waiting'
			? [[button('pause'), button('stop')]]
			: state === 'paused'
				? [[button('go'), button('stop')]]
				: [];
	await post(tx, {
		chat,
		role: 'close',
		call: {kind: 'edit', row, html: escaped(text), keyboard},
		now: house.now(),
	});
}

/** Pauses, goes on with or stops a broadcast of the coordinator's own. */
export async function actOnCast(desk: Desk, [act, id]: readonly string[]): Promise<void> {
	const {tx, now} = desk;
	const broadcast = await broadcastById(tx, Number(id));
	const day = broadcast && (await dayById(tx, broadcast.day));
	if (!broadcast || day?.person !== desk.person.id)
		return sayHere(desk, readerAt(desk).say.say('day-not-yours'));
	const {from, to} = moves[act ?? ''] ?? {};
	if (!from || !to) return;
	const isMoved = await moveBroadcast(tx, {id: broadcast.id, from, to});
	if (!isMoved) return sayHere(desk, readerAt(desk).say.say('cast-over'));
	if (to === 'stopped') await dropWaiting(tx, {broadcast: broadcast.id});
	await markProgress(tx, {id: broadcast.id, now});
	const ledger = await ledgerOf(tx, broadcast.id);
	await showProgress(desk.house, tx, {broadcast: {...broadcast, state: to}, ledger});
}

type Move = {readonly from: readonly Broadcast['state'][]; readonly to: Broadcast['state']};

const moves: Readonly<Record<string, Partial<Move>>> = {
	pause: {from: ['running', 'gathering', 'waiting'], to: 'paused'},
	// What was listed half is listed to its end first.
	go: {from: ['paused'], to: 'gathering'},
	stop: {from: ['waiting', 'gathering', 'running', 'paused'], to: 'stopped'},
};
