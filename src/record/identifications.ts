/** Who named a record and when: the finder with the key first, then a verifier. */
import type {OpenRecord} from './darwin-core.ts';
import type {RecordForExport, Verification} from './for-export.ts';
import type {NameTerms} from './scientific-name.ts';

/** The terms of one naming; a row of Darwin Core's Identification, less its id. */
export type Naming = Partial<Omit<NameTerms, 'scientificName' | 'taxonRank'>> & {
	/** Absent when it is no egg case. */
	readonly scientificName?: string | undefined;
	readonly taxonRank?: NameTerms['taxonRank'] | 'order' | undefined;
	readonly identifiedBy?: string | undefined;
	readonly dateIdentified?: string | undefined;
	readonly identificationVerificationStatus: 'unverified' | 'verified' | 'rejected';
	readonly identificationRemarks: string;
};

/** One row of the Identification extension. */
export type Identification = Naming & {readonly identificationID: string};

/** The terms of the naming that counts, as the core repeats them; what is no animal loses its kingdom, too. */
export type TermsThatCount = {readonly [Term in keyof Naming]?: Naming[Term] | undefined} & {
	readonly kingdom?: undefined;
	readonly nomenclaturalCode?: undefined;
};

/** All namings of a record in order; the last one counts and is repeated in the core. */
export function identificationsOf(
	open: OpenRecord,
	record: Pick<RecordForExport, 'draft' | 'publicName' | 'verification' | 'earlier'>,
): readonly [...Identification[], Identification] {
	const {draft, publicName, verification, earlier = []} = record;
	const idOf = (whose: string) => `urn:uuid:${draft.id}#${whose}`;
	const finder: Identification = {
		identificationID: idOf('named-by-finder'),
		...finderNaming(open, publicName),
	};
	if (!verification) return [finder];
	const namings = [...earlier, verification].map((one, index) => ({
		// The first keeps its id when a second one follows.
		identificationID: idOf(index === 0 ? 'named-by-verifier' : `named-by-verifier-${index + 1}`),
		...verifierNaming(finder, one),
	}));
	const last = namings.at(-1);
	return last ? [finder, ...namings.slice(0, -1), last] : [finder];
}

/** The naming that counts, with every term by name, so that nothing of an earlier one stays. */
export function namingThatCounts(last: Identification | undefined): TermsThatCount {
	return {
		scientificName: last?.scientificName,
		scientificNameAuthorship: last?.scientificNameAuthorship,
		taxonRank: last?.taxonRank,
		verbatimIdentification: last?.verbatimIdentification,
		identificationQualifier: last?.identificationQualifier,
		identifiedBy: last?.identifiedBy,
		dateIdentified: last?.dateIdentified,
		identificationVerificationStatus: last?.identificationVerificationStatus,
		identificationRemarks: last?.identificationRemarks,
		...(last?.identificationVerificationStatus === 'rejected'
			? {kingdom: undefined, nomenclaturalCode: undefined}
			: {}),
	};
}

function finderNaming(open: OpenRecord, publicName: string | undefined): Naming {
	return {
		scientificName: open.scientificName,
		scientificNameAuthorship: open.scientificNameAuthorship,
		taxonRank: open.taxonRank,
		identificationQualifier: open.identificationQualifier,
		verbatimIdentification: open.verbatimIdentification,
		// Nobody named a case that was left alive.
		identifiedBy: open.dateIdentified === undefined ? undefined : publicName,
		dateIdentified: open.dateIdentified,
		identificationVerificationStatus: 'unverified',
		identificationRemarks: open.identificationRemarks,
	};
}

const said = {
	agreed: 'a verifier agreed with the name',
	'other-name': 'a verifier gave another name',
	'higher-rank': 'a verifier named it at a higher rank',
	'not-an-egg-case': 'a verifier found that it is no egg case',
} as const;

function verifierNaming(finder: Naming, verification: Verification): Naming {
	const {outcome, by, at, remarks} = verification;
	return {
		...verifiedName(finder, verification),
		verbatimIdentification: finder.verbatimIdentification,
		identifiedBy: by,
		dateIdentified: new Date(at).toISOString(),
		identificationVerificationStatus: outcome === 'not-an-egg-case' ? 'rejected' : 'verified',
		identificationRemarks: [said[outcome], ...(remarks === undefined ? [] : [remarks])].join(': '),
	};
}

function verifiedName(finder: Naming, verification: Verification): Partial<Naming> {
	switch (verification.outcome) {
		case 'agreed':
			// The doubt was the finder's.
			return {
				scientificName: finder.scientificName,
				scientificNameAuthorship: finder.scientificNameAuthorship,
				taxonRank: finder.taxonRank,
			};
		case 'other-name':
		case 'higher-rank':
			return verification.name;
		case 'not-an-egg-case':
			return {};
		default:
			return never(verification);
	}
}

function never(value: never): never {
	throw new Error(`Expected a known outcome; got ${JSON.stringify(value)}`);
}
