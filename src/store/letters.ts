/** Questions of verifiers to finders, and the answers; kept with the find, shown to nobody else. */
import type {Selectable} from 'kysely';
import type {Db, Tables, Tx} from './schema.ts';

/** A question, or the answer to one, in words or as a photo of the find. */
export type Letter = {
	readonly id: number;
	readonly find: number;
	/** Nobody once that person is forgotten. */
	readonly person: number | undefined;
	/** The question that this answers; absent for a question. */
	readonly answers: number | undefined;
	/** UTC milliseconds. */
	readonly at: number;
	readonly words: string | undefined;
	/** Id of a photo. */
	readonly photo: number | undefined;
};

const columns = ['id', 'find', 'person', 'answers', 'at', 'words', 'photo'] as const;

/** Keeps a question or an answer; gives its id. */
export async function keepLetter(
	tx: Tx | Db,
	letter: {
		readonly find: number;
		readonly person: number;
		readonly answers?: number;
		readonly words?: string;
		readonly photo?: number;
		readonly now: number;
	},
): Promise<number> {
	const {id} = await tx
		.insertInto('letter')
		.values({
			find: letter.find,
			person: letter.person,
			answers: letter.answers ?? null,
			at: letter.now,
			words: letter.words ?? null,
			photo: letter.photo ?? null,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}

/** The letter with this id, if it is still there. */
export async function letterById(db: Db | Tx, id: number): Promise<Letter | undefined> {
	const row = await db.selectFrom('letter').select(columns).where('id', '=', id).executeTakeFirst();
	return row && letterFrom(row);
}

/** What was asked and answered about a find, oldest first. */
export async function lettersOf(db: Db | Tx, find: number): Promise<readonly Letter[]> {
	const rows = await db.selectFrom('letter').select(columns).where('find', '=', find).orderBy('id').execute();
	return rows.map(letterFrom);
}

/** Forgets what was asked and answered about a find. */
export async function forgetLettersOf(tx: Tx | Db, find: number): Promise<void> {
	// Answers first: each leans on its question.
	await tx.deleteFrom('letter').where('find', '=', find).where('answers', 'is not', null).execute();
	await tx.deleteFrom('letter').where('find', '=', find).execute();
}

/** Keeps what a person asked and answered without the person. */
export async function forgetLetterWriter(tx: Tx | Db, person: number): Promise<void> {
	await tx.updateTable('letter').set({person: null}).where('person', '=', person).execute();
}

function letterFrom({person, answers, words, photo, ...row}: Selectable<Tables['letter']>): Letter {
	return {
		...row,
		person: person ?? undefined,
		answers: answers ?? undefined,
		words: words ?? undefined,
		photo: photo ?? undefined,
	};
}
