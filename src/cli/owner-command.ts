/** A new code to own the program, for a keeper whose owner lost their account. */
import {existsSync} from 'node:fs';
import {resolve} from 'node:path';
import {parseArgs} from 'node:util';
import {readSettings} from '../settings.ts';
import {newCode, offerOwnership, ownershipLivesMs} from '../store/invitations.ts';
import {openStore} from '../store/open.ts';
import {withdrawFromAll} from '../store/roles.ts';
import {type ExitCode, messageOf, type Terminal} from './terminal.ts';

/** What `owner --help` says. */
export const ownerHelp = `npm run owner
npm run owner -- --instead

Prints a code, while the program runs or not: whoever writes it to the bot, in a private chat, is an
owner. It works once, for a day, and until the program starts again or another code is printed. Which
database: DATABASE_URL or DATA_DIR, as for the program.

  --instead   takes the role at once from whoever owns it now; without it they stay owners, too

Leaves with 0 when all is well, 1 when there is no database to write to, 2 when called wrongly.`;

/** What the command may touch, handed in so that tests can hand in their own. */
export type OwnerTools = Pick<Terminal, 'calledIn' | 'say' | 'complain'> & {
	readonly environment: Readonly<Record<string, string | undefined>>;
	/** So many bytes that nobody can guess. */
	readonly random: (size: number) => Uint8Array;
	readonly now: number;
};

/** Offers ownership by a code; says what went wrong in one line, and then nobody's role is changed. */
export async function runOwner(args: readonly string[], tools: OwnerTools): Promise<ExitCode> {
	let called: ReturnType<typeof readCall>;
	try {
		called = readCall(args);
	} catch (error) {
		tools.complain(messageOf(error));
		return 2;
	}
	if (called.isHelp) {
		tools.say(ownerHelp);
		return 0;
	}
	try {
		for (const line of await offer(called.isInstead, tools)) tools.say(line);
		return 0;
	} catch (error) {
		tools.complain(messageOf(error));
		return 1;
	}
}

function readCall(args: readonly string[]) {
	const {values} = parseArgs({
		args: [...args],
		options: {help: {type: 'boolean', short: 'h'}, instead: {type: 'boolean'}},
	});
	return {isHelp: values.help === true, isInstead: values.instead === true};
}

async function offer(isInstead: boolean, tools: OwnerTools): Promise<readonly string[]> {
	const {environment, calledIn, random, now} = tools;
	const file = resolve(calledIn, readSettings(environment).databaseFile);
	if (!existsSync(file)) throw new Error(`Expected a database at ${file}; there is none`);
	const db = await openStore(file);
	try {
		const code = newCode(random);
		const lost = await db.transaction().execute(async tx => {
			await offerOwnership(tx, {code, now});
			return isInstead ? withdrawFromAll(tx, 'owner') : 0;
		});
		const until = new Date(now + ownershipLivesMs).toISOString().slice(0, 16).replace('T', ' ');
		return [
			...(isInstead ? [`Owners before, who are none any more: ${lost}`] : []),
			`To become an owner, write this to the bot in a private chat, by ${until} UTC: /start ${code}`,
		];
	} finally {
		await db.destroy();
	}
}
