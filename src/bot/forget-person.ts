/** Everything of a person erased, and those told who got it. */
import {draftSchema} from '../record/draft.ts';
import {namelessDraft} from '../record/nameless.ts';
import {checkedFinds} from '../store/checked.ts';
import {draftOfFind, keepDraft} from '../store/drafts.ts';
import {type FindRow, findsOf} from '../store/finds.ts';
import {forgetPerson} from '../store/forget.ts';
import {forgetForwards} from '../store/forwards.ts';
import {dropPhotos} from '../store/photos.ts';
import type {Desk} from './desk.ts';
import {passOn, withdrawRecord} from './keep-record.ts';
import {leaveDays} from './leave-days.ts';

/**
 * Erases all that is held on the person at the desk. Records that a verifier gave a name stay without them, and the
 * receiver gets those anew; of all others it hears that they are withdrawn. Says how many stay.
 */
export async function forgetEverything(desk: Desk): Promise<number> {
	const {tx, person, now} = desk;
	const kept = await checkedFinds(tx, person.id);
	for (const row of await findsOf(tx, person.id)) {
		if (kept.includes(row.id)) await keepNameless(desk, row);
		else await withdrawRecord(desk, row);
	}
	await leaveDays(desk);
	await forgetPerson(tx, {person: person.id, kept, now});
	return kept.length;
}

async function keepNameless(desk: Desk, row: FindRow): Promise<void> {
	const {tx, now} = desk;
	const kept = await draftOfFind(tx, row.id, draftSchema);
	if (kept?.kind !== 'draft') throw new Error(`Expected find ${row.id} to have a record; it has none`);
	const draft = namelessDraft(kept.body);
	await keepDraft(tx, {find: row.id, person: row.person, draft, now});
	await dropPhotos(tx, row.id);
	// What has not left yet holds the words of the finder.
	await forgetForwards(tx, row.uuid);
	await passOn(desk, row.id, 'record.changed');
}
