/** Who may do what: looked at again at every command and every button, and said kindly when not. */
import {rolesOf} from '../store/roles.ts';
import {type CommandName, commandTable} from './command-table.ts';
import {type Ctx, type Desk, readerAt, sayHere} from './desk.ts';

/** What a command does. */
export type Handler = (ctx: Ctx) => Promise<void>;

/** Lets a command through for those who may use it, where they may. */
export function guarded(name: CommandName, handler: Handler): Handler {
	return async ctx => {
		if (await mayUse(ctx.desk, name)) await handler(ctx);
	};
}

/** Whether a command may be used here by this person; if not, they have been told why. */
export async function mayUse(desk: Desk, name: CommandName): Promise<boolean> {
	const {roles, isPrivate} = commandTable[name];
	const refusal = (await lacks(desk, roles)) ?? (isPrivate && isGroup(desk) ? 'role-privately' : undefined);
	if (refusal === undefined) return true;
	await sayHere(desk, readerAt(desk).say.say(refusal));
	return false;
}

async function lacks(
	desk: Desk,
	roles: (typeof commandTable)[CommandName]['roles'],
): Promise<'role-missing' | 'role-missing-group' | undefined> {
	if (!roles) return undefined;
	const held = await rolesOf(desk.tx, desk.person.id);
	if (roles.some(role => held.includes(role))) return undefined;
	// A group need not learn what else there is.
	return isGroup(desk) ? 'role-missing-group' : 'role-missing';
}

function isGroup({chat}: Desk): boolean {
	return chat.kind === 'group';
}
