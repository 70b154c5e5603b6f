/** Commands that a button runs, for those who cannot write them as themselves. */
import {showBowl} from './commands/bowl.ts';
import {cancel} from './commands/cancel.ts';
import {showDrafts} from './commands/drafts.ts';
import {beginFindCommand} from './commands/find.ts';
import {showHelp} from './commands/help.ts';
import {showRegions} from './commands/region.ts';
import {showSafety} from './commands/safety.ts';
import {showSettings} from './commands/settings.ts';
import {start} from './commands/start.ts';
import type {Ctx} from './desk.ts';

const byButton: ReadonlyMap<string, (ctx: Ctx) => Promise<void>> = new Map([
	['find', beginFindCommand],
	['bowl', showBowl],
	['drafts', showDrafts],
	['cancel', cancel],
	['help', showHelp],
	['region', showRegions],
	['safety', showSafety],
	['settings', showSettings],
]);

/** Whether a button may stand for this command. */
export function runsByButton(command: string): boolean {
	return byButton.has(command);
}

/** Runs a command as if it was written; one that a button may not run begins as /start does. */
export async function runCommand(ctx: Ctx, command: string): Promise<void> {
	return (byButton.get(command) ?? start)(ctx);
}
