import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type Place, readPlace} from '../../src/place/place.ts';

function placeOf(text: string): Place {
	const read = readPlace(text);
	if (read.kind !== 'place') throw new Error(`Expected a place from "${text}"; it was refused: ${read.why}`);
	return read.place;
}

test.each([
	'50.123, -5.678',
	'50.123 -5.678',
	'50.123,-5.678',
	'50.123; −5.678',
	'(50.123, -5.678)',
	'50,123 -5,678',
	'50,123, -5,678',
	'N50.123 W5.678',
	'50.123N 5.678W',
	'50.123N, 5.678W',
	'W 5.678, N 50.123',
	'50.123°N 5.678°W',
	'50.123° -5.678°',
	'50.123 degrees north, 5.678 degrees west',
	'lat 50.123 lon -5.678',
	'Latitude: 50.123, Longitude: -5.678',
	'long=-5.678 lat=50.123',
	'\u202A50.123, -5.678\u202C',
])('"%s" is read as latitude and longitude', text => {
	const found = placeOf(text);
	expect(found).toMatchObject({kind: 'spot', latitude: 50.123, longitude: -5.678, uncertaintyM: 67});
	expect(found).toMatchObject({how: 'coordinates', system: 'EPSG:4326', zone: 'Europe/London'});
});

test.each([
	'50°07\'30"N 5°32\'10"W',
	'50°07′30″N, 5°32′10″W',
	'50° 07’ 30” N 5° 32’ 10” W',
	"50°07'30''N 5°32'10''W",
	'N 50°07\'30" W 5°32\'10"',
	'50°07\'30" -5°32\'10"',
	'50 07 30 N, 5 32 10 W',
	'50 07 30 -5 32 10',
])('"%s" is read as degrees, minutes and seconds', text => {
	expect(placeOf(text)).toMatchObject({latitude: 50.125, longitude: -5.536111, uncertaintyM: 19});
});

test.each(['50 07.5 N, 5 32.1 W', "50°07.5'N 5°32.1'W", '50 07,5 N 5 32,1 W'])(
	'"%s" is read as degrees and minutes',
	text => {
		expect(placeOf(text)).toMatchObject({latitude: 50.125, longitude: -5.535, uncertaintyM: 111});
	},
);

test('a geo URI says by itself how sure it is', () => {
	// RFC 5870, section 3.4.3: `u` is the uncertainty in metres; without it, it is unknown.
	expect(placeOf('geo:50.12345,-5.54321;u=35')).toMatchObject({latitude: 50.12345, uncertaintyM: 35});
	expect(placeOf('GEO:50.12345,-5.54321,12;crs=wgs84;u=0')).toMatchObject({uncertaintyM: 10});
	expect(placeOf('geo:50.12345,-5.54321')).toMatchObject({uncertaintyM: 30});
	expect(placeOf('geo:50.123,-5.678')).toMatchObject({uncertaintyM: 67});
	// Half way round the earth is as unsure as a place can be.
	expect(placeOf(`geo:50.123,-5.678;u=${'9'.repeat(100)}`)).toMatchObject({uncertaintyM: 20_037_509});
});

test('decimal coordinates of any place come back as they were written', () => {
	const latitudes = fc.integer({min: -89_999_999, max: 89_999_999});
	const longitudes = fc.integer({min: -179_999_999, max: 179_999_999});
	fc.assert(
		fc.property(latitudes, longitudes, (north, east) => {
			const [latitude, longitude] = [(north / 1e6).toFixed(6), (east / 1e6).toFixed(6)];
			expect(placeOf(`${latitude}, ${longitude}`)).toMatchObject({
				latitude: Number(latitude) + 0,
				longitude: Number(longitude) + 0,
			});
		}),
		{numRuns: 200},
	);
});
