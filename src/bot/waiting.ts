/** The cases of a bowl that wait to be sorted. */
import type {Standing} from '../find/stand.ts';
import {standAt} from '../find/stand.ts';
import {type FindRow, soakingFinds} from '../store/finds.ts';
import {type Desk, shelfOf} from './desk.ts';
import {trailIfSound} from './stored-trail.ts';
import {mayAnswer} from './whose.ts';

/** The next case that lies in the bowl of this chat and is ready; one that is not, only where nothing is sorted yet. */
export async function nextWaiting(
	desk: Desk,
	sorting: {readonly id: number; readonly isBegun: boolean},
): Promise<FindRow | undefined> {
	const rows = await soakingFinds(desk.tx, {chat: desk.chat.id});
	const cases = rows
		.filter(row => mayAnswer(desk, row))
		.flatMap(row => {
			const trail = trailIfSound(desk, row);
			if (!trail) return [];
			return [{row, isReady: isReady(standAt(shelfOf(desk.house, row.region).flow, trail), desk.now)}];
		});
	const ready = cases.find(one => one.isReady);
	return (ready ?? (sorting.isBegun ? undefined : cases[0]))?.row;
}

function isReady({at, facts}: Standing, now: number): boolean {
	if (at.kind === 'step' && at.step.kind === 'softness') return true;
	return facts.bowl !== undefined && facts.bowl.dueAt <= now;
}
