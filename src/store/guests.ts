/** Who comes to a day. */
import type {Db, Tables, Tx} from './schema.ts';

/** What somebody said of a day. */
export type Guest = {
	readonly day: number;
	readonly person: number;
	/** Where they said it, and hear more. */
	readonly chat: number;
	readonly answer: Tables['guest']['answer'];
	/** How many they are, themselves among them. */
	readonly party: number;
};

/** Heads by answer. */
export type Heads = {readonly coming: number; readonly perhaps: number; readonly cannot: number};

const columns = ['day', 'person', 'chat', 'answer', 'party'] as const;

/** Notes what a person said, in place of what they said before; from now on they are told of the day. */
export async function noteGuest(tx: Tx, guest: Guest & {readonly now: number}): Promise<void> {
	const {now, day, person, ...said} = guest;
	await tx
		.insertInto('guest')
		.values({day, person, ...said, isTold: 1, answeredAt: now})
		.onConflict(conflict =>
			conflict.columns(['day', 'person']).doUpdateSet({...said, isTold: 1, answeredAt: now}),
		)
		.execute();
}

/** What a person said of a day, if anything. */
export async function guestOf(
	db: Db | Tx,
	{day, person}: {readonly day: number; readonly person: number},
): Promise<Guest | undefined> {
	return db
		.selectFrom('guest')
		.select(columns)
		.where('day', '=', day)
		.where('person', '=', person)
		.executeTakeFirst();
}

/** Everybody who said something of a day. */
export async function guestsOf(db: Db | Tx, day: number): Promise<readonly Guest[]> {
	return db.selectFrom('guest').select(columns).where('day', '=', day).orderBy('person').execute();
}

/** How many heads come, perhaps come, and do not. */
export async function headsOf(db: Db | Tx, day: number): Promise<Heads> {
	const rows = await db
		.selectFrom('guest')
		.select(['answer'])
		.select(({fn}) => fn.sum<number>('party').as('heads'))
		.where('day', '=', day)
		.groupBy('answer')
		.execute();
	const heads = (answer: Guest['answer']) => Number(rows.find(row => row.answer === answer)?.heads ?? 0);
	return {coming: heads('coming'), perhaps: heads('perhaps'), cannot: heads('cannot')};
}

/** Who gave one of these answers, wants to hear more, and can be reached; with their zone where it is known. */
export async function guestsToTell(
	db: Db | Tx,
	{day, answers}: {readonly day: number; readonly answers: readonly Guest['answer'][]},
): Promise<readonly {readonly chat: number; readonly person: number; readonly zone: string | undefined}[]> {
	const rows = await db
		.selectFrom('guest')
		.innerJoin('chat', 'chat.id', 'guest.chat')
		.innerJoin('person', 'person.id', 'guest.person')
		.select(['guest.chat', 'guest.person', 'person.zone'])
		.where('guest.day', '=', day)
		.where('guest.answer', 'in', answers)
		.where('guest.isTold', '=', 1)
		.where('chat.goneAt', 'is', null)
		.orderBy('guest.person')
		.execute();
	return rows.map(row => ({...row, zone: row.zone ?? undefined}));
}
