/** How long a find that nobody finishes is kept; told to people in `privacy` and in the README. */

/** Days without an answer after which an unfinished find is erased. */
export const unfinishedKeptDays = 30;
/** Days before that on which its finder is told. */
export const warnedBeforeDays = 7;

const dayMs = 24 * 3_600_000;

/** When a find is to be warned of and erased, as instants before `now` (UTC ms). */
export function unfinishedLimits(now: number): {
	/** Untouched since then, a find is warned of. */
	readonly warnBefore: number;
	/** Untouched since then, a find is erased, */
	readonly eraseBefore: number;
	/** if its finder was told by then. */
	readonly warnedBefore: number;
} {
	return {
		warnBefore: now - (unfinishedKeptDays - warnedBeforeDays) * dayMs,
		eraseBefore: now - unfinishedKeptDays * dayMs,
		warnedBefore: now - warnedBeforeDays * dayMs,
	};
}

/** When a find whose finder is told `now` goes, unless somebody goes on with it. */
export function erasedAt(now: number): number {
	return now + warnedBeforeDays * dayMs;
}
