/** Chance by seed: the same seed gives the same run everywhere. */

/** The next number of a run, from 0 to below 1. */
export type Pick = () => number;

/** The four 32-bit words that a generator stands on; not all of them may be zero. */
export type Words = readonly [number, number, number, number];

/** Chance from a whole number, by the generator xoshiro128** (Blackman & Vigna 2018, arXiv:1805.01407). */
export function seeded(seed: number): Pick {
	const word = spread(seed);
	const next = xoshiro([word(), word(), word(), word()]);
	return () => next() / 2 ** 32;
}

/** Whole numbers from 0 to below 2³² by xoshiro128**. */
export function xoshiro(words: Words): () => number {
	let [a, b, c, d] = words;
	return () => {
		const result = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0;
		const shifted = b << 9;
		c ^= a;
		d ^= b;
		b ^= c;
		a ^= d;
		c ^= shifted;
		d = turned(d, 11);
		return result;
	};
}

/** A number of the standard normal distribution, by the method of Box and Muller (1958). */
export function normal(pick: Pick): number {
	return Math.sqrt(-2 * Math.log(1 - pick())) * Math.cos(2 * Math.PI * pick());
}

/** A number from `from` to below `to`, each alike. */
export function between(pick: Pick, [from, to]: readonly [number, number]): number {
	return from + (to - from) * pick();
}

/** One of a list, each alike; throws where the list is empty. */
export function oneOf<T>(pick: Pick, list: readonly T[]): T {
	const chosen = list[Math.floor(pick() * list.length)];
	if (chosen === undefined) throw new Error('Expected a list with something in it; it is empty');
	return chosen;
}

/** One of some names by their shares, which need not sum to 1; throws where there is none. */
export function byShare(pick: Pick, shares: readonly (readonly [string, number])[]): string {
	let left = pick() * shares.reduce((sum, [, share]) => sum + share, 0);
	for (const [name, share] of shares) {
		left -= share;
		if (left < 0) return name;
	}
	const last = shares.filter(([, share]) => share > 0).at(-1);
	if (!last) throw new Error('Expected a name with a share above 0; there is none');
	return last[0];
}

/** Words that differ in about half of their bits from seed to seed. */
function spread(seed: number): () => number {
	let state = seed | 0;
	return () => {
		// The golden section of 2³², so that words in a row never repeat; odd factors keep every bit in play.
		state = (state + 0x9e3779b9) | 0;
		const once = Math.imul(state ^ (state >>> 15), 0x2c1b3c6d);
		const twice = Math.imul(once ^ (once >>> 13), 0x297a2d39);
		return (twice ^ (twice >>> 16)) >>> 0;
	};
}

function turned(word: number, bits: number): number {
	return (word << bits) | (word >>> (32 - bits));
}
