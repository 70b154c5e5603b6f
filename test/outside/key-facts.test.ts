/** The key of the British Isles against published sizes and descriptions, each beside its source: long by its tables. */
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {arrowsOf} from '../../src/key/arrows.ts';
import {nameSpecimen} from '../../src/key/name.ts';
import {readRegion, type Taxon} from '../../src/key/region.ts';
import {type Specimen, typicalSpecimens, walkKey} from '../../src/key/specimen.ts';
import {compileKey} from '../../src/key/states.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const {key, profiles} = region;

type Sizes = readonly [low: number, middle: number | undefined, high: number, source: string];

// gordon2016: Gordon, Hood & Ellis 2016, Zootaxa 4150(3): 255-280. "Envelope": the published figure
// is flagged suspect and other authors are used, as cited in gordon2016 unless a source is named.
const published: Readonly<Record<string, {readonly lengthMm: Sizes; readonly widthMm: Sizes}>> = {
	'amblyraja-radiata': {
		lengthMm: [
			42,
			48,
			66,
			'Wheeler 1969 for the ends, Templeman 1982 for 48 (North Sea), in gordon2016 p. 259, 264',
		],
		widthMm: [
			25,
			34,
			53,
			'Wheeler 1969 for the ends, Templeman 1982 for 34 (North Sea), in gordon2016 p. 259, 264',
		],
	},
	'dipturus-batis': {
		lengthMm: [129, 139.7, 150, 'gordon2016 p. 260, 264'],
		widthMm: [68, 73.8, 80, 'gordon2016 p. 260, 264'],
	},
	'dipturus-intermedius': {
		lengthMm: [130, 201.4, 235, 'gordon2016 p. 261, 264'],
		widthMm: [100, 121.3, 144, 'gordon2016 p. 261, 264'],
	},
	'leucoraja-naevus': {
		lengthMm: [
			47,
			63.4,
			70,
			'envelope: Maia 2015 mean - 2 sd, Clark 1922 mean, Wheeler 1969, in gordon2016 p. 265',
		],
		widthMm: [
			28,
			36.8,
			40,
			'envelope: Clark 1922 mean, ends judged around it and 33 of Maia 2015, in gordon2016 p. 265',
		],
	},
	'raja-brachyura': {
		lengthMm: [82, 108.6, 132.2, 'gordon2016 p. 263, 265'],
		widthMm: [
			60,
			78.5,
			90,
			'envelope: Maia 2015 mean - 2 sd, Clark 1922 mean, Wheeler 1969, in gordon2016 p. 265',
		],
	},
	'raja-clavata': {
		lengthMm: [
			55,
			74.9,
			90,
			'envelope: Maia 2015 mean - 2 sd, Clark 1922 mean and maximum, in gordon2016 p. 265',
		],
		widthMm: [
			38,
			57.1,
			70,
			'envelope: Maia 2015 mean - 2 sd, Clark 1922 mean, Wheeler 1969, in gordon2016 p. 265',
		],
	},
	'raja-microocellata': {
		lengthMm: [70, 81.2, 94.9, 'gordon2016 p. 269'],
		widthMm: [41, undefined, 63, 'envelope: FishBase species summary'],
	},
	'raja-montagui': {
		lengthMm: [60, undefined, 77, 'envelope: Stehmann & Burkel 1984, 64-77, small cases allowed for'],
		widthMm: [35, undefined, 46, 'envelope: Stehmann & Burkel 1984, 37-46, small cases allowed for'],
	},
	'raja-undulata': {
		lengthMm: [71.9, 80.4, 89.4, 'gordon2016 p. 270'],
		widthMm: [40, 50, 53, 'envelope: Stehmann & Burkel 1984, about 50; ends judged'],
	},
	'rostroraja-alba': {
		lengthMm: [127.8, 148.1, 190, 'gordon2016 p. 271, five cases'],
		widthMm: [104.3, 126.7, 145, 'gordon2016 p. 271, five cases'],
	},
	'galeus-melastomus': {
		lengthMm: [
			55,
			64,
			65,
			'envelope: gordon2016 p. 271-272 without the case of 33.6, lower end judged; Lacourt 1979 for 64',
		],
		widthMm: [17.1, 20.4, 23, 'gordon2016 p. 271-272'],
	},
	'scyliorhinus-canicula': {
		lengthMm: [50, 60, 74, 'envelope: Lacourt 1979 for 60, maximum of gordon2016 p. 272, lower end judged'],
		widthMm: [17.8, 21.8, 31, 'gordon2016 p. 272'],
	},
	'scyliorhinus-stellaris': {
		lengthMm: [89, 106.4, 125.1, 'gordon2016 p. 272-273'],
		widthMm: [33, 40, 45, 'envelope: Lacourt 1979 and Bor 1998 for 40, in gordon2016 p. 272; ends judged'],
	},
};

