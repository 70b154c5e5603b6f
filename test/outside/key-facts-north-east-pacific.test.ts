/** The key of the eastern North Pacific against published sizes and descriptions, each beside its source: long by its tables. */
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {arrowsOf} from '../../src/key/arrows.ts';
import {nameSpecimen} from '../../src/key/name.ts';
import {readRegion, type Taxon} from '../../src/key/region.ts';
import {type Specimen, typicalSpecimens, walkKey} from '../../src/key/specimen.ts';
import {compileKey} from '../../src/key/states.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'north-east-pacific');
const {key, profiles} = region;
const machine = compileKey(region);

type Sizes = readonly [low: number, high: number, source: string];

// ebertdavis2007: Ebert & Davis 2007, Zootaxa 1393: 1-18; lengths from apron border to apron border.
// Widths are printed there in hundredths of the length; the millimetres are worked out from them.
const published: Readonly<Record<string, {readonly lengthMm: Sizes; readonly widthMm: Sizes}>> = {
	'bathyraja-abyssicola': {
		lengthMm: [108, 111, 'ebertdavis2007 p. 3-4'],
		widthMm: [72, 77, '67-69 % of length, ebertdavis2007 p. 3-4'],
	},
	'bathyraja-aleutica': {
		lengthMm: [120, 150, 'over 120, ebertdavis2007 p. 4-5; upper end guessed'],
		widthMm: [88, 115, '73-76 % of length, ebertdavis2007 p. 4-5; upper end guessed'],
	},
	'bathyraja-kincaidii': {
		lengthMm: [50, 66, 'ebertdavis2007 p. 5-6'],
		widthMm: [38, 60, '76-91 % of length, ebertdavis2007 p. 5-6'],
	},
	'bathyraja-microtrachys': {
		lengthMm: [79, 81, 'ebertdavis2007 p. 6-7'],
		widthMm: [50, 52, '63-64 % of length, ebertdavis2007 p. 6-7'],
	},
	// 92 and 67 of one case; the ends are what rounding to the millimetre leaves open.
	'bathyraja-spinosissima': {
		lengthMm: [91.6, 92.4, 'one case of 92, ebertdavis2007 p. 8-9'],
		widthMm: [66.6, 67.4, '73 % of length, ebertdavis2007 p. 8-9'],
	},
	'bathyraja-trachura': {
		lengthMm: [62, 78, 'ebertdavis2007 p. 9-10'],
		widthMm: [48, 76, '77-97 % of length, ebertdavis2007 p. 9-10'],
	},
	'beringraja-binoculata': {
		lengthMm: [210, 280, 'ebertdavis2007 p. 10-11'],
		widthMm: [109, 146, '52 % of length, ebertdavis2007 p. 10-11'],
	},
	'caliraja-inornata': {
		lengthMm: [68, 73, 'ten cases, ebertdavis2007 p. 11-12'],
		widthMm: [50, 56, '73-77 % of length, ebertdavis2007 p. 11-12'],
	},
	'caliraja-rhina': {
		lengthMm: [93, 130, '93-102, ebertdavis2007 p. 12-13; 130 from Puget Sound, cited there p. 13'],
		widthMm: [58, 91, '62-70 % of length, ebertdavis2007 p. 12-13'],
	},
	'caliraja-stellulata': {
		lengthMm: [91, 92, 'one mother, ebertdavis2007 p. 13-14'],
		widthMm: [60, 64, '66-70 % of length, ebertdavis2007 p. 13-14'],
	},
};

/** No size was found for these; what is known of their cases is said in the tables below. */
const withoutSizes = ['cephaloscyllium-ventriosum', 'heterodontus-francisci'];

const sized = Object.entries(published).flatMap(([id, {lengthMm, widthMm}]) => {
	const [low, high, source] = lengthMm;
	return [low, (low + high) / 2, high].map(length => [id, length, widthMm[0], source] as const);
});

