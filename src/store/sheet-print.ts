/** What people said of the print of their measuring sheet; they are asked once for each sheet. */
import type {Db, Tx} from './schema.ts';

/** Printed at its true size, not, or nothing to check it with. */
export type SheetPrint = 'exact' | 'wrong' | 'unsure';

/** What a person said of their sheet; nothing when they were not asked, or have a new one since. */
export async function sheetPrintOf(db: Db | Tx, person: number): Promise<SheetPrint | undefined> {
	const row = await db.selectFrom('person').select('sheetPrint').where('id', '=', person).executeTakeFirst();
	return row?.sheetPrint ?? undefined;
}

/** Notes what a person says of their sheet. */
export async function keepSheetPrint(
	tx: Tx,
	said: {readonly person: number; readonly print: SheetPrint; readonly now: number},
): Promise<void> {
	await tx
		.updateTable('person')
		.set({sheetPrint: said.print, sheetPrintAt: said.now})
		.where('id', '=', said.person)
		.execute();
}

/** A person gets a new sheet: they are asked again. */
export async function forgetSheetPrint(tx: Tx, person: number): Promise<void> {
	await tx
		.updateTable('person')
		.set({sheetPrint: null, sheetPrintAt: null})
		.where('id', '=', person)
		.execute();
}
