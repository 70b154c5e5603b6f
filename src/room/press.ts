import {z} from 'zod';
import type {Place, SentUpdate} from './acts.ts';
import type {Core} from './core.ts';
import {nextNumber} from './core.ts';
import {findMessage} from './messages.ts';
import {asUser, chatWithId} from './people.ts';
import {addUpdate} from './updates.ts';

const answerRow = z.object({
	id: z.string(),
	person: z.number(),
	changed: z.number(),
	text: z.string().nullable(),
	alert: z.number(),
});

/** A press of a button: with any data at all, as clients can, on a message the bot may no longer reach. */
export type Press = {
	readonly data: string;
	readonly messageId: number;
	readonly inaccessible?: boolean | undefined;
};

/** The bot's answer to a press; `changed` is the change number under which pages see it. */
export type CallbackAnswer = {
	readonly queryId: string;
	readonly person: number;
	readonly text: string;
	readonly alert: boolean;
	readonly changed: number;
};

/** Presses a button; throws when the message was never there. */
export function pressButton(core: Core, place: Place, press: Press): SentUpdate & {readonly queryId: string} {
	const chat = chatWithId(core, place.chat);
	if (chat === undefined) throw new Error(`Expected a chat with id ${place.chat}; there is none`);
	const message = findMessage(core, place.chat, press.messageId)?.message;
	if (message === undefined && press.inaccessible !== true) {
		throw new Error(`Expected message ${press.messageId} in chat ${place.chat}; it is gone`);
	}
	return core.db.together(() => {
		const queryId = String(4_000_000_000 + nextNumber(core, 'press', 1));
		const insert = 'insert into press (id, person, at) values (?, ?, ?)';
		core.db.run(insert, queryId, place.person.id, core.clock.now());
		const away = {chat, message_id: press.messageId, date: 0} as const;
		const updateId = addUpdate(core, place.chat, {
			callback_query: {
				id: queryId,
				from: asUser(place.person),
				chat_instance: String(place.chat * 31),
				data: press.data,
				message: press.inaccessible === true || message === undefined ? away : message,
			},
		});
		return {messageId: press.messageId, updateId, queryId};
	});
}

/** The answers given to presses since a change number, oldest first. */
export function answersSince(core: Core, since: number): readonly CallbackAnswer[] {
	const sql =
		'select id, person, changed, text, alert from press where answered = 1 and changed > ? order by changed';
	return core.db.all(answerRow, sql, since).map(row => ({
		queryId: row.id,
		person: row.person,
		text: row.text ?? '',
		alert: row.alert === 1,
		changed: row.changed,
	}));
}
