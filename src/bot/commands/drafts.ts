/** /drafts: a person's saved finds, to see, change or delete. */
import {questionOfKind} from '../../find/correct.ts';
import {noteQuestion, standAt} from '../../find/stand.ts';
import {draftSchema} from '../../record/draft.ts';
import {decisionsOf} from '../../store/decisions.ts';
import {countDrafts, draftOfFind, draftsOf} from '../../store/drafts.ts';
import {type FindRow, keepTurn} from '../../store/finds.ts';
import {forgetMessages} from '../../store/outbox.ts';
import {forgetReminders} from '../../store/reminders.ts';
import {menuButton, packButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere, shelfOf} from '../desk.ts';
import {draftCard} from '../draft-card.ts';
import {turnFind} from '../find-turn.ts';
import {withdrawRecord} from '../keep-record.ts';
import {decisionText} from '../review-words.ts';
import {readTrail} from '../stored-trail.ts';

/** So many drafts fit a phone. */
const perPage = 6;

/** Which questions a finder may answer anew from the card of a draft, in the order of the buttons. */
const mendable = ['place', 'date', 'count', 'note'] as const;

/** Lists the newest drafts. */
export async function showDrafts({desk}: Ctx): Promise<void> {
	return listDrafts(desk, undefined);
}

/** Lists drafts older than the one of the find that a button carries. */
export async function listOlder(desk: Desk, [before = '']: readonly string[]): Promise<void> {
	return listDrafts(desk, /^\d{1,10}$/.test(before) ? Number(before) : undefined);
}

async function listDrafts(desk: Desk, before: number | undefined): Promise<void> {
	const {say} = readerAt(desk);
	// A group sees only what was found together there.
	const wanted = {person: desk.person.id, chat: desk.chat.kind === 'group' ? desk.chat.id : undefined};
	const count = await countDrafts(desk.tx, wanted);
	if (count === 0) return sayHere(desk, say.say('drafts-empty'));
	const mark = before === undefined ? undefined : await draftOfFind(desk.tx, before, draftSchema);
	const after = mark ? {savedAt: mark.savedAt, find: mark.find} : undefined;
	const drafts = await draftsOf(desk.tx, {...wanted, limit: perPage + 1, after}, draftSchema);
	const page = drafts.slice(0, perPage);
	const lines = page.map(({find, body}) => say.say('drafts-line', draftCard(body, {say, number: find})));
	const open = page.map(({find}) => [
		{
			text: say.say('drafts-open', {number: String(find)}),
			data: packButton({kind: 'draft', find, act: 'open'}),
		},
	]);
	const last = page.at(-1);
	const older =
		drafts.length > perPage && last
			? [[{text: say.say('drafts-older'), data: menuButton('drafts', String(last.find))}]]
			: [];
	return sayHere(desk, [say.say('drafts-list', {count}), ...lines.map(line => `• ${line}`)].join('\n'), [
		...open,
		...older,
	]);
}

/** What a button of a draft's card asks for. */
export async function actOnDraft(desk: Desk, row: FindRow, act: string): Promise<void> {
	const {say} = readerAt(desk, row.region);
	const kept = await draftOfFind(desk.tx, row.id, draftSchema);
	if (kept?.kind !== 'draft') return sayHere(desk, say.say('draft-gone'));
	const number = String(row.id);
	const button = (message: string, next: string, has = 'no') => [
		{text: say.say(message, {has}), data: packButton({kind: 'draft', find: row.id, act: next})},
	];
	if (act === 'delete') {
		const keyboard = [button('draft-delete-yes', 'really-delete'), button('draft-delete-no', 'open')];
		return sayHere(desk, say.say('draft-really', {number}), keyboard);
	}
	if (act === 'really-delete') return deleteDraft(desk, row);
	const question = questionOf(desk, row, act);
	if (question !== undefined) {
		await turnFind(desk, row, {kind: 'mend', question});
		return;
	}
	const isLive = kept.body.kind === 'left-alive';
	const card = {...draftCard(kept.body, {say, number: row.id}), checked: await checkedText(desk, row)};
	return sayHere(desk, say.say('draft-card', card), [
		...mendable
			.filter(what => what !== 'count' || !isLive)
			.map(what => button(`draft-mend-${what}`, what, kept.body.note === undefined ? 'no' : 'yes')),
		button('draft-delete', 'delete'),
	]);
}

/** What verifiers made of it. */
async function checkedText(desk: Desk, row: FindRow): Promise<string> {
	const reader = readerAt(desk, row.region);
	const last = (await decisionsOf(desk.tx, row.id)).at(-1);
	if (!last) return reader.say.say('draft-unchecked');
	return decisionText(last, shelfOf(desk.house, row.region).flow.region, reader);
}

async function deleteDraft(desk: Desk, row: FindRow): Promise<void> {
	const {say} = readerAt(desk, row.region);
	await withdrawRecord(desk, row);
	await forgetReminders(desk.tx, row.id);
	await forgetMessages(desk.tx, row.id);
	// The trail holds the place and the words of the finder: it goes with the draft.
	await keepTurn(desk.tx, {find: row.id, trail: '[]', turn: row.turn + 1, state: 'thrown', now: desk.now});
	return sayHere(desk, say.say('draft-deleted', {number: String(row.id)}));
}

function questionOf(desk: Desk, row: FindRow, act: string): string | undefined {
	if (act === 'note') return noteQuestion;
	const kind = mendable.find(what => what === act);
	if (kind === undefined || kind === 'note') return undefined;
	const {flow} = shelfOf(desk.house, row.region);
	return questionOfKind(flow, standAt(flow, readTrail(row)), kind);
}