test.each(sized)('a typical %s of %d by %d mm comes to its name alone (%s)', (id, lengthMm, widthMm) => {
	const {seen} = typicalSpecimens(profileOf(id)).middle;
	expect(walkKey(key, {seen, lengthMm, widthMm}).leaves).toEqual([id]);
});

test.each(sized)(
	'a typical %s of %d by %d mm is said by name or in a shortlist (%s)',
	(id, lengthMm, widthMm) => {
		const {seen} = typicalSpecimens(profileOf(id)).middle;
		expect(namesOf({seen, lengthMm, widthMm})).toContain(id);
	},
);

test.each(Object.entries(published))(
	'the profile of %s holds the published sizes',
	(id, {lengthMm, widthMm}) => {
		const profile = profileOf(id);
		expect(profile.lengthMm?.range).toEqual([lengthMm[0], lengthMm[1]]);
		expect(profile.widthMm?.range).toEqual([widthMm[0], widthMm[1]]);
	},
);

test.each(withoutSizes)('the profile of %s gives no size, since none was found', id => {
	expect(profileOf(id).lengthMm).toBeUndefined();
	expect(profileOf(id).widthMm).toBeUndefined();
});

test('each kind of the region stands in the table of published sizes or among those without', () => {
	expect(Object.keys(profiles.taxa).sort()).toEqual([...Object.keys(published), ...withoutSizes].sort());
});

const flat = {twist: 'flat'};
const skate = {twist: 'flat', corners: 'hooks'};

