/** Where and when a photo was taken, as its camera wrote it into the file. */
import readExif, {type Exif} from 'exif-reader';
import type {Fix} from './place.ts';

/** The position and the day of a photo, each where the camera wrote one down. */
export type PhotoMetadata = {
	readonly fix?: Fix;
	/** The local day by the clock of the camera, as an ISO date. */
	readonly date?: string;
};

/** Reads a block of Exif metadata; what is not there, damaged or no place on earth is left out. */
export function readPhotoMetadata(block: Uint8Array): PhotoMetadata {
	const exif = parsed(block);
	const fix = exif && fixIn(exif.GPSInfo ?? {});
	const date = exif && dayOf(exif.Photo?.DateTimeOriginal);
	return {...(fix ? {fix} : {}), ...(date === undefined ? {} : {date})};
}

function parsed(block: Uint8Array): Exif | undefined {
	try {
		return readExif(Buffer.from(block));
	} catch {
		// Cut off or no Exif at all: the photo tells nothing, as most do.
		return undefined;
	}
}

function fixIn(gps: NonNullable<Exif['GPSInfo']>): Fix | undefined {
	const latitude = degreesOf(gps.GPSLatitude, {side: gps.GPSLatitudeRef, sides: ['N', 'S']});
	const longitude = degreesOf(gps.GPSLongitude, {side: gps.GPSLongitudeRef, sides: ['E', 'W']});
	if (latitude === undefined || longitude === undefined) return undefined;
	if (Math.abs(latitude) > 90 || Math.abs(longitude) > 180) return undefined;
	// Cameras without a fix write noughts.
	if (latitude === 0 && longitude === 0) return undefined;
	const accuracyM = gps.GPSHPositioningError;
	const isKnown = typeof accuracyM === 'number' && Number.isFinite(accuracyM) && accuracyM > 0;
	return {latitude, longitude, ...(isKnown ? {accuracyM} : {})};
}

/** Degrees, minutes and seconds as degrees, below nought on the second side. */
function degreesOf(
	parts: readonly number[] | undefined,
	{side, sides}: {readonly side: string | undefined; readonly sides: readonly [string, string]},
): number | undefined {
	const [degrees, minutes, seconds] = parts ?? [];
	if (degrees === undefined || minutes === undefined || seconds === undefined) return undefined;
	const value = degrees + minutes / 60 + seconds / 3600;
	if (!Number.isFinite(value) || side === undefined || !sides.includes(side)) return undefined;
	return side === sides[1] ? -value : value;
}

/** The reader gives the camera's wall clock as if it were UTC. */
function dayOf(taken: Date | undefined): string | undefined {
	return taken instanceof Date && Number.isFinite(taken.getTime())
		? taken.toISOString().slice(0, 10)
		: undefined;
}
