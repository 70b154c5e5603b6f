/** What became of something that was asked for and took its time. */
import type {Season} from './season.ts';

/** What was made, or why it was not. */
export type Made =
	/** Files to be handed over in order, by their names in the folder of their parcel; how many records they hold. */
	| {readonly kind: 'files'; readonly names: readonly string[]; readonly records?: number}
	| {readonly kind: 'season'; readonly season: Season}
	/** No record fits. */
	| {readonly kind: 'nothing'}
	/** The platform takes files of up to 50 MB. */
	| {readonly kind: 'too-large'}
	/** The keeper has not said what the data are, and under which licence. */
	| {readonly kind: 'not-described'};
