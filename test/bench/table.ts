/** Numbers put in a small table. */

/** The middle value. */
export function median(values: readonly number[]): number {
	return percentile(values, 0.5);
}

/** The value that this share of all values does not exceed; throws when there is none. */
export function percentile(values: readonly number[], share: number): number {
	const sorted = [...values].sort((one, other) => one - other);
	const found = sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))];
	if (found === undefined) throw new Error('Expected at least one value to take a percentile of; got none');
	return found;
}

/** Milliseconds as people read them. */
export function inMs(ms: number): string {
	return ms >= 10 ? `${ms.toFixed(0)} ms` : `${ms.toFixed(2)} ms`;
}

/** Prints rows under a title, the first column to the left and the others to the right. */
export function sayTable(title: string, rows: readonly (readonly string[])[]): void {
	const columns = Math.max(0, ...rows.map(row => row.length));
	const widths = Array.from({length: columns}, (_, column) =>
		Math.max(0, ...rows.map(row => row[column]?.length ?? 0)),
	);
	const lines = rows.map(row =>
		row
			.map((cell, column) => {
				const width = widths[column] ?? 0;
				return column === 0 ? cell.padEnd(width) : cell.padStart(width);
			})
			.join('  '),
	);
	process.stdout.write(`\n${title}\n${lines.map(line => `  ${line.trimEnd()}`).join('\n')}\n`);
}