const sized = Object.entries(published).flatMap(([id, {lengthMm, widthMm}]) => {
	const lengths = [lengthMm[0], lengthMm[1], lengthMm[2]].filter(size => size !== undefined);
	const widths = [widthMm[0], widthMm[1], widthMm[2]].filter(size => size !== undefined);
	return lengths.flatMap(length =>
		widths.map(width => [id, length, width, lengthMm[3], widthMm[3]] as const),
	);
});

test.each(sized)('a typical %s of %d by %d mm comes to its name alone (%s; %s)', (id, lengthMm, widthMm) => {
	const {seen} = typicalSpecimens(profileOf(id)).middle;
	expect(walkKey(key, {seen, lengthMm, widthMm}).leaves).toEqual([id]);
});

test.each(sized)(
	'a typical %s of %d by %d mm is said by name or in a shortlist (%s; %s)',
	(id, lengthMm, widthMm) => {
		const {seen} = typicalSpecimens(profileOf(id)).middle;
		const exact = (mm: number) => ({kind: 'exact', mm, uncertaintyMm: 1}) as const;
		const specimen = {seen, length: exact(lengthMm), width: exact(widthMm), lost: []};
		const {names} = nameSpecimen(region, compileKey(region), specimen).conclusion;
		expect(names.map(({taxon}) => taxon)).toContain(id);
	},
);

test.each(Object.entries(published))(
	'the profile of %s holds the published sizes',
	(id, {lengthMm, widthMm}) => {
		const profile = profileOf(id);
		expect(profile.lengthMm?.range).toEqual([lengthMm[0], lengthMm[2]]);
		expect(profile.widthMm?.range).toEqual([widthMm[0], widthMm[2]]);
	},
);

test('each kind of the region stands in the table of published sizes', () => {
	expect(Object.keys(profiles.taxa).sort()).toEqual(Object.keys(published).sort());
});

