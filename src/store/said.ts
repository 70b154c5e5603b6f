/** What was said before, looked up to be changed. */
import {type Call, callSchema} from './call.ts';
import type {Db, Tx} from './schema.ts';

/** The newest question in a chat that is about no find and was asked in this turn, with what it said. */
export async function lastAsked(
	tx: Tx,
	{chat, turn}: {readonly chat: number; readonly turn: number},
): Promise<{readonly id: number; readonly call: Call} | undefined> {
	const row = await tx
		.selectFrom('outbox')
		.select(['id', 'content'])
		.where('chat', '=', chat)
		.where('find', 'is', null)
		.where('role', '=', 'ask')
		.where('turn', '=', turn)
		.where('state', '!=', 'failed')
		.orderBy('id', 'desc')
		.executeTakeFirst();
	return row && {id: row.id, call: callSchema.parse(JSON.parse(row.content))};
}

/** The chat in which a row was said; nothing once it is forgotten. */
export async function chatOfRow(db: Db | Tx, id: number): Promise<number | undefined> {
	const row = await db.selectFrom('outbox').select('chat').where('id', '=', id).executeTakeFirst();
	return row?.chat;
}
