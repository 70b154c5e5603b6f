/** Linear equations, solved in the sense of least squares. */

/** The unknowns that come nearest to `rows · unknowns = right`, each row weighted; undefined when they are not told. */
export function solve(
	rows: readonly (readonly number[])[],
	right: readonly number[],
	weights?: readonly number[],
): readonly number[] | undefined {
	const size = rows[0]?.length ?? 0;
	const table = Array.from({length: size}, () => new Float64Array(size + 1));
	for (const [index, row] of rows.entries()) {
		const weight = weights?.[index] ?? 1;
		for (let i = 0; i < size; i += 1) {
			const line = table[i];
			const share = weight * (row[i] ?? 0);
			if (!line || share === 0) continue;
			for (let j = 0; j < size; j += 1) line[j] = (line[j] ?? 0) + share * (row[j] ?? 0);
			line[size] = (line[size] ?? 0) + share * (right[index] ?? 0);
		}
	}
	return solveSquare(table);
}

/**
 * The unknowns of as many equations, each a row of factors with its right side last; undefined when they are not told.
 * By Gauss and Jordan, with the largest pivot of each column; the rows are used up.
 */
export function solveSquare(table: readonly Float64Array[]): readonly number[] | undefined {
	const size = table.length;
	const order = [...table];
	for (let column = 0; column < size; column += 1) {
		let best = column;
		for (let row = column + 1; row < size; row += 1) {
			if (Math.abs(order[row]?.[column] ?? 0) > Math.abs(order[best]?.[column] ?? 0)) best = row;
		}
		const pivot = order[best];
		const other = order[column];
		if (!pivot || !other || Math.abs(pivot[column] ?? 0) < 1e-14) return undefined;
		order[column] = pivot;
		order[best] = other;
		for (let row = 0; row < size; row += 1) {
			const line = order[row];
			if (row === column || !line) continue;
			const factor = (line[column] ?? 0) / (pivot[column] ?? 1);
			if (factor === 0) continue;
			for (let j = column; j <= size; j += 1) line[j] = (line[j] ?? 0) - factor * (pivot[j] ?? 0);
		}
	}
	return order.map((line, index) => (line[size] ?? 0) / (line[index] ?? 1));
}
