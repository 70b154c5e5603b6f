/** A place as it may be shown: as it was told, or no finer than a square. */
import {type CoarseSideM, type CoarseSquare, coarseSquare} from './coarse-square.ts';
import type {Place} from './place.ts';

/** A place to be shown; nothing where only a name is known and that may be too exact. */
export type ShownPlace =
	| {readonly kind: 'as-told'; readonly place: Place}
	| {readonly kind: 'square'; readonly square: CoarseSquare}
	| undefined;

/** A place hidden in the largest of these squares; as it was told where none is asked for. */
export function shownPlace(place: Place, sidesM: readonly CoarseSideM[]): ShownPlace {
	const largest = [1000, 10_000, 100_000].findLast(side => sidesM.some(asked => asked === side));
	const sideM = sidesM.find(side => side === largest);
	if (sideM === undefined) return {kind: 'as-told', place};
	if (place.kind === 'named') return undefined;
	const square = coarseSquare(place, sideM);
	// It was told as a square at least as large: there is nothing finer to hide.
	return square ? {kind: 'square', square} : {kind: 'as-told', place};
}
