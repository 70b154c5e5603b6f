/** One transaction for one update: everything it causes is kept together or not at all. */
import type {NextFunction} from 'grammy';
import {chatFor, joinAddresses} from '../store/chats.ts';
import {noteUpdate, setAside} from '../store/inbox.ts';
import {post} from '../store/outbox.ts';
import {personFor} from '../store/people.ts';
import type {Tx} from '../store/schema.ts';
import {hearUnnamed, isUnnamed} from './anonymous.ts';
import {packButton} from './button.ts';
import {type Ctx, type Desk, type House, shelfOf} from './desk.ts';
import {moveIn} from './group.ts';
import {escaped} from './words.ts';

/** Runs the handlers of one update in one transaction; an update seen before is dropped. */
export async function inOneTransaction(house: House, ctx: Ctx, next: NextFunction): Promise<void> {
	const now = house.now();
	const updateId = ctx.update.update_id;
	try {
		await house.db.transaction().execute(async tx => {
			if (!(await noteUpdate(tx, updateId, now))) return;
			// Said by the platform in the group's name, so there is nobody to make a desk for.
			const moved = moveIn(ctx.message);
			if (moved) return joinAddresses(tx, {...moved, now});
			const desk = await deskFor(house, tx, {ctx, now});
			if (!desk) return;
			ctx.desk = desk;
			await next();
		});
	} catch (error) {
		house.log({
			level: 'error',
			what: 'update set aside',
			updateId,
			error: String(error),
			stack: error instanceof Error ? error.stack : undefined,
		});
		await apologise(house, ctx, error);
	}
	house.wake();
}

async function deskFor(house: House, tx: Tx, {ctx, now}: {ctx: Ctx; now: number}): Promise<Desk | undefined> {
	const {from, chat: seen} = ctx;
	if (!from || !seen || seen.type === 'channel') return undefined;
	const kind = seen.type === 'private' ? 'private' : 'group';
	const chat = await chatFor(tx, {platformId: seen.id, kind, now});
	if (isUnnamed(ctx)) {
		await hearUnnamed({house, tx, now, chat}, ctx);
		return undefined;
	}
	const person = await personFor(tx, {platformId: from.id, language: from.language_code, now});
	const message = ctx.message ?? ctx.callbackQuery?.message;
	const thread =
		message && 'is_topic_message' in message && message.is_topic_message
			? message.message_thread_id
			: undefined;
	return {house, tx, now, chat, person, name: kind === 'group' ? from.first_name : undefined, thread};
}

/**
 * Sets the update aside and gives the person a way on. When not even that can be stored this throws:
 * an update that left no trace may not be confirmed, so that the platform sends it again.
 */
async function apologise(house: House, ctx: Ctx, cause: unknown): Promise<void> {
	const now = house.now();
	const {chat: seen, callbackQuery} = ctx;
	await house.db.transaction().execute(async tx => {
		await noteUpdate(tx, ctx.update.update_id, now);
		await setAside(tx, {updateId: ctx.update.update_id, error: String(cause), now});
		if (!seen || seen.type === 'channel') return;
		const kind = seen.type === 'private' ? 'private' : 'group';
		const chat = await chatFor(tx, {platformId: seen.id, kind, now});
		const about = {chat: chat.id, role: 'say', now} as const;
		if (callbackQuery) await post(tx, {...about, call: {kind: 'answer', callback: callbackQuery.id}});
		const say = shelfOf(house, house.region).texts.in(ctx.from?.language_code);
		const keyboard = [[{text: say.say('button-go-on'), data: packButton({kind: 'resume', find: 0})}]];
		await post(tx, {...about, call: {kind: 'send', html: escaped(say.say('trouble')), keyboard}});
	});
}
