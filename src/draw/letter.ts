/** The letter of an option by its place: A, B, C … */
export function letterOf(index: number): string {
	return String.fromCharCode('A'.charCodeAt(0) + index);
}
