/** Weighted least squares with few unknowns, gathered row by row into numbers that are used again. */

/** Gathers rows and gives the unknowns that come nearest to them. */
export type Scales = {
	/** The terms of the row to be added next. */
	readonly row: Float64Array;
	/** Takes in the row with what each right side should come to. */
	readonly add: (weight: number, ...rights: readonly number[]) => void;
	/** The unknowns of a right side, by the first `size` of all; undefined when the rows do not tell them. */
	readonly unknowns: (side: number, size?: number) => Float64Array | undefined;
	readonly clear: () => void;
};

/** Makes room for rows of `terms` unknowns and a number of right sides. */
export function makeScales(terms: number, sides: number): Scales {
	const row = new Float64Array(terms);
	const products = new Float64Array(terms * terms);
	const rights = new Float64Array(sides * terms);
	return {
		row,
		add: (weight, ...values) => {
			for (let i = 0; i < terms; i += 1) {
				const share = weight * (row[i] ?? 0);
				for (let j = 0; j <= i; j += 1)
					products[i * terms + j] = (products[i * terms + j] ?? 0) + share * (row[j] ?? 0);
				for (let side = 0; side < sides; side += 1) {
					rights[side * terms + i] = (rights[side * terms + i] ?? 0) + share * (values[side] ?? 0);
				}
			}
		},
		unknowns: (side, size = terms) => {
			const lower = cholesky(products, terms, size);
			return lower && substitute(lower, rights.subarray(side * terms, side * terms + size), size);
		},
		clear: () => {
			products.fill(0);
			rights.fill(0);
		},
	};
}

/** The lower triangle whose square is the upper left corner of a matrix. */
function cholesky(matrix: Float64Array, wide: number, size: number): Float64Array | undefined {
	const lower = new Float64Array(size * size);
	for (let i = 0; i < size; i += 1) {
		for (let j = 0; j <= i; j += 1) {
			let rest = matrix[i * wide + j] ?? 0;
			for (let k = 0; k < j; k += 1) rest -= (lower[i * size + k] ?? 0) * (lower[j * size + k] ?? 0);
			if (i === j && rest < 1e-12 * (matrix[i * wide + i] ?? 0) + 1e-300) return undefined;
			lower[i * size + j] = i === j ? Math.sqrt(rest) : rest / (lower[j * size + j] ?? 1);
		}
	}
	return lower;
}

function substitute(lower: Float64Array, right: Float64Array, size: number): Float64Array {
	const values = Float64Array.from(right);
	for (let i = 0; i < size; i += 1) {
		for (let k = 0; k < i; k += 1)
			values[i] = (values[i] ?? 0) - (lower[i * size + k] ?? 0) * (values[k] ?? 0);
		values[i] = (values[i] ?? 0) / (lower[i * size + i] ?? 1);
	}
	for (let i = size - 1; i >= 0; i -= 1) {
		for (let k = i + 1; k < size; k += 1)
			values[i] = (values[i] ?? 0) - (lower[k * size + i] ?? 0) * (values[k] ?? 0);
		values[i] = (values[i] ?? 0) / (lower[i * size + i] ?? 1);
	}
	return values;
}