// Common practice unless a source is named: what a practised recorder would call these.
const cases: readonly (readonly [what: string, specimen: Specimen, expected: readonly string[]])[] = [
	...[50, 60, 70].map(
		lengthMm =>
			[
				`slim, with curly strings, ${lengthMm} mm`,
				{seen: {outline: 'slim', corners: 'strings'}, lengthMm},
				['scyliorhinus-canicula'],
			] as const,
	),
	...[80, 85, 90, 100].map(
		lengthMm =>
			[
				`slim, with curly strings, ${lengthMm} mm`,
				{seen: {outline: 'slim', corners: 'strings'}, lengthMm},
				['scyliorhinus-stellaris'],
			] as const,
	),
	...[60, 65, 70].map(
		lengthMm =>
			[
				`keeled, straight-sided, smooth, ${lengthMm} mm`,
				{seen: {outline: 'broad', keel: 'blade', taper: 'even', net: 'lines'}, lengthMm},
				['raja-clavata'],
			] as const,
	),
	...[70, 75, 80].map(
		lengthMm =>
			[
				`unkeeled, fibres on the sides, both back horns lost, ${lengthMm} mm`,
				{seen: {outline: 'broad', keel: 'none', edge: 'rough'}, lengthMm, lost: ['horns']},
				['raja-undulata'],
			] as const,
	),
	// gordon2016 p. 258-260: keels of starry skate break off, the net stays.
	[
		'netted, 50 mm, keels broken off',
		{seen: {outline: 'broad', net: 'net'}, lengthMm: 50, lost: ['sides']},
		['amblyraja-radiata'],
	],
	// gordon2016 p. 261-262: the coat wears off; width against white skate, the aprons tell.
	[
		'bare, 200 by 121 mm, deep flaps',
		{seen: {outline: 'broad', coat: 'bare', flaps: 'deep'}, lengthMm: 200, widthMm: 121},
		['dipturus-intermedius'],
	],
	// gordon2016 p. 263-268: blonde rays begin at 82 mm, thornbacks end at 90.
	[
		'keeled, 85 mm, deep flaps',
		{seen: {outline: 'broad', keel: 'blade', taper: 'even', flaps: 'deep'}, lengthMm: 85},
		['raja-brachyura'],
	],
	[
		'keeled, 85 mm, narrow flaps',
		{seen: {outline: 'broad', keel: 'blade', taper: 'even', flaps: 'narrow'}, lengthMm: 85},
		['raja-clavata'],
	],
	[
		'bare, 140 by 78 mm',
		{seen: {outline: 'broad', coat: 'bare'}, lengthMm: 140, widthMm: 78},
		['raja-brachyura'],
	],
	// gordon2016 p. 269: a worn keel makes small-eyed and undulate ray look alike.
	[
		'unkeeled, clean, narrowing, 82 mm',
		{seen: {outline: 'broad', keel: 'none', edge: 'clean', taper: 'narrowing'}, lengthMm: 82},
		['raja-microocellata'],
	],
	[
		'taken for slim, with stiff points, unkeeled, rough-edged, 80 mm',
		{seen: {outline: 'slim', corners: 'hooks', keel: 'none', edge: 'rough'}, lengthMm: 80},
		['raja-undulata'],
	],
	// gordon2016 p. 272: without the corners the two small slim cases cannot be told apart.
	[
		'slim, 60 mm, corners lost',
		{seen: {outline: 'slim'}, lengthMm: 60, lost: ['horns']},
		['galeus-melastomus', 'scyliorhinus-canicula'],
	],
	// gordon2016 p. 260-262: width splits blue and flapper skate; without one both stay open.
	[
		'bark-coated, 140 mm, no width',
		{seen: {outline: 'broad', coat: 'bark'}, lengthMm: 140},
		['dipturus-batis', 'dipturus-intermedius'],
	],
];

test.each(cases)('a case that is %s comes to the names a recorder would give', (_, specimen, expected) => {
	expect([...walkKey(key, specimen).leaves].sort()).toEqual([...expected].sort());
});

test.each(cases)(
	'a case that is %s is said by those names, alone or in a shortlist',
	(_, specimen, expected) => {
		const {seen, lengthMm, widthMm, lost = []} = specimen;
		const exact = (mm: number | undefined) =>
			mm === undefined ? undefined : ({kind: 'exact', mm, uncertaintyMm: 1} as const);
		const named = nameSpecimen(region, compileKey(region), {
			seen,
			length: exact(lengthMm),
			width: exact(widthMm),
			lost,
		});
		const names = named.conclusion.names.map(({taxon}) => taxon);
		expect(expected.filter(name => names.includes(name))).not.toEqual([]);
	},
);

test('a specimen of which nothing can be told comes to every kind of the region', () => {
	const {leaves, looked} = walkKey(key, {seen: {}, lost: ['horns', 'sides', 'surface', 'aprons']});
	expect([...leaves].sort()).toEqual(Object.keys(profiles.taxa).sort());
	expect([...looked].sort()).toEqual(['outline', 'taper']);
});

test('no way through the key looks at more than six characters', () => {
	expect(mostLooks(key.begins)).toBeLessThanOrEqual(6);
});

test('typical specimens of published mean size are named after three looks or fewer on average', () => {
	const counts = Object.keys(profiles.taxa).map(
		id => walkKey(key, typicalSpecimens(profileOf(id)).middle).looked.length,
	);
	expect(Math.max(...counts)).toBeLessThanOrEqual(4);
	expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThanOrEqual(3);
});

function profileOf(id: string): Taxon {
	const profile = profiles.taxa[id];
	if (!profile) throw new Error(`Expected a profile of "${id}" in british-isles/profiles.yaml`);
	return profile;
}

function mostLooks(id: string): number {
	const question = key.questions[id];
	if (!question) return 0;
	const beyond = arrowsOf(id, question).map(({leads}) => mostLooks(leads));
	return Math.max(...beyond) + ('look' in question ? 1 : 0);
}
