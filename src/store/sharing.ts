/** What a person wishes of the records that are published. */
import type {Db, Tx} from './schema.ts';

/** The name to be called by, and the side in metres of the square that hides a place; absent where not wished. */
export type Sharing = {readonly publicName?: string | undefined; readonly coarseM?: number | undefined};

/** What a person wishes. */
export async function sharingOf(db: Db | Tx, person: number): Promise<Sharing> {
	const row = await db
		.selectFrom('person')
		.select(['publicName', 'coarseM'])
		.where('id', '=', person)
		.executeTakeFirstOrThrow();
	return {publicName: row.publicName ?? undefined, coarseM: row.coarseM ?? undefined};
}

/** Keeps what a person wishes, all of it: what is absent is wished no more. */
export async function chooseSharing(tx: Tx | Db, person: number, sharing: Sharing): Promise<void> {
	await tx
		.updateTable('person')
		.set({publicName: sharing.publicName ?? null, coarseM: sharing.coarseM ?? null})
		.where('id', '=', person)
		.execute();
}
