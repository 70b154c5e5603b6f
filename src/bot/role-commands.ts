/** Which commands a chat lists: the common ones, and those that a role opens. */
import {privateChatOf} from '../store/chats.ts';
import {lastPosted, post} from '../store/outbox.ts';
import {personById} from '../store/people.ts';
import {everyRole, peopleWith, type Role, rolesOf} from '../store/roles.ts';
import type {Tx} from '../store/schema.ts';
import type {Say} from '../text/text.ts';
import {listedCommands} from './command-table.ts';
import {type House, shelfOf} from './desk.ts';

/** The commands of people with these roles; the common ones too, since the narrowest list is shown alone. */
export function commandList(
	roles: readonly Role[],
	{say}: Say,
	where: 'private' | 'group' = 'private',
): {readonly command: string; readonly description: string}[] {
	return listedCommands(roles, where).map(command => ({command, description: say(`command-${command}`)}));
}

/** The roles that people with these roles may give and take back. */
export function rolesGivenBy(roles: readonly Role[]): readonly Role[] {
	if (roles.includes('owner')) return ['coordinator', 'verifier'];
	return roles.includes('coordinator') ? ['verifier'] : [];
}

/** Has a person's private chat list the commands that their roles open now, or the common list again. */
export async function listCommands(house: House, tx: Tx, person: number): Promise<void> {
	const chat = await privateChatOf(tx, person);
	if (!chat) return;
	const roles = await rolesOf(tx, person);
	const {language, region} = await personById(tx, person);
	const {texts} = shelfOf(house, region ?? house.region);
	const list = roles.length === 0 ? [] : commandList(roles, texts.in(language));
	const call = {kind: 'commands', list} as const;
	const last = await lastPosted(tx, {chat: chat.id, role: 'commands'});
	if (JSON.stringify(last) === JSON.stringify(call)) return;
	await post(tx, {chat: chat.id, role: 'commands', call, now: house.now()});
}

/** Renews the lists of everybody with a role: another version of the program may have other commands. */
export async function renewCommands(house: House, tx: Tx): Promise<void> {
	for (const role of everyRole) {
		for (const {person} of await peopleWith(tx, role)) await listCommands(house, tx, person);
	}
}
