/** Finds that nobody finishes: their finders are told by day, and a week later what is still untouched goes. */

import {unfinishedLimits} from '../find/unfinished.ts';
import {isQuiet} from '../place/quiet-hours.ts';
import type {Db, Tx} from '../store/schema.ts';
import {eraseUnfinished, findsToWarnOf, markWarned, type StaleFind} from '../store/unfinished.ts';

/** What keeping the time works with. */
export type UnfinishedTools = {
	readonly db: Db;
	readonly now: () => number;
	/** The zone of people who have not said theirs. */
	readonly zone: string;
	/** Tells a finder of their finds in one chat. */
	readonly onStale: (tx: Tx, finds: readonly StaleFind[]) => Promise<void>;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** One round: warns whom it is time to warn, and erases what was warned of. */
export async function keepUnfinished(tools: UnfinishedTools): Promise<void> {
	const {db, log} = tools;
	const now = tools.now();
	const {warnBefore, eraseBefore, warnedBefore} = unfinishedLimits(now);
	const awake = (await findsToWarnOf(db, warnBefore)).filter(({zone}) => !isQuiet(now, zone ?? tools.zone));
	for (const finds of byFinder(awake)) {
		await db.transaction().execute(async tx => {
			await markWarned(tx, {finds: finds.map(({id}) => id), now});
			await tools.onStale(tx, finds);
		});
	}
	const limits = {before: eraseBefore, warnedBefore};
	const count = await db.transaction().execute(tx => eraseUnfinished(tx, limits));
	if (count > 0) log({level: 'info', what: 'unfinished finds erased', count});
}

function byFinder(finds: readonly StaleFind[]): readonly (readonly StaleFind[])[] {
	const groups = new Map<string, StaleFind[]>();
	for (const find of finds) {
		const name = `${find.person} ${find.chat}`;
		groups.set(name, [...(groups.get(name) ?? []), find]);
	}
	return [...groups.values()];
}
