/** What became of something that was asked for and took its time. */

/** A file that was made, by its name in the folder of its parcel. */
export type Made =
	/** Files to be handed over, in order. */
	{readonly kind: 'files'; readonly names: readonly string[]};
