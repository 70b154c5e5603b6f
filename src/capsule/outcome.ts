/** What measuring a photo may come to. */
import type {Doubt} from './judge.ts';
import type {Unreadable} from './photo.ts';
import type {Point} from './raster.ts';

/** An interval that holds the true value nine times in ten, in millimetres. */
export type Interval = readonly [fromMm: number, toMm: number];

/** One case as measured; points are pixels of the upright photo. */
export type MeasuredCase = {
	readonly lengthMm: number;
	readonly lengthIntervalMm: Interval;
	/** Absent where the flanks could not be seen well enough. */
	readonly widthMm?: number;
	readonly widthIntervalMm?: Interval;
	readonly lengthLinePx: readonly [Point, Point];
	readonly widthLinePx?: readonly [Point, Point];
};

/** What a photo was measured by. */
export type ReferenceKind = 'a4' | 'card' | 'sheet';

/** Why a photo was not measured. */
export type Refusal =
	| Doubt
	| Unreadable['why']
	| 'no-reference'
	| 'letter'
	| 'no-case'
	| 'dark'
	| 'other-reference';

/** The outcome for one photo: sizes, two readings of one case to choose from, or the reason for neither. */
export type Outcome =
	| {
			readonly kind: 'measured' | 'choose';
			readonly reference: ReferenceKind;
			/** The four corners of the reference in pixels of the upright photo, to be blurred where it is a card. */
			readonly referencePx: readonly Point[];
			readonly cases: readonly MeasuredCase[];
	  }
	| {
			readonly kind: 'declined';
			readonly why: Refusal;
			readonly reference?: ReferenceKind;
			/** As above, where there was one: what is declined is kept all the same. */
			readonly referencePx?: readonly Point[];
	  };
