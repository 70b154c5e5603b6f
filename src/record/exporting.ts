/** Saved records on their way out of the store: told, and only those that are wanted. */
import type {Region} from '../key/region.ts';
import type {Decision} from '../store/decisions.ts';
import {everySaved, type SavedRecord} from '../store/saved.ts';
import type {Db, Tx} from '../store/schema.ts';
import {type Draft, draftSchema} from './draft.ts';
import {coarseSideFrom, type RecordForExport} from './for-export.ts';
import {type Manner, type ToldRecord, tellRecord} from './told.ts';
import {verificationFrom} from './verification.ts';
import {isAround, isWanted, type Wanted} from './wanted.ts';

/** What is exported, how it is told, and where the regions of records are found. */
export type Exporting = {
	readonly wanted: Wanted;
	readonly manner: Manner;
	/** Throws an Error when there is no region of that id. */
	readonly regionOf: (id: string) => Region;
};

/** Every wanted record in the order of finds, read a page at a time, so that memory does not grow with them. */
export async function* recordsToTell(
	db: Db | Tx,
	{wanted, manner, regionOf}: Exporting,
): AsyncGenerator<ToldRecord, void, undefined> {
	for await (const saved of everySaved(db, draftSchema)) {
		const record = recordFrom(saved, regionOf);
		if (!isWanted(record, wanted)) continue;
		const told = tellRecord(record, regionOf(record.draft.region.id), manner);
		if (!wanted.around || isAround(told, wanted.around)) yield told;
	}
}

function recordFrom(saved: SavedRecord<Draft>, regionOf: Exporting['regionOf']): RecordForExport {
	const {body, savedAt, changedAt, sharing, decision, earlier = []} = saved;
	const told = (one: Decision) => verificationFrom(one, regionOf(body.region.id));
	return {
		draft: body,
		savedAt,
		changedAt,
		publicName: sharing.publicName,
		coarseM: coarseSideFrom(sharing.coarseM),
		verification: decision && told(decision),
		earlier: earlier.map(told),
	};
}
