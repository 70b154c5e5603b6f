/** Messages that asked for a reply, and what they said a reply is. */
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
	const row = await tx
		.selectFrom('outbox')
		.select(['role', 'content'])
		.where('chat', '=', chat)
		.where('lane', '=', 'chat')
		.where('role', '!=', 'commands')
		.where('state', '!=', 'failed')
		.orderBy('id', 'desc')
		.executeTakeFirst();
	return row?.role === 'prompt' ? expectedIn(row.content) : undefined;
}

function expectedIn(content: string): string | undefined {
	const call = readCall(content);
	return call?.kind === 'send' ? call.expects : undefined;
}
