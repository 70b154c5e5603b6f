/** /tally: what was found in this chat on a day: by kind, how many, and who shared it. */
import {type Draft, draftSchema} from '../../record/draft.ts';
import {tallyOf} from '../../record/tally.ts';
import type {Keyboard} from '../../store/call.ts';
import {countUnfinished} from '../../store/finds.ts';
import {type OwnedRecord, savedSince} from '../../store/saved.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, postHere, readerAt} from '../desk.ts';
import {rowsOf} from '../screen.ts';
import {type Days, dayOf, daysOf, type Span, spanFrom, spans} from '../span.ts';
import {type ToldTally, tallyPicture, tallyText} from '../tally-screen.ts';
import {escaped} from '../words.ts';

/** How far back a day with finds is looked for. */
const lookedBackMs = 31 * 24 * 3_600_000;

/** Shows today, or while nothing was found today the last day on which something was. */
export async function showTally({desk}: Ctx): Promise<void> {
	const today = await toldOf(desk, 'today');
	if (today.tally.finds > 0 || today.unfinished > 0) return sendTally(desk, today);
	const yesterday = await toldOf(desk, 'yesterday');
	if (yesterday.tally.finds > 0) return sendTally(desk, yesterday);
	const recent = foundIn(
		await savedSince(desk.tx, {...whose(desk), since: desk.now - lookedBackMs}, draftSchema),
	);
	const last = recent
		.map(({draft}) => draft.foundOn)
		.toSorted()
		.at(-1);
	return sendTally(desk, last === undefined ? today : await toldOf(desk, dayOf(last, readerAt(desk))));
}

/** Shows the days of the span that a button names. */
export async function showTallyOf(desk: Desk, [span = '']: readonly string[]): Promise<void> {
	return sendTally(desk, await toldOf(desk, spanFrom(span)));
}

async function sendTally(desk: Desk, told: ToldTally): Promise<void> {
	const picture = tallyPicture(desk, told);
	await postHere(
		desk,
		{
			kind: 'send',
			html: escaped(tallyText(desk, told)),
			keyboard: spanButtons(desk),
			...(picture ? {picture} : {}),
		},
		{role: 'say'},
	);
}

/** Shows what was sorted together, on whatever day it was found. */
export async function showTallyOfSorting(desk: Desk, sorting: number): Promise<void> {
	const found = foundIn(await savedSince(desk.tx, {sorting, since: 0}, draftSchema));
	const heading = readerAt(desk).say.say('sort-done', {count: found.length});
	return sendTally(desk, {...countedIn(found), heading, unfinished: 0});
}

async function toldOf(desk: Desk, when: Span | Days): Promise<ToldTally> {
	const reader = readerAt(desk);
	const days = typeof when === 'string' ? daysOf(when, reader) : when;
	const span = typeof when === 'string' ? when : 'day';
	const of = whose(desk);
	// Nothing is saved before it is found.
	const saved = foundIn(await savedSince(desk.tx, {...of, since: days.beginsAt}, draftSchema));
	return {
		...countedIn(saved.filter(({draft}) => isWithin(days, draft.foundOn))),
		heading: reader.say.say('tally-heading', {span, day: days.called}),
		unfinished: await countUnfinished(desk.tx, {...of, from: days.beginsAt, until: days.endsAt}),
	};
}

/** A group counts what was found in it; a person alone all that is theirs. */
function whose({chat, person}: Desk): {readonly chat: number} | {readonly person: number} {
	return chat.kind === 'group' ? {chat: chat.id} : {person: person.id};
}

type FoundRecord = Omit<OwnedRecord<Draft>, 'body'> & {readonly draft: Draft};

/** Records that can be read; one that cannot keeps no other from being counted. */
function foundIn(saved: readonly OwnedRecord<Draft>[]): readonly FoundRecord[] {
	return saved.flatMap(({body, ...record}) => (body ? [{...record, draft: body}] : []));
}

function countedIn(found: readonly FoundRecord[]): Pick<ToldTally, 'tally' | 'sharers'> {
	const people = new Map(found.map(({person, sharing}) => [person, sharing.publicName]));
	const names = [...people.values()].filter(name => name !== undefined);
	return {tally: tallyOf(found), sharers: {names: names.toSorted(), nameless: people.size - names.length}};
}

function isWithin({from, to}: Days, date: string): boolean {
	return from <= date && date <= to;
}

function spanButtons(desk: Desk): Keyboard {
	const {say} = readerAt(desk);
	return rowsOf(spans.map(span => ({text: say.say(`tally-${span}`), data: menuButton('tally', span)})));
}
