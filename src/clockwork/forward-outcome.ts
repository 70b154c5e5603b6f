/** What became of one try to pass a record on. */

/** Heard, gone for good, or failed for now; errors are short names that hold neither address nor path. */
export type Outcome =
	| {readonly kind: 'heard'}
	| {readonly kind: 'gone'; readonly error: string}
	| {readonly kind: 'failed'; readonly error: string; readonly retryAfterMs: number};
