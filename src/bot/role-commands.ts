/** Which commands a role opens: listed for those who have it, and obeyed for nobody else. */
import {privateChatOf} from '../store/chats.ts';
import {lastPosted, post} from '../store/outbox.ts';
import {personById} from '../store/people.ts';
import {everyRole, peopleWith, type Role, rolesOf} from '../store/roles.ts';
import type {Tx} from '../store/schema.ts';
import type {Say} from '../text/text.ts';
import {type Ctx, type House, readerAt, sayHere, shelfOf} from './desk.ts';

/** In the order of a person's day. */
const common = ['find', 'bowl', 'drafts', 'cancel', 'help', 'safety', 'region', 'settings'] as const;

/** What each role may do beside that. */
const opened: Readonly<Record<Role, readonly string[]>> = {
	owner: ['invite', 'team', 'forwarding'],
	coordinator: ['invite', 'team'],
	verifier: [],
};

type Handler = (ctx: Ctx) => Promise<void>;

/** The commands of people with these roles; the common ones too, since the narrowest list is shown alone. */
export function commandList(
	roles: readonly Role[],
	{say}: Say,
): {readonly command: string; readonly description: string}[] {
	const names = new Set([...roles.flatMap(role => opened[role]), ...common]);
	return [...names].map(command => ({command, description: say(`command-${command}`)}));
}

/** The roles that people with these roles may give and take back. */
export function rolesGivenBy(roles: readonly Role[]): readonly Role[] {
	if (roles.includes('owner')) return ['coordinator', 'verifier'];
	return roles.includes('coordinator') ? ['verifier'] : [];
}

/** Lets only people with one of these roles through to a command; anybody else hears a kind word. */
export function only(roles: readonly Role[], handler: Handler): Handler {
	return async ctx => {
		const {desk} = ctx;
		const held = await rolesOf(desk.tx, desk.person.id);
		if (roles.some(role => held.includes(role))) return handler(ctx);
		const {say} = readerAt(desk);
		// A group need not learn what else there is.
		return sayHere(desk, say.say(desk.chat.kind === 'group' ? 'role-missing-group' : 'role-missing'));
	};
}

/** Lets a command through in private chats; a group is asked to come there. */
export function privately(handler: Handler): Handler {
	return async ctx => {
		if (ctx.desk.chat.kind === 'private') return handler(ctx);
		return sayHere(ctx.desk, readerAt(ctx.desk).say.say('role-privately'));
	};
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
