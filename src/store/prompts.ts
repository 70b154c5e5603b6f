/** Messages that asked for a reply, and what they said a reply is. */
import {sql} from 'kysely';
import {readCall} from './call.ts';
import type {Tx} from './schema.ts';

/** What a reply to a message of ours in this chat is, as the message itself says; nothing when it says none. */
export async function expectedOf(
	tx: Tx,
	message: {readonly chat: number; readonly messageId: number},
): Promise<string | undefined> {
	const row = await tx
		.selectFrom('outbox')
		.select('content')
		.where('chat', '=', message.chat)
		.where('messageId', '=', message.messageId)
		.where('role', '=', 'prompt')
		.executeTakeFirst();
	return row && expectedIn(row.content);
}

/** What is expected in a chat whose last words of ours asked for it. */
export async function expectedLast(tx: Tx, chat: number): Promise<string | undefined> {
	const prompt = await tx
		.selectFrom('outbox')
		.select(['id', 'content'])
		.where('chat', '=', chat)
		// Written out, since an index of some rows alone serves no value that is filled in.
		.where('role', '=', sql.lit('prompt'))
		.orderBy('id', 'desc')
		.limit(1)
		.executeTakeFirst();
	if (!prompt) return undefined;
	const later = await tx
		.selectFrom('outbox')
		.select('id')
		.where('chat', '=', chat)
		.where('id', '>', prompt.id)
		.where('lane', '=', 'chat')
		.where('role', '!=', 'commands')
		.limit(1)
		.executeTakeFirst();
	return later ? undefined : expectedIn(prompt.content);
}

function expectedIn(content: string): string | undefined {
	const call = readCall(content);
	return call?.kind === 'send' ? call.expects : undefined;
}
