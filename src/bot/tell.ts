/** Words for somebody who did not ask just now, in their private chat and their language. */
import type {Call, Keyboard} from '../store/call.ts';
import {privateChatOf} from '../store/chats.ts';
import {type OutboxRole, post} from '../store/outbox.ts';
import {personById} from '../store/people.ts';
import {type Desk, readerAt} from './desk.ts';
import {escaped, type Reader} from './words.ts';

/** What somebody is told; `about` says for whom and what a reply to it is. */
export type Told = {
	readonly text: string;
	readonly keyboard?: Keyboard;
	readonly with?: Partial<Omit<Extract<Call, {kind: 'send'}>, 'kind' | 'html' | 'keyboard'>>;
	readonly about?: {readonly role: OutboxRole; readonly find?: number; readonly turn?: number};
};

/** Tells a person something in private; false when they have no such chat or left it. */
export async function tell(desk: Desk, person: number, words: (reader: Reader) => Told): Promise<boolean> {
	const chat = await privateChatOf(desk.tx, person);
	if (!chat) return false;
	const reader = readerAt({...desk, person: await personById(desk.tx, person)});
	const told = words(reader);
	const call = {kind: 'send', html: escaped(told.text), keyboard: told.keyboard ?? [], ...told.with} as const;
	await post(desk.tx, {chat: chat.id, call, now: desk.now, ...(told.about ?? {role: 'say'})});
	return true;
}
