/** What became of one body on a photo. */
import type {Doubt} from './judge.ts';
import type {Interval} from './outcome.ts';
import type {Point} from './raster.ts';

/** A case read once, or in two ways when two borders are as likely; lines and outline are in pixels of the raster. */
export type Reading = {
	readonly lengthMm: number;
	readonly lengthIntervalMm: Interval;
	readonly widthMm?: number;
	readonly widthIntervalMm?: Interval;
	readonly shape?: 'long' | 'broad';
	readonly lines: {readonly length: readonly [Point, Point]; readonly width?: readonly [Point, Point]};
	readonly outline: readonly Point[];
};

/** A body that was read once or in two ways. */
export type Read = {
	readonly kind: 'read';
	/** The likelier first. */
	readonly either: readonly Reading[];
	/** The first is much likelier than the other, if there is one. */
	readonly isLikely: boolean;
	/** How alike its two halves are, from 0 to 1. */
	readonly symmetry: number;
	/** Beyond one of its ends something lies on its middle line. */
	readonly goesOn: boolean;
	readonly at: Point;
};

/** One body: read, or the doubt about it and where it lies. */
export type Judged = Read | {readonly kind: 'doubted'; readonly why: Doubt; readonly at: Point};
