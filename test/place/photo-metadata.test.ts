import sharp from 'sharp';
import {describe, expect, test} from 'vitest';
import {readPhotoMetadata} from '../../src/place/photo-metadata.ts';

type Tags = NonNullable<Parameters<ReturnType<typeof sharp>['withExif']>[0]>;

/** The Exif block of a photo with these tags, written by libvips. */
async function blockOf(tags: Tags): Promise<Uint8Array> {
	const photo = sharp({create: {width: 8, height: 8, channels: 3, background: '#888888'}});
	const {exif} = await sharp(await photo.jpeg().withExif(tags).toBuffer()).metadata();
	return exif ?? new Uint8Array();
}

const north = {GPSLatitudeRef: 'N', GPSLatitude: '50/1 7/1 12/1'};
const west = {GPSLongitudeRef: 'W', GPSLongitude: '5/1 31/1 48/1'};

test('degrees, minutes and seconds become degrees, west of Greenwich below nought', async () => {
	// 50° 7′ 12″ is 50.12°, 5° 31′ 48″ is 5.53°: sums by hand.
	const {fix} = readPhotoMetadata(await blockOf({IFD3: {...north, ...west}}));
	expect(fix?.latitude).toBeCloseTo(50.12, 6);
	expect(fix?.longitude).toBeCloseTo(-5.53, 6);
	expect(fix?.accuracyM).toBeUndefined();
});

test('a place south of the equator lies below nought, and seconds have fractions', async () => {
	const south = {GPSLatitudeRef: 'S', GPSLatitude: '34/1 21/1 2952/100'};
	const east = {GPSLongitudeRef: 'E', GPSLongitude: '18/1 28/1 1200/100'};
	const {fix} = readPhotoMetadata(await blockOf({IFD3: {...south, ...east}}));
	expect(fix?.latitude).toBeCloseTo(-(34 + 21 / 60 + 29.52 / 3600), 6);
	expect(fix?.longitude).toBeCloseTo(18 + 28 / 60 + 12 / 3600, 6);
});

test('how far off the position may be is taken in metres where the camera says so', async () => {
	const {fix} = readPhotoMetadata(await blockOf({IFD3: {...north, ...west, GPSHPositioningError: '65/10'}}));
	expect(fix?.accuracyM).toBeCloseTo(6.5, 6);
});

test('the day is the one of the clock in the camera, also an hour before midnight', async () => {
	const taken = {DateTimeOriginal: '2026:09:26 23:30:00', OffsetTimeOriginal: '+02:00'};
	expect(readPhotoMetadata(await blockOf({IFD2: taken}))).toEqual({date: '2026-09-26'});
});

describe('no position is told by', () => {
	const cases: readonly (readonly [string, Tags])[] = [
		[
			'a camera without a fix, which writes noughts',
			{IFD3: {...north, ...west, GPSLatitude: '0/1 0/1 0/1', GPSLongitude: '0/1 0/1 0/1'}},
		],
		['a latitude alone', {IFD3: north}],
		['a latitude beyond the pole', {IFD3: {...west, GPSLatitudeRef: 'N', GPSLatitude: '99/1 0/1 0/1'}}],
		['a fraction by nought', {IFD3: {...west, GPSLatitudeRef: 'N', GPSLatitude: '50/0 7/1 12/1'}}],
		['a camera that says nothing', {IFD0: {Make: 'Made-up phone'}}],
	];
	test.each(cases)('%s', async (_what, tags) => {
		expect(readPhotoMetadata(await blockOf(tags)).fix).toBeUndefined();
	});
});

test('a block that is cut off anywhere is read as far as it goes, and never throws', async () => {
	const whole = await blockOf({IFD2: {DateTimeOriginal: '2026:09:26 10:00:00'}, IFD3: {...north, ...west}});
	for (let length = 0; length < whole.length; length++) {
		const {fix, date} = readPhotoMetadata(whole.slice(0, length));
		expect([undefined, '2026-09-26']).toContain(date);
		// Seconds that are cut off count as none.
		if (fix) expect(Math.abs(fix.latitude - 50.12)).toBeLessThan(1 / 60);
	}
});
