/** What the buttons under the words of a command do, and who may press them. */
import {type Role, rolesOf} from '../store/roles.ts';
import {retryForwarding} from './commands/forwarding.ts';
import {type Desk, readerAt, sayHere} from './desk.ts';

type Menu = {
	/** Absent where everybody may. */
	readonly roles?: readonly Role[];
	/** What it is about is nobody else's business. */
	readonly isPrivate: boolean;
	readonly act: (desk: Desk, parts: readonly string[]) => Promise<void>;
};

const menus: Readonly<Record<string, Menu>> = {
	forwarding: {roles: ['owner'], isPrivate: true, act: retryForwarding},
};

/** Does what a button of a command asks for; clients can send what no button had, so each is looked at again. */
export async function actOnMenu(
	desk: Desk,
	{menu: name, parts}: {readonly menu: string; readonly parts: readonly string[]},
): Promise<void> {
	const {say} = readerAt(desk);
	const menu = menus[name];
	if (!menu) return sayHere(desk, say.say('nothing-open'));
	const held = menu.roles ? await rolesOf(desk.tx, desk.person.id) : [];
	if (menu.roles && !menu.roles.some(role => held.includes(role)))
		return sayHere(desk, say.say(desk.chat.kind === 'group' ? 'role-missing-group' : 'role-missing'));
	if (menu.isPrivate && desk.chat.kind !== 'private') return sayHere(desk, say.say('role-privately'));
	return menu.act(desk, parts);
}