// Each from the description on the page named.
const cases: readonly (readonly [what: string, specimen: Specimen, expected: readonly string[]])[] = [
	// From memory: spiral flanges, neither horns nor tendrils; no size was found, so any will do.
	...[undefined, 60, 92, 130, 200].map(
		lengthMm =>
			[
				`twisted like a screw, of length ${lengthMm ?? 'unknown'}`,
				{seen: {twist: 'screw'}, ...(lengthMm === undefined ? {} : {lengthMm})},
				['heterodontus-francisci'],
			] as const,
	),
	// grover1974, abstract: strings of up to 2 m in one population; no size was found.
	...[undefined, 60, 92, 130, 200].map(
		lengthMm =>
			[
				`flat, with strings longer than two cases, of length ${lengthMm ?? 'unknown'}`,
				{
					seen: {...flat, corners: 'strings', 'string-length': 'twice'},
					...(lengthMm === undefined ? {} : {lengthMm}),
				},
				['cephaloscyllium-ventriosum'],
			] as const,
	),
	// grover1974, abstract: no string over 2 cm in another population; all ten skates have keels
	// (ebertdavis2007 p. 3-14).
	[
		'flat, with whole short stubs and no keel',
		{seen: {...flat, corners: 'stubs', keel: 'none'}},
		['cephaloscyllium-ventriosum'],
	],
	// ebertdavis2007 p. 3-4 and abstract: rasp-like, narrow keel, the only groove of the region.
	[
		'narrow-keeled with a groove, 108 mm',
		{seen: {...skate, keel: 'narrow', groove: 'groove'}, lengthMm: 108},
		['bathyraja-abyssicola'],
	],
	// ebertdavis2007 p. 4-5: keel 6-7 % of the width, prickles, over 120.
	...[121, 135, 150].map(
		lengthMm =>
			[
				`narrow-keeled with prickles and no groove, ${lengthMm} mm`,
				{seen: {...skate, keel: 'narrow', groove: 'none', feel: 'rough'}, lengthMm},
				['bathyraja-aleutica'],
			] as const,
	),
	// ebertdavis2007 p. 5-6: keel 14-19 %, fibres along the keel, longest horn about the case's length.
	...[50, 58, 66].map(
		lengthMm =>
			[
				`broad-keeled, long-horned, finely lined, ${lengthMm} mm`,
				{seen: {...skate, keel: 'broad', 'horn-length': 'long', lines: 'fine'}, lengthMm},
				['bathyraja-kincaidii'],
			] as const,
	),
	// ebertdavis2007 p. 6-7: keel under 5 %, very rough; the order of its horns is not used (suspect).
	[
		'narrow-keeled and very rough, 80 mm',
		{seen: {...skate, keel: 'narrow', feel: 'rough'}, lengthMm: 80},
		['bathyraja-microtrachys'],
	],
	// ebertdavis2007 p. 8-9: very narrow keel, no fibres on it, plush on both faces.
	[
		'narrow-keeled, without hairs on the sides, furry alike on both faces, 92 mm',
		{
			seen: {...skate, keel: 'narrow', 'rim-fibres': 'none', underside: 'alike'},
			lengthMm: 92,
		},
		['bathyraja-spinosissima'],
	],
	// ebertdavis2007 p. 9-10: keel 15-20 %, strong lines, back horns 0.8-1.4 times the case.
	...[62, 70, 78].map(
		lengthMm =>
			[
				`broad-keeled, long-horned, strongly lined, ${lengthMm} mm`,
				{seen: {...skate, keel: 'broad', 'horn-length': 'long', lines: 'strong'}, lengthMm},
				['bathyraja-trachura'],
			] as const,
	),
	// ebertdavis2007 p. 10-11: 210-280, by another remark up to over 300.
	...[210, 245, 280, 305].map(
		lengthMm => [`horned, ${lengthMm} mm`, {seen: skate, lengthMm}, ['beringraja-binoculata']] as const,
	),
	// ebertdavis2007 p. 10-11: aprons fray, and two ridges are found in no other case of the region.
	[
		'broad-keeled, two ridges, 150 mm',
		{seen: {...skate, keel: 'broad', ridges: 'two'}, lengthMm: 150},
		['beringraja-binoculata'],
	],
	// ebertdavis2007 p. 11-12: keel 17-25 %, no fibres, horns up to about half the case.
	...[68, 70, 73].map(
		lengthMm =>
			[
				`broad-keeled, short-horned, without hairs, ${lengthMm} mm`,
				{seen: {...skate, keel: 'broad', 'horn-length': 'short', 'rim-fibres': 'none'}, lengthMm},
				['caliraja-inornata'],
			] as const,
	),
	// ebertdavis2007 p. 12-13: keel 13-19 %, fibres from about half way along it.
	...[93, 98, 102].map(
		lengthMm =>
			[
				`broad-keeled, hairs on a part of the side, ${lengthMm} mm`,
				{seen: {...skate, keel: 'broad', 'rim-fibres': 'part'}, lengthMm},
				['caliraja-rhina'],
			] as const,
	),
	// The older cases of Puget Sound, in ebertdavis2007 p. 13.
	[
		'broad-keeled, no ridges, 130 mm',
		{seen: {...skate, keel: 'broad', ridges: 'none'}, lengthMm: 130},
		['caliraja-rhina'],
	],
	// ebertdavis2007 p. 13-14: narrow keel (all that is used of it), fibres along its whole length.
	[
		'narrow-keeled, hairs along the whole side, 91 mm',
		{seen: {...skate, keel: 'narrow', 'rim-fibres': 'whole'}, lengthMm: 91},
		['caliraja-stellulata'],
	],
	// The same with its fibres rubbed off: woolly above, thinner below.
	[
		'narrow-keeled, bare sides, smoother below, 92 mm',
		{seen: {...skate, keel: 'narrow', 'rim-fibres': 'none', underside: 'smoother'}, lengthMm: 92},
		['caliraja-stellulata'],
	],
	// ebertdavis2007 p. 5-6, 11-12: horns lost and keel worn, the length is what is left.
	[
		'without keel, smooth, finely lined, 63 mm, horns whole',
		{seen: {...skate, keel: 'none', feel: 'smooth', lines: 'fine'}, lengthMm: 63},
		['bathyraja-kincaidii'],
	],
	// Horns gone: whether they were strings cannot be told (grover1974, abstract), so the swell shark stays open.
	[
		'flat, horns lost, broad-keeled, hairs on a part of the side, 98 mm',
		{seen: {...flat, keel: 'broad', 'rim-fibres': 'part'}, lengthMm: 98, lost: ['horns']},
		['caliraja-rhina', 'cephaloscyllium-ventriosum'],
	],
];

