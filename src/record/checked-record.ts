/** A record that a verifier looked at, as it is passed on. */
import type {Region} from '../key/region.ts';
import {type OpenRecord, openRecord, type Telling} from './darwin-core.ts';
import type {Draft} from './draft.ts';
import type {Verification} from './for-export.ts';
import {identificationsOf, type Naming, namingThatCounts, type TermsThatCount} from './identifications.ts';

/** A record whose name, or that it is no egg case, is the verifier's. */
export type CheckedRecord = Omit<OpenRecord, keyof Naming | 'kingdom' | 'nomenclaturalCode'> &
	Omit<TermsThatCount, 'kingdom' | 'nomenclaturalCode'> & {
		readonly kingdom?: 'Animalia' | undefined;
		readonly nomenclaturalCode?: 'ICZN' | undefined;
	};

/** The record of a draft with what a verifier said of it; throws an Error for another region than the draft's own. */
export function checkedRecord(
	draft: Draft,
	region: Region,
	{verification, ...telling}: Telling & {readonly verification: Verification},
): CheckedRecord {
	const open = openRecord(draft, region, telling);
	const namings = identificationsOf(open, {draft, verification, publicName: undefined});
	return {...open, ...namingThatCounts(namings.at(-1))};
}
