/** What the sea and the finder do to a case before it is named: the assumptions of the model, all ours. */

/** How worn a simulated find is. */
export type Wear = 'intact' | 'worn' | 'broken';

/** The chances of one level of wear. */
export type WearLevel = {
	/** How many finds of a hundred are so worn. */
	readonly share: number;
	/** The chance that a part is lost, in the words of the key's `needs`; parts are lost apart from one another. */
	readonly lost: Readonly<Record<string, number>>;
	/** The chance of being measured dry. */
	readonly dry: number;
	/** The chance that nobody can measure it. */
	readonly unmeasured: number;
};

/** The levels of wear. Judged; gordon2016 says what breaks first: horns, then fibres, aprons fray. */
export const wearLevels: Readonly<Record<Wear, WearLevel>> = {
	intact: {share: 0.4, lost: {horns: 0, surface: 0, aprons: 0, sides: 0}, dry: 0, unmeasured: 0.02},
	worn: {
		share: 0.4,
		lost: {horns: 0.45, surface: 0.25, aprons: 0.2, sides: 0.1},
		dry: 0.15,
		unmeasured: 0.05,
	},
	broken: {
		share: 0.2,
		lost: {horns: 0.9, surface: 0.55, aprons: 0.6, sides: 0.35},
		dry: 0.15,
		unmeasured: 0.1,
	},
};

/** The levels in the order in which they are told. */
export const wears = ['intact', 'worn', 'broken'] as const;

/** How many finders say where a find was made. */
export const placedShare = 0.9;
/** How often people cannot tell a state although the part is there. */
export const cantTellShare = 0.03;

/** Length and width of one case go together so far. */
export const sizeCorrelation = 0.5;
/** Cases may lie outside the published range by this share of its width, at either end. */
export const beyondRange = 0.1;
/** The error of a ruler in a hand: this many millimetres … */
export const errorMm = 1.5;
/** … and this share of the size, the two taken together as independent errors. */
export const errorShare = 0.02;
/** What the record holds of that error: whole millimetres typed count as 1 mm sure (capsule/length.ts). */
export const recordedUncertaintyMm = 1;
