/** One photo's outcome held against its truth, and a set's outcomes as a line of a table. */
import type {MeasuredCase, Outcome} from '../../src/capsule/outcome.ts';
import type {Known} from './photo-set.ts';
import {median, percentile} from './table.ts';

/** What came of one photo; errors in percent, signed. */
export type Scored = {
	readonly kind: Outcome['kind'];
	readonly lengths: readonly number[];
	readonly widths: readonly number[];
	readonly halfWidths: readonly number[];
	readonly covered: readonly boolean[];
	/** Cases of the truth that were found, and all there were. */
	readonly found: readonly [number, number];
	readonly processorMs: number;
	readonly note?: string;
};

type Shot = {
	readonly file: string;
	readonly outcome: Outcome;
	readonly truth: Known;
	readonly processorMs: number;
};

/** Holds an outcome against the truth; with several cases each is held to the true one nearest to it. */
export function scoreOf({outcome, truth, processorMs}: Shot): Scored {
	const base = {kind: outcome.kind, processorMs};
	const none = {
		lengths: [],
		widths: [],
		halfWidths: [],
		covered: [],
		found: [0, truth.cases.length] as const,
	};
	if (outcome.kind === 'declined') return {...base, ...none, note: `declined: ${outcome.why}`};
	const given = outcome.kind === 'choose' ? bestOf(outcome.cases, truth) : outcome.cases;
	const pairs = given.map(one => {
		const [nearest] = truth.cases.toSorted((a, b) => unlike(a, one) - unlike(b, one));
		return {one, true: nearest ?? {lengthMm: Number.NaN, widthMm: Number.NaN}};
	});
	const isByPlace = truth.cases.every(({lengthLinePx}) => lengthLinePx);
	const lengths = pairs.map(({one, true: real}) => 100 * (one.lengthMm / real.lengthMm - 1));
	const worst = Math.max(...lengths.map(Math.abs));
	return {
		...base,
		lengths,
		// Where which of many cases is which is told by their lengths, that says nothing of their widths.
		widths: pairs.flatMap(({one, true: real}) =>
			one.widthMm === undefined || (truth.cases.length > 1 && !isByPlace)
				? []
				: [100 * (one.widthMm / real.widthMm - 1)],
		),
		halfWidths: pairs.map(
			({one}) => (50 * (one.lengthIntervalMm[1] - one.lengthIntervalMm[0])) / one.lengthMm,
		),
		covered: pairs.map(
			({one, true: real}) =>
				one.lengthIntervalMm[0] <= real.lengthMm && real.lengthMm <= one.lengthIntervalMm[1],
		),
		found: [Math.min(given.length, truth.cases.length), truth.cases.length],
		...(worst > 1.5 || Number.isNaN(worst) || outcome.kind === 'choose' || given.length !== truth.cases.length
			? {
					note: `${outcome.kind} ${given.length} of ${truth.cases.length}: ${lengths.map(value => value.toFixed(2)).join(' ')} %`,
				}
			: {}),
	};
}

type Line = MeasuredCase['lengthLinePx'];

/** How far two cases are apart in the photo, or, where the truth does not tell, in length. */
function unlike(real: Known['cases'][number], one: MeasuredCase): number {
	if (!real.lengthLinePx) return Math.abs(real.lengthMm - one.lengthMm);
	const middle = ([a, b]: Line, axis: 0 | 1) => (a[axis] + b[axis]) / 2;
	const apart = (axis: 0 | 1) =>
		middle(real.lengthLinePx ?? one.lengthLinePx, axis) - middle(one.lengthLinePx, axis);
	return Math.hypot(apart(0), apart(1));
}

/** Of two readings, the one that a person who sees the case would choose. */
function bestOf<T extends {readonly lengthMm: number}>(
	cases: readonly T[],
	{cases: [real]}: Known,
): readonly T[] {
	if (!real) return cases;
	const off = ({lengthMm}: T) => Math.abs(lengthMm - real.lengthMm);
	return cases.toSorted((a, b) => off(a) - off(b)).slice(0, 1);
}

/** A set's outcomes as a line of the table. */
export function rowOf(name: string, list: readonly Scored[]): readonly string[] {
	const lengths = list.flatMap(one => one.lengths);
	const widths = list.flatMap(one => one.widths).map(Math.abs);
	const sizes = lengths.map(Math.abs);
	const covered = list.flatMap(one => one.covered);
	const declined = list.filter(({kind}) => kind === 'declined').length;
	const share = (part: number, all: number) => (all === 0 ? '' : `${Math.round((100 * part) / all)} %`);
	const three = (values: readonly number[]) =>
		values.length === 0
			? ''
			: [median(values), percentile(values, 0.95), Math.max(...values)].map(v => v.toFixed(1)).join(' / ');
	const times = list.map(({processorMs}) => processorMs);
	const [found, all] = [0, 1].map(index => list.reduce((sum, one) => sum + (one.found[index] ?? 0), 0));
	return [
		name,
		`${list.length}${(all ?? 0) > list.length ? ` (${found} of ${all} cases)` : ''}`,
		share(declined, list.length),
		share(list.filter(({kind}) => kind === 'choose').length, list.length),
		three(sizes),
		lengths.length === 0 ? '' : median(lengths).toFixed(2),
		three(widths),
		share(widths.length, lengths.length),
		lengths.length === 0 ? '' : median(list.flatMap(one => one.halfWidths)).toFixed(2),
		share(covered.filter(Boolean).length, covered.length),
		String(sizes.filter(value => value > 5).length),
		Math.round(median(times)).toString(),
	];
}
