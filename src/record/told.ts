/** A saved record as an export tells it: rows for every table, and what counts and filters need. */
import type {Region} from '../key/region.ts';
import {coarseSquare} from '../place/coarse-square.ts';
import type {Place} from '../place/place.ts';
import {type HiddenPlace, hiddenPlace} from './coarse-place.ts';
import {hashName, openRecord} from './darwin-core.ts';
import {type RecordForExport, type Status, statusOf} from './for-export.ts';
import {type Identification, identificationsOf, namingThatCounts} from './identifications.ts';
import type {Measurement} from './measurements.ts';
import {type Hiding, hidingOf} from './protection.ts';
import type {CoreRow} from './tables.ts';

/** A photo of a record: the SHA-256 of its bytes in hex, and its row without the link. */
export type ToldPicture = {
	readonly hash: string;
	readonly row: {
		readonly type: 'StillImage';
		readonly format: 'image/jpeg';
		readonly creator: string | undefined;
		readonly license: string;
		readonly rightsHolder: string | undefined;
	};
};

/** A record ready to be written. */
export type ToldRecord = {
	readonly id: string;
	readonly core: CoreRow;
	readonly measurements: readonly Measurement[];
	readonly identifications: readonly Identification[];
	readonly pictures: readonly ToldPicture[];
	readonly status: Status;
	/** Day of finding, ISO 8601. */
	readonly day: string;
	readonly cases: number | undefined;
	/** The name that counts. */
	readonly name: string | undefined;
	/** The square of 10 km or more, or the name of the place where that is not hidden. */
	readonly where: string | undefined;
	/** The point as told, WGS 84 degrees. */
	readonly point: {readonly latitude: number; readonly longitude: number} | undefined;
	/** When the record or its name last changed, UTC milliseconds. */
	readonly changedAt: number;
	readonly region: Region;
};

/** How records are told: `isExact` shows every place as it is known, which is never to be published. */
export type Manner = {
	readonly isExact: boolean;
	readonly occurrenceStatus: 'detected' | 'present';
	readonly licence: string;
};

/** Tells a record; throws an Error for another region than the record's own. */
export function tellRecord(record: RecordForExport, region: Region, manner: Manner): ToldRecord {
	const hiding = manner.isExact ? undefined : hidingOf(record, region);
	const {draft, verification, earlier, publicName} = hiding ? withoutWords(record) : record;
	const hidden = hiding && hiddenPlace(draft.place, hiding);
	const changedAt = Math.max(record.changedAt, verification?.at ?? 0);
	const open = openRecord(draft, region, {
		recordedAt: record.savedAt,
		modifiedAt: changedAt,
		occurrenceStatus: manner.occurrenceStatus,
	});
	const identifications = identificationsOf(open, {draft, verification, earlier, publicName});
	const {measurements, multimedia: _, ...terms} = open;
	const core: CoreRow = {
		...terms,
		...hidden?.terms,
		...namingThatCounts(identifications.at(-1)),
		recordedBy: publicName,
		rightsHolder: publicName,
		dataGeneralizations: hidden?.dataGeneralizations,
		informationWithheld: withheldFrom(record, hiding, hidden),
	};
	const {decimalLatitude: latitude, decimalLongitude: longitude} = {...open, ...hidden?.terms};
	return {
		id: open.occurrenceID,
		core,
		measurements,
		identifications,
		// A photo may show a cliff or a hut that everybody knows.
		pictures: hiding ? [] : picturesOf(record, manner.licence),
		status: statusOf(record),
		day: draft.foundOn,
		cases: draft.count,
		name: identifications.at(-1)?.scientificName,
		where: whereOf(draft.place, hiding),
		point: latitude === undefined || longitude === undefined ? undefined : {latitude, longitude},
		changedAt,
		region,
	};
}

// Whatever people wrote may name the very spot that is hidden.
function withoutWords(record: RecordForExport): RecordForExport {
	const {draft, verification, earlier} = record;
	return {
		...record,
		draft: {...draft, note: undefined},
		verification: verification && {...verification, remarks: undefined},
		earlier: earlier?.map(one => ({...one, remarks: undefined})),
	};
}

function withheldFrom(
	{draft, publicName, verification}: RecordForExport,
	hiding: Hiding | undefined,
	hidden: HiddenPlace | undefined,
): string | undefined {
	const withheld = [
		...(publicName === undefined ? ['name of the finder'] : []),
		...(hidden?.withheld ?? []),
		...(hiding && draft.note !== undefined ? ['note of the finder'] : []),
		...(hiding && verification?.remarks !== undefined ? ['remarks of the verifier'] : []),
		...(hiding && draft.photos.length > 0 ? ['photos'] : []),
	];
	return withheld.length === 0 ? undefined : withheld.join(' | ');
}

function picturesOf({draft, publicName}: RecordForExport, licence: string): readonly ToldPicture[] {
	return draft.photos
		.flatMap(({hash}) => (hash === undefined ? [] : [hash]))
		.map(hash => ({
			hash,
			row: {
				type: 'StillImage',
				format: 'image/jpeg',
				creator: publicName,
				license: licence,
				rightsHolder: publicName,
			},
		}));
}

function whereOf(place: Place, hiding: Hiding | undefined): string | undefined {
	if (place.kind === 'named') return hiding ? undefined : place.name;
	const sideM = hiding && hiding.sideM > 10_000 ? hiding.sideM : 10_000;
	return coarseSquare({...place, sideM: undefined}, sideM)?.name;
}

/** The link of a photo: its file in the archive, or else the name of its bytes (RFC 6920). */
export function linkOf(hash: string, isInArchive: boolean): string {
	return isInArchive ? `media/${hash}.jpg` : hashName(hash);
}
