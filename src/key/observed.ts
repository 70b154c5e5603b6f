/** What is known of a specimen: states seen, sizes, parts that are gone. */
import type {Spot} from './coast.ts';
import type {Shortening} from './shrink.ts';

/** A size in millimetres: measured, a lower bound, or not to be had. */
export type Sized =
	| {
			readonly kind: 'exact' | 'at-least';
			readonly mm: number;
			readonly uncertaintyMm: number;
			/** Why it is a lower bound, where that is known: then it is known, too, how much may be missing. */
			readonly shortBy?: readonly Shortening[];
	  }
	| {readonly kind: 'unknown'};

/** The answer that leaves every way open. */
export const cantTell = 'cant-tell';

/** All that the key and the ranking may use; `seen` maps a character to a state or to `cantTell`. */
export type Observed = {
	readonly seen: Readonly<Record<string, string>>;
	readonly length: Sized | undefined;
	readonly width: Sized | undefined;
	readonly lost: readonly string[];
	/** Where it was found, if a place on the map is known. */
	readonly spot?: Spot | undefined;
};

/** Nothing looked at yet. */
export const nothingObserved: Observed = {seen: {}, length: undefined, width: undefined, lost: []};

/** The sizes in millimetres that a measurement leaves possible, both ends included. */
export function intervalOf(sized: Sized): readonly [number, number] {
	switch (sized.kind) {
		case 'exact':
			return [sized.mm - sized.uncertaintyMm, sized.mm + sized.uncertaintyMm];
		case 'at-least':
			return [sized.mm - sized.uncertaintyMm, Number.POSITIVE_INFINITY];
		case 'unknown':
			return [0, Number.POSITIVE_INFINITY];
	}
}
