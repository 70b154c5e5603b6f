/** Commands that a button runs, for those who cannot write them as themselves. */
import {type CommandName, commandTable, isCommand} from './command-table.ts';
import type {Ctx} from './desk.ts';
import {guarded} from './guard.ts';
import {handlers} from './handlers.ts';

/** Whether a button may stand for this command: one that is listed everywhere and needs no words after it. */
export function runsByButton(command: string): command is CommandName {
	return isCommand(command) && commandTable[command].listed === undefined;
}

/** Runs a command as if it was written; one that a button may not run begins as /start does. */
export async function runCommand(ctx: Ctx, command: string): Promise<void> {
	const name = runsByButton(command) ? command : 'start';
	return guarded(name, handlers[name])(ctx);
}
