/** Sizes of the things that photos are measured by, in millimetres. */

/** A flat thing of known size. */
export type Flat = {
	readonly kind: 'a4' | 'letter' | 'card' | 'sheet';
	readonly longMm: number;
	readonly shortMm: number;
	/** How high its upper face lies over what it lies on. */
	readonly thickMm: number;
	/** The share of a side next to each corner that is rounded or worn. */
	readonly skip: number;
};

/** A sheet of A4: ISO 216. */
export const a4: Flat = {kind: 'a4', longMm: 297, shortMm: 210, thickMm: 0, skip: 0.03};

/** Our measuring sheet, printed on A4. */
export const sheet: Flat = {...a4, kind: 'sheet'};

/** A sheet of Letter, known so that it is not taken for A4: ANSI/ASME Y14.1 size A, 11 by 8.5 inches (from memory). */
export const letter: Flat = {kind: 'letter', longMm: 279.4, shortMm: 215.9, thickMm: 0, skip: 0.03};

/** A card ID-1: ISO/IEC 7810, 85.60 by 53.98 by 0.76 mm, corners rounded by 3.18 mm. */
export const card: Flat = {kind: 'card', longMm: 85.6, shortMm: 53.98, thickMm: 0.76, skip: 0.09};
