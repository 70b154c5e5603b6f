/** What verifiers said of drafts: each is kept, the newest counts, and none is ever changed. */
import type {Selectable} from 'kysely';
import type {Db, Tables, Tx} from './schema.ts';

/** What a verifier can come to. */
export type Outcome = Tables['decision']['outcome'];

/** What a verifier said; `name` is a scientific name, of a kind or of its genus or family. */
export type Said = {
	readonly outcome: Outcome;
	readonly name?: string | undefined;
	/** Id of a reason. */
	readonly reason?: string | undefined;
	/** The reason in the verifier's own words. */
	readonly words?: string | undefined;
};

/** A decision as kept. */
export type Decision = Said & {
	readonly find: number;
	/** Nobody once that person is forgotten. */
	readonly person: number | undefined;
	/** The name that the verifier chose. */
	readonly publicName: string | undefined;
	/** UTC milliseconds. */
	readonly at: number;
	/** The version of the draft that was looked at. */
	readonly version: number;
};

/** Keeps a decision after those that were made before. */
export async function keepDecision(
	tx: Tx | Db,
	made: {
		readonly find: number;
		readonly person: number;
		readonly version: number;
		readonly said: Said;
		readonly now: number;
	},
): Promise<void> {
	const {find, person, version, said, now} = made;
	await tx
		.insertInto('decision')
		.values({
			find,
			person,
			version,
			at: now,
			outcome: said.outcome,
			name: said.name ?? null,
			reason: said.reason ?? null,
			words: said.words ?? null,
		})
		.execute();
}

/** All that was decided about a find, oldest first. */
export async function decisionsOf(db: Db | Tx, find: number): Promise<readonly Decision[]> {
	return (await decisionRows(db).where('decision.find', '=', find).execute()).map(decisionFrom);
}

/** The decision that counts for each of these finds; those without one are left out. */
export async function lastDecisions(
	db: Db | Tx,
	finds: readonly number[],
): Promise<ReadonlyMap<number, Decision>> {
	const each = await decisionsOfEach(db, finds);
	return new Map([...each].flatMap(([find, all]) => all.slice(-1).map(last => [find, last] as const)));
}

/** All that was decided about each of these finds, oldest first; those without a decision are left out. */
export async function decisionsOfEach(
	db: Db | Tx,
	finds: readonly number[],
): Promise<ReadonlyMap<number, readonly Decision[]>> {
	if (finds.length === 0) return new Map();
	const rows = await decisionRows(db)
		.where('decision.find', 'in', [...finds])
		.execute();
	const each = new Map<number, Decision[]>();
	for (const row of rows) each.set(row.find, [...(each.get(row.find) ?? []), decisionFrom(row)]);
	return each;
}

/** Empties what was written in the decisions about a find that its finder took back. */
export async function emptyDecisions(tx: Tx | Db, find: number): Promise<void> {
	await tx.updateTable('decision').set({words: null}).where('find', '=', find).execute();
}

/** Keeps the decisions of a person without the person. */
export async function forgetVerifier(tx: Tx | Db, person: number): Promise<void> {
	await tx.updateTable('decision').set({person: null}).where('person', '=', person).execute();
}

function decisionRows(db: Db | Tx) {
	return db
		.selectFrom('decision')
		.leftJoin('person', 'person.id', 'decision.person')
		.select([
			'decision.find',
			'decision.person',
			'person.publicName',
			'decision.at',
			'decision.version',
			'decision.outcome',
			'decision.name',
			'decision.reason',
			'decision.words',
		])
		.orderBy('decision.find')
		.orderBy('decision.id');
}

type DecisionRow = Omit<Selectable<Tables['decision']>, 'id'> & {readonly publicName: string | null};

function decisionFrom({person, publicName, name, reason, words, ...row}: DecisionRow): Decision {
	return {
		...row,
		person: person ?? undefined,
		publicName: publicName ?? undefined,
		name: name ?? undefined,
		reason: reason ?? undefined,
		words: words ?? undefined,
	};
}