test.each(cases)('a case that is %s comes to the names its description gives', (_, specimen, expected) => {
	expect([...walkKey(key, specimen).leaves].sort()).toEqual([...expected].sort());
});

test.each(cases)(
	'a case that is %s is said by those names, alone or in a shortlist',
	(_, specimen, expected) => {
		const names = namesOf(specimen);
		expect(expected.filter(name => names.includes(name))).not.toEqual([]);
	},
);

// From memory and grover1974: nothing else of the region is a screw or has such strings.
const unlikeSkates = cases.filter(
	([
		,
		{
			seen: {twist, 'string-length': strings},
		},
	]) => twist === 'screw' || strings === 'twice',
);

test.each(unlikeSkates)(
	'a case that is %s is said by one name, whatever its length',
	(_, specimen, expected) => {
		expect(namesOf(specimen)).toEqual(expected);
	},
);

// grover1974, abstract: the lack of strings is not always damage; whether they have keels was not found.
test.each(['broad', 'narrow', 'none'])('stubs with a keel that is %s keep the swell shark open', keel => {
	const seen = {...flat, corners: 'stubs', keel, feel: 'smooth', 'rim-fibres': 'none', underside: 'alike'};
	for (const lengthMm of [95, 120, 150]) {
		expect(namesOf({seen, lengthMm})).toContain('cephaloscyllium-ventriosum');
	}
});

// Longnose and Pacific starry skate, ebertdavis2007 p. 12-14: keel and fibres against each other.
test.each([
	['broad', 'whole'],
	['narrow', 'part'],
])('a woolly case of 95 mm with a %s keel and hairs on the %s of it may be either of two', (keel, fibres) => {
	const names = namesOf({seen: {...skate, keel, 'rim-fibres': fibres}, lengthMm: 95});
	expect(names).toEqual(expect.arrayContaining(['caliraja-rhina', 'caliraja-stellulata']));
});

test('a specimen of which nothing can be told comes to every kind of the region', () => {
	const {leaves, looked} = walkKey(key, {seen: {}, lost: ['horns', 'sides', 'surface', 'aprons']});
	expect([...leaves].sort()).toEqual(Object.keys(profiles.taxa).sort());
	expect(looked).toEqual(['twist']);
});

test('the sharks come first: screw and strings are asked about before anything of the skates', () => {
	const looks = [{twist: 'screw'}, {...flat, corners: 'strings', 'string-length': 'twice'}].map(
		seen => walkKey(key, {seen}).looked,
	);
	expect(looks).toEqual([['twist'], ['twist', 'corners', 'string-length']]);
});

test('no way through the key looks at more than six characters', () => {
	expect(mostLooks(key.begins)).toBeLessThanOrEqual(6);
});

test('typical specimens are named after five looks or fewer, and four on average', () => {
	const counts = Object.keys(profiles.taxa).map(
		id => walkKey(key, typicalSpecimens(profileOf(id)).middle).looked.length,
	);
	expect(Math.max(...counts)).toBeLessThanOrEqual(5);
	expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThanOrEqual(4);
});

