/** What is at hand where parcels are made. */
import type {Region} from '../key/region.ts';
import type {Db} from '../store/schema.ts';
import type {Say} from '../text/text.ts';

/** What parcels are made with. */
export type Workshop = {
	readonly db: Db;
	readonly photoFolder: string;
	readonly now: () => number;
	/** The sentences in a language, or in the usual one. */
	readonly sayIn: (language: string | undefined) => Say;
	/** The keeper's description of the data. */
	readonly datasetFile: string;
	/** Throws an Error when there is no region of that id. */
	readonly regionOf: (id: string) => Region;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};
