/** Every command: who may use it, where, and where it is listed. */
import type {Role} from '../store/roles.ts';

/** Open to everybody and everywhere, and listed, unless it says otherwise. */
export type CommandRule = {
	readonly roles?: readonly Role[];
	/** What it is about is nobody else's business. */
	readonly isPrivate?: true;
	/** Listed in groups alone, or nowhere. */
	readonly listed?: 'in-groups' | 'nowhere';
};

/** In the order of a person's day. */
const table = {
	start: {listed: 'nowhere'},
	find: {},
	bowl: {},
	sort: {},
	tray: {},
	tally: {},
	drafts: {},
	days: {},
	tellme: {},
	cancel: {},
	help: {},
	safety: {},
	region: {},
	settings: {},
	sheet: {},
	sharing: {isPrivate: true},
	privacy: {},
	mydata: {isPrivate: true},
	forget: {isPrivate: true},
	say: {listed: 'in-groups'},
	onlyme: {listed: 'in-groups'},
	day: {roles: ['owner', 'coordinator'], isPrivate: true},
	invite: {roles: ['owner', 'coordinator'], isPrivate: true},
	team: {roles: ['owner', 'coordinator'], isPrivate: true},
	review: {roles: ['verifier']},
	season: {roles: ['owner', 'coordinator']},
	export: {roles: ['owner', 'coordinator'], isPrivate: true},
	forwarding: {roles: ['owner'], isPrivate: true},
} as const satisfies Readonly<Record<string, CommandRule>>;

/** A command by its name, as typed. */
export type CommandName = keyof typeof table;

/** Every command with its rule. */
export const commandTable: Readonly<Record<CommandName, CommandRule>> = table;

/** Whether there is a command of this name. */
export function isCommand(name: string): name is CommandName {
	return Object.hasOwn(table, name);
}

/** The commands that these roles open. */
export function ownCommands(roles: readonly Role[]): readonly CommandName[] {
	const names = Object.keys(table).filter(isCommand);
	return names.filter(name => commandTable[name].roles?.some(role => roles.includes(role)));
}

/** The commands that people with these roles see listed, their own first. */
export function listedCommands(roles: readonly Role[], where: 'private' | 'group'): readonly CommandName[] {
	const common = Object.keys(table)
		.filter(isCommand)
		.filter(name => {
			const {roles: wanted, listed} = commandTable[name];
			return !wanted && (listed === undefined || (listed === 'in-groups' && where === 'group'));
		});
	return [...ownCommands(roles), ...common];
}
