/** What an export is made from: a saved record, what its finder wishes, and what a verifier said. */
import type {CoarseSideM} from '../place/coarse-square.ts';
import type {Draft} from './draft.ts';

/** A name given by a verifier. */
export type VerifiedName = {
	readonly scientificName: string;
	readonly scientificNameAuthorship?: string | undefined;
	readonly taxonRank: 'species' | 'genus' | 'family' | 'order' | 'class';
};

type Look = {
	/** When the verifier decided, UTC milliseconds. */
	readonly at: number;
	/** The name the verifier chose for published records. */
	readonly by?: string | undefined;
	readonly remarks?: string | undefined;
};

/** What a verifier said of a record. */
export type Verification =
	| (Look & {readonly outcome: 'agreed' | 'not-an-egg-case'})
	| (Look & {readonly outcome: 'other-name' | 'higher-rank'; readonly name: VerifiedName});

/** A saved record on its way out; times are UTC milliseconds. */
export type RecordForExport = {
	readonly draft: Draft;
	readonly savedAt: number;
	readonly changedAt: number;
	/** The name the finder chose; never the one of their account. */
	readonly publicName?: string | undefined;
	/** The square in which the finder wants the place hidden. */
	readonly coarseM?: CoarseSideM | undefined;
	/** Absent for a record that nobody has looked at. */
	readonly verification?: Verification | undefined;
	/** What verifiers said before that, oldest first. */
	readonly earlier?: readonly Verification[] | undefined;
};

/** Every status a record can have. */
export const statuses = ['unverified', 'agreed', 'other-name', 'higher-rank', 'not-an-egg-case'] as const;

/** How far a record was checked. */
export type Status = (typeof statuses)[number];

/** The status of a record. */
export function statusOf({verification}: Pick<RecordForExport, 'verification'>): Status {
	return verification?.outcome ?? 'unverified';
}

/** The square sizes a finder may choose from; any other number is an error. */
export function coarseSideFrom(sideM: number | undefined): CoarseSideM | undefined {
	switch (sideM) {
		case undefined:
		case 1000:
		case 10_000:
		case 100_000:
			return sideM;
		default:
			throw new Error(`Expected a square of 1000, 10000 or 100000 m; got ${sideM}`);
	}
}
