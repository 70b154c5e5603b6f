/** The middle one of some numbers, the upper of two; 0 of none. */
export function median(values: readonly number[]): number {
	return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
