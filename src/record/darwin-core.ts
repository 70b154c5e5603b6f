/** A draft told in Darwin Core terms, for whoever keeps the records. */
import type {Region} from '../key/region.ts';
import type {Draft} from './draft.ts';
import {type Measurement, measurementsOf} from './measurements.ts';
import {type PlaceTerms, placeTerms} from './place-terms.ts';
import {type NameTerms, nameTerms} from './scientific-name.ts';

/** A picture: `type` as in Darwin Core, `identifier` and `format` as in DCMI Metadata Terms. */
export type Picture = {
	readonly type: 'StillImage';
	readonly format: 'image/jpeg';
	/** RFC 6920 name of the bytes, `ni:///sha-256;…`. */
	readonly identifier: string;
};

/** What every message about a record holds, also the one that takes it back. */
type Identity = {
	readonly occurrenceID: string;
	readonly modified: string;
	readonly informationWithheld: string;
};

/** A record in Darwin Core terms; `measurements` and `multimedia` are the rows of the two extensions. */
export type OpenRecord = Identity &
	PlaceTerms &
	NameTerms & {
		readonly basisOfRecord: 'HumanObservation';
		readonly occurrenceStatus: 'detected' | 'present';
		readonly organismQuantity?: number | undefined;
		readonly organismQuantityType?: 'egg cases' | undefined;
		readonly vitality: 'notAssessed' | 'uncertain';
		readonly eventDate: string;
		readonly habitat?: 'strandline' | undefined;
		readonly occurrenceRemarks: string;
		readonly kingdom: 'Animalia';
		readonly nomenclaturalCode: 'ICZN';
		readonly dateIdentified?: string | undefined;
		readonly identificationVerificationStatus: 'unverified';
		readonly identificationRemarks: string;
		/** JSON text: ranking, states seen, parts lost. */
		readonly dynamicProperties: string;
		readonly measurements: readonly Measurement[];
		readonly multimedia: readonly Picture[];
	};

/** A record in Darwin Core terms, or what stays of one that was taken back. */
export type Occurrence = Identity | OpenRecord;

/** When the record was first kept and last changed (UTC ms), and how the reader wants it told. */
export type Telling = {
	readonly recordedAt: number;
	readonly modifiedAt: number;
	readonly withdrawn?: boolean;
	/** The word since the revision of 2026-05-26 is `detected`; some readers still want `present`. */
	readonly occurrenceStatus?: 'detected' | 'present';
};

const mostPictures = 24;
const longestNote = 1000;

/**
 * The record of a draft, under 20 kB as JSON. A withdrawn one holds its identity and nothing of the find. The name is
 * the lowest rank that is sure (see `nameTerms`). Licence, finder and country are left out: none is agreed or known.
 */
export function occurrenceFrom(draft: Draft, region: Region, extra: Telling): Occurrence {
	const open = openRecord(draft, region, extra);
	if (!extra.withdrawn) return open;
	return {
		occurrenceID: open.occurrenceID,
		modified: open.modified,
		informationWithheld: 'withdrawn by its finder; earlier copies are to be erased',
	};
}

/** The record of a draft that is not withdrawn; throws an Error for another region than the draft's own. */
export function openRecord(draft: Draft, region: Region, extra: Telling): OpenRecord {
	if (region.id !== draft.region.id)
		throw new Error(`Expected region "${draft.region.id}" for draft ${draft.id}; got "${region.id}"`);
	const isCase = draft.kind === 'egg-case';
	return {
		occurrenceID: `urn:uuid:${draft.id}`,
		modified: new Date(extra.modifiedAt).toISOString(),
		basisOfRecord: 'HumanObservation',
		occurrenceStatus: extra.occurrenceStatus ?? 'detected',
		organismQuantity: draft.count,
		organismQuantityType: draft.count === undefined ? undefined : 'egg cases',
		vitality: isCase ? 'notAssessed' : 'uncertain',
		eventDate: draft.foundOn,
		// A case left alive may hang on weed, lie in a pool or on the sand: nobody was asked.
		habitat: isCase ? 'strandline' : undefined,
		occurrenceRemarks: remarks(draft),
		...placeTerms(draft.place),
		kingdom: 'Animalia',
		nomenclaturalCode: 'ICZN',
		...nameTerms(draft, region),
		dateIdentified: isCase ? new Date(extra.recordedAt).toISOString() : undefined,
		identificationVerificationStatus: 'unverified',
		identificationRemarks: isCase
			? `from the finder's answers to the key "${draft.region.id}", version ${draft.region.version}`
			: 'no question about its kind was asked',
		informationWithheld: 'name of the finder',
		dynamicProperties: propertiesOf(draft),
		measurements: isCase ? measurementsOf(draft) : [],
		multimedia: picturesOf(draft),
	};
}

/** The RFC 6920 name of bytes with this SHA-256, given in hex. */
export function hashName(sha256: string): string {
	return `ni:///sha-256;${Buffer.from(sha256, 'hex').toString('base64url')}`;
}

function remarks(draft: Draft): string {
	return [
		draft.kind === 'egg-case'
			? 'Empty egg cases found lying loose; where they were laid is unknown.'
			: 'Left where it was, since it may be alive or attached; not soaked, not measured.',
		...(draft.doubt ? ['The finder could not say for sure that it is an egg case.'] : []),
		...(draft.alike === undefined
			? []
			: ['Its looks were taken over from a like case of the same bowl; its length was measured by itself.']),
		...(draft.note === undefined ? [] : [`Note of the finder: ${shortened(draft.note)}`]),
	].join(' ');
}

// By code points, so that no emoji is cut in half.
function shortened(note: string): string {
	const letters = Array.from(note);
	return letters.length > longestNote ? `${letters.slice(0, longestNote).join('')}…` : note;
}

function propertiesOf({ranking, seen, lost, leaves, aprons, unusual}: Draft): string {
	return JSON.stringify({
		ranking: ranking.map(({taxon, scientificName, probability}) => ({
			name: scientificName ?? taxon,
			probability,
		})),
		seen: Object.fromEntries(seen.map(({character, state}) => [character, state])),
		lost,
		aprons,
		leaves,
		unusual,
	});
}

function picturesOf(draft: Draft): readonly Picture[] {
	return draft.photos
		.flatMap(({hash}) => (hash === undefined ? [] : [hash]))
		.slice(0, mostPictures)
		.map(hash => ({type: 'StillImage', format: 'image/jpeg', identifier: hashName(hash)}));
}