// Places on the shore, to a tenth of a degree: common practice, from memory.
const shores: readonly (readonly [place: string, longitude: number, latitude: number, area: string])[] = [
	['Nome', -165.4, 64.5, 'bering-and-aleutians'],
	['Unalaska', -166.5, 53.9, 'bering-and-aleutians'],
	['Bristol Bay', -157.1, 58.7, 'bering-and-aleutians'],
	['Kodiak', -152.4, 57.8, 'gulf-of-alaska'],
	['Homer', -151.5, 59.6, 'gulf-of-alaska'],
	['Sitka', -135.3, 57.1, 'gulf-of-alaska'],
	['Ketchikan', -131.6, 55.3, 'gulf-of-alaska'],
	['Masset', -132.1, 54, 'canada-to-oregon'],
	['Tofino', -125.9, 49.2, 'canada-to-oregon'],
	['Seattle', -122.4, 47.6, 'canada-to-oregon'],
	['Newport, Oregon', -124.1, 44.6, 'canada-to-oregon'],
	['Crescent City', -124.2, 41.7, 'northern-california'],
	['San Francisco', -122.5, 37.8, 'northern-california'],
	['Monterey', -121.9, 36.6, 'northern-california'],
	['Morro Bay', -120.9, 35.4, 'northern-california'],
	['Santa Barbara', -119.7, 34.4, 'southern-california'],
	['Santa Monica', -118.5, 34, 'southern-california'],
	['San Diego', -117.3, 32.7, 'southern-california'],
];

test.each(shores)(
	'the shore at %s (%d, %d) lies in %s and in no other area',
	(_, longitude, latitude, area) => {
		const holding = Object.entries(key.areas).filter(([, {ring}]) => isInside(ring, [longitude, latitude]));
		expect(holding.map(([id]) => id)).toEqual([area]);
	},
);

// ebertdavis2007 p. 4-5 (Bering Sea to northern California), 5-6 (Gulf of Alaska to California),
// 11-12 (California); of the others no coast is told in the descriptions read.
test('the usual coasts are those of the descriptions, and every one is an area of the key', () => {
	const usual = Object.entries(profiles.taxa).flatMap(([id, {coast}]) =>
		coast ? [[id, coast.usual] as const] : [],
	);
	expect(Object.fromEntries(usual)).toEqual({
		'bathyraja-aleutica': [
			'bering-and-aleutians',
			'gulf-of-alaska',
			'canada-to-oregon',
			'northern-california',
		],
		'bathyraja-kincaidii': [
			'gulf-of-alaska',
			'canada-to-oregon',
			'northern-california',
			'southern-california',
		],
		'caliraja-inornata': ['northern-california', 'southern-california'],
	});
	const areas = Object.keys(key.areas);
	expect(usual.flatMap(([, names]) => names.filter(name => !areas.includes(name)))).toEqual([]);
});

function namesOf({seen, lengthMm, widthMm, lost = []}: Specimen): readonly string[] {
	const exact = (mm: number | undefined) =>
		mm === undefined ? undefined : ({kind: 'exact', mm, uncertaintyMm: 1} as const);
	const specimen = {seen, length: exact(lengthMm), width: exact(widthMm), lost};
	return nameSpecimen(region, machine, specimen).conclusion.names.map(({taxon}) => taxon);
}

function profileOf(id: string): Taxon {
	const profile = profiles.taxa[id];
	if (!profile) throw new Error(`Expected a profile of "${id}" in north-east-pacific/profiles.yaml`);
	return profile;
}

function mostLooks(id: string): number {
	const question = key.questions[id];
	if (!question) return 0;
	const beyond = arrowsOf(id, question).map(({leads}) => mostLooks(leads));
	return Math.max(...beyond) + ('look' in question ? 1 : 0);
}

/** Whether a point lies in a ring, by the number of sides east of it. */
function isInside(
	ring: readonly (readonly [number, number])[],
	[longitude, latitude]: readonly [number, number],
): boolean {
	const crossed = ring.filter(([x, y], index) => {
		const [nextX, nextY] = ring[(index + 1) % ring.length] ?? [x, y];
		return y > latitude !== nextY > latitude && longitude < x + ((nextX - x) * (latitude - y)) / (nextY - y);
	});
	return crossed.length % 2 === 1;
}
