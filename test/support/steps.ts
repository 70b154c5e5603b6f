/** Steps that many journeys share: walking to a question by ordinary answers, and looking at what was kept. */
import {draftSchema} from '../../src/record/draft.ts';
import type {Db} from '../../src/store/schema.ts';
import type {Actor} from './actor.ts';
import {newestFind} from './journey.ts';

/** What a person does at a question. */
export type Deed = (person: Actor) => Promise<void>;

/** Presses a button of the last message. */
export const press =
	(label: string): Deed =>
	person =>
		person.presses(label);

/** Writes an answer. */
export const write =
	(text: string): Deed =>
	person =>
		person.sends(text);

/** A wet, whole thornback ray's case, empty or alive. */
const ordinary: Readonly<Record<string, Deed>> = {
	'egg-case': press('Yes, like that'),
	alive: press('No, empty and light'),
	leave: press('Done, go on'),
	'photo-live': press('No photo, go on'),
	'live-result': press('Save this find'),
	photo: press('No photo, go on'),
	where: write('SW 465 304'),
	when: press('Today'),
	count: press('1'),
	broken: press('All there, go on'),
	condition: press('Soaked and soft'),
	soak: press('Two hours'),
	morning: press('08:00'),
	softness: press('Softer now'),
	aprons: press('Both are there'),
	length: write('66 mm'),
	outline: press('Two widths or less'),
	net: press('Long lines or smooth'),
	keel: press('Yes, a thin blade'),
	taper: press('As wide all along'),
	coat: press('Bare, or a few hairs'),
	flaps: press("Can't tell"),
	edge: press("Can't tell"),
	corners: press("Can't tell"),
	'front-flap': press("Can't tell"),
	'back-horns': press("Can't tell"),
	width: press("I can't measure it"),
	result: press('Save this find'),
};

/** Reads the word on safety and begins the first find. */
export async function begin(person: Actor): Promise<void> {
	await person.sends('/start');
	await person.presses('I have read this, begin');
}

/** Answers the newest find until it stands at `question`; says which questions were answered on the way. */
export async function walkTo(
	{db, person}: {readonly db: Db; readonly person: Actor},
	question: string,
	answers: Readonly<Record<string, Deed>> = {},
): Promise<readonly string[]> {
	const asked: string[] = [];
	for (;;) {
		const {id} = (await newestFind(db, person.id)).standing.at;
		if (id === question) return asked;
		const deed = answers[id] ?? ordinary[id];
		if (!deed || asked.length > 40) throw new Error(`Expected a way to "${question}"; it ends at "${id}"`);
		asked.push(id);
		await deed(person);
	}
}

/** The question at which the newest find of a person stands. */
export async function questionOf(db: Db, person: Actor): Promise<string> {
	return (await newestFind(db, person.id)).standing.at.id;
}

/** The draft of a find as it lies in the database; its body is nothing once it was withdrawn. */
export async function draftOf(db: Db, find: number) {
	const row = await db
		.selectFrom('draft')
		.select(['status', 'version', 'body'])
		.where('find', '=', find)
		.executeTakeFirst();
	if (!row) return undefined;
	const body = row.status === 'draft' ? draftSchema.parse(JSON.parse(row.body)) : undefined;
	return {status: row.status, version: row.version, body};
}

/** The kept draft of a person's newest find; throws when there is none. */
export async function newestDraft(db: Db, person: Actor) {
	const find = await newestFind(db, person.id);
	const draft = await draftOf(db, find.id);
	if (!draft?.body) throw new Error(`Expected a draft of find ${find.id}; it is "${draft?.status}"`);
	return {find, ...draft, body: draft.body};
}

/** When each reminder still to come is due, and for whose clock. */
export async function remindersToCome(db: Db) {
	return db
		.selectFrom('reminder')
		.select(['dueAt', 'zone'])
		.where('doneAt', 'is', null)
		.orderBy('dueAt')
		.orderBy('id')
		.execute();
}

/** How often a person was told that a bowl is ready. */
export function timesWoken(person: Actor): number {
	return person.all.filter(({text}) => text.includes('Your bowl is ready')).length;
}
