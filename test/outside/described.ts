/**
 * Sizes of egg cases as described, for each kind of our regions, in millimetres: long by its rows.
 *
 * The smallest, the mean and the largest of each description, ends with ends; `undefined` where the figure looks
 * wrong (its profile says why, under `notUsed`), or was not given. Left out: sizes without aprons or without keels; Greenland
 * (Jensen 1914) and the north-west Atlantic (Vladykov 1936), which no region of ours reaches; for common skate the
 * ranges that mix two species (Wheeler 1969, FishBase).
 */

/** One description: length from apron border to apron border, greatest width, and where it was printed. */
export type Described = readonly [
	lengthMm: number | undefined,
	widthMm: number | undefined,
	source: string,
	/** The one region whose cases were measured, where a kind's cases differ from coast to coast. */
	only?: string,
];

// G: Gordon, Hood & Ellis 2016, Zootaxa 4150(3): 255-280, and others as cited there. S: Stehmann & Burkel 1984, species
// accounts without page numbers. E: Ebert & Davis 2007, Zootaxa 1393: 1-18; widths worked out from shares of the length.
// Capapé: Capapé et al. 2008, abstracts of Vie et Milieu 58(1) and J. Mar. Biol. Assoc. UK.
const med = 'western-mediterranean';

/** Every description by the id of its kind. */
export const described: Readonly<Record<string, readonly Described[]>> = {
	'scyliorhinus-canicula': [
		[undefined, 17.8, 'smallest, G p. 272'],
		[undefined, 21.8, 'mean, G p. 272'],
		[undefined, 31, 'largest, G p. 272'],
		[60, 25, 'Lacourt 1979, in G p. 272'],
		[55, 23, 'Bor 1998, in G p. 272'],
		[41, 16, 'smallest, Capapé', med],
		[47.1, 18.3, 'means, Capapé', med],
		[58, 20, 'largest, Capapé', med],
	],
	'scyliorhinus-stellaris': [
		[89, undefined, 'smallest, G p. 272-273'],
		[106.4, undefined, 'mean, G p. 272-273'],
		[125.1, undefined, 'largest, G p. 272-273'],
		[100, 40, 'Lacourt 1979, in G p. 272'],
		[110, 40, 'Bor 1998, in G p. 272'],
	],
	'galeus-melastomus': [
		[undefined, 17.1, 'smallest, G p. 271-272'],
		[undefined, 20.4, 'mean, G p. 271-272'],
		[undefined, 23, 'largest, G p. 271-272'],
		[64, 20, 'Lacourt 1979, in G p. 272'],
		[36, 14, 'smallest, Capapé', med],
		[45.3, undefined, 'mean, Capapé', med],
		[50, 21, 'largest, Capapé', med],
	],
	'amblyraja-radiata': [
		[48, 34, 'Templeman 1982, North Sea, in G p. 259'],
		[42, 25, 'smallest, Clark 1926, in G p. 259'],
		[50, 40, 'smallest, Nordgaard 1917, in G p. 259-260'],
		[60, 48, 'largest, Nordgaard 1917, in G p. 259-260'],
		[66, 53, 'largest, Wheeler 1969, in G p. 264'],
		[56, 40, 'Lacourt 1979, in G p. 264'],
		[46, 34, 'Bor 1998, in G p. 264'],
	],
	'leucoraja-naevus': [
		[63.4, 36.8, 'means, Clark 1922, in G p. 265'],
		[55, 33, 'means, Maia et al. 2015, in G p. 265'],
		[60, 35, 'smallest, Wheeler 1969, in G p. 265'],
		[70, 35, 'largest, Wheeler 1969, in G p. 265'],
		[63, 37, 'largest, Desbrosses 1931, in G p. 265'],
		[60, 30, 'Le Danois 1913, in G p. 265'],
	],
	'raja-montagui': [
		[64, 37, 'smallest, S'],
		[77, 46, 'largest, S'],
	],
	'raja-clavata': [
		[63, 49, 'smallest, Clark 1922, in G p. 265'],
		[74.9, 57.1, 'means, Clark 1922, in G p. 265'],
		[90, 68.5, 'largest, Clark 1922, in G p. 265'],
		[65, 48, 'means, Maia et al. 2015, in G p. 265'],
		[70, 50, 'smallest, Capapé 1976, Tunisia, in G p. 265'],
		[75, 52, 'means, Capapé 1976, Tunisia, in G p. 265'],
		[78, 54, 'largest, Capapé 1976, Tunisia, in G p. 265'],
		[60, 50, 'smallest, Wheeler 1969, in G p. 265'],
		[90, 70, 'largest, Wheeler 1969, in G p. 265'],
		[60, 49, 'smallest, S'],
		[90, 69, 'largest, S'],
		[80, 62, 'Lacourt 1979, in G p. 265'],
		[80, 50, 'Le Danois 1913, in G p. 265'],
	],
	'raja-microocellata': [
		[70, undefined, 'smallest, G p. 269'],
		[81.2, undefined, 'mean, G p. 269'],
		[94.9, undefined, 'largest, G p. 269'],
		[85, 52, 'smallest, S'],
		[95, 63, 'largest, S'],
		[66, 41, 'smallest, FishBase species summary'],
		[100, 63, 'largest, FishBase species summary'],
	],
	'raja-undulata': [
		[71.9, undefined, 'smallest, G p. 270'],
		[80.4, undefined, 'mean, G p. 270'],
		[89.4, undefined, 'largest, G p. 270'],
		[90, 50, 'S'],
		[107, 40.5, 'one case with a hugely extended front apron, G p. 270-271'],
	],
	'raja-brachyura': [
		[82, undefined, 'smallest, G p. 263, 265'],
		[108.6, undefined, 'mean, G p. 263, 265'],
		[132.2, undefined, 'largest, G p. 263, 265'],
		[128.4, 78.5, 'means, Clark 1922, in G p. 265'],
		[122, 68, 'means, Maia et al. 2015, in G p. 265'],
		[115, 72, 'smallest, Wheeler 1969, in G p. 265'],
		[143, 90, 'largest, Wheeler 1969, in G p. 265'],
		[136, 76, 'Williamson 1913, in G p. 265'],
		[120, 70, 'Le Danois 1913, in G p. 265'],
		[121, 79, 'Lacourt 1979, in G p. 265'],
		[115, 70, 'Bor 1998, in G p. 265'],
		[120, 80, 'S'],
		[105, 68, 'smaller of two in museums, G p. 263'],
		[132.2, 74, 'larger of two in museums, G p. 263'],
	],
	'dipturus-batis': [
		[129, 68, 'smallest, G p. 260, 264'],
		[139.7, 73.8, 'means, G p. 260, 264'],
		[150, 80, 'largest, G p. 260, 264'],
		[143.5, 80.8, 'means, Clark 1922, in G p. 264'],
		[120, 60, 'Bor 1998, in G p. 264'],
	],
	'dipturus-intermedius': [
		[130, 100, 'smallest, G p. 261, 264'],
		[201.4, 121.3, 'means, G p. 261, 264'],
		[235, 144, 'largest, G p. 261, 264'],
		[243, 139.5, 'Williamson 1913, in G p. 264'],
		[251, 96.5, 'Boeseman 1967, in G p. 262'],
	],
	'rostroraja-alba': [
		[127.8, 104.3, 'smallest, G p. 271'],
		[148.1, 126.7, 'means, G p. 271'],
		[190, 145, 'largest, G p. 271'],
		[174, 138, 'Holt 1898, in G p. 271'],
	],
	'raja-asterias': [[45, 30, 'S']],
	'raja-polystigma': [[46, 35, 'S']],
	'raja-radula': [
		[51, 34, 'smallest, S'],
		[57, 37, 'largest, S'],
	],
	'raja-miraletus': [
		[42, 27, 'smallest, from memory'],
		[46, 29, 'largest, from memory'],
	],
	'leucoraja-fullonica': [
		[75, 45, 'smallest, Desbrosses 1931, in G p. 263'],
		[89, 67, 'largest, Wheeler 1969, in G p. 263; the width is soft'],
		[80, 50, 'Lacourt 1979, in G p. 265, and S'],
	],
	'leucoraja-circularis': [
		[89.3, 50.3, 'means, Clark 1922, in G p. 264'],
		[83, 46, 'smallest, Desbrosses 1931, in G p. 263-264'],
		[92, 53, 'largest, Desbrosses 1931, in G p. 263-264'],
		[84, 45, 'smallest, Wheeler 1969, in G p. 264'],
		[90, 53, 'largest, Wheeler 1969, in G p. 264'],
		[83, 48, 'Bor 1998, in G p. 264'],
		[90, 50, 'S'],
	],
	'dipturus-oxyrinchus': [
		[102, 60, 'smallest, G p. 264'],
		[112, 63.8, 'means, G p. 264'],
		[126, 66, 'largest, G p. 264'],
		[103.6, 57, 'means, Sardinia, Italian thesis, section 5.5'],
		[128, 74, 'smallest, Wheeler 1969, in G p. 264'],
		[133, 101, 'largest, Wheeler 1969, in G p. 264'],
		[133, 79.5, 'means, Clark 1922, in G p. 264'],
	],
	'dipturus-nidarosiensis': [
		[182, 95, 'smallest, Nordgaard 1917, in G p. 264'],
		[260, 120, 'largest, Nordgaard 1917, in G p. 264'],
	],
	'bathyraja-abyssicola': [
		[108, 72, 'smallest, E p. 3-4'],
		[111, 77, 'largest, E p. 3-4'],
	],
	'bathyraja-aleutica': [[120, 88, 'smallest, E p. 4-5; the largest is not given']],
	'bathyraja-kincaidii': [
		[50, 38, 'smallest, E p. 5-6'],
		[66, 60, 'largest, E p. 5-6'],
	],
	'bathyraja-microtrachys': [
		[79, 50, 'smallest, E p. 6-7'],
		[81, 52, 'largest, E p. 6-7'],
	],
	'bathyraja-spinosissima': [[92, 67, 'the only one, E p. 8-9']],
	'bathyraja-trachura': [
		[62, 48, 'smallest, E p. 9-10'],
		[78, 76, 'largest, E p. 9-10'],
	],
	'beringraja-binoculata': [
		[210, 109, 'smallest, E p. 10-11'],
		[280, 146, 'largest, E p. 10-11'],
	],
	'caliraja-inornata': [
		[68, 50, 'smallest, E p. 11-12'],
		[73, 56, 'largest, E p. 11-12'],
	],
	'caliraja-rhina': [
		[93, 58, 'smallest, E p. 12-13'],
		[102, 71, 'largest, E p. 12-13'],
	],
	'caliraja-stellulata': [
		[91, 60, 'smallest, E p. 13-14'],
		[92, 64, 'largest, E p. 13-14'],
	],
};
