/** What several cases of one kind on one photo say together: their middle length, and how sure that is. */
import type {Length} from '../capsule/length.ts';
import type {Proposal, Tray, TrayCase} from './proposal.ts';

/** The sizes of a set: those of each case, and one for all. */
export type SetSizes = {
	readonly length: Length;
	/** Where every case of the set shows it. */
	readonly width: Length | undefined;
	readonly each: readonly Length[];
};

type Size = Pick<Proposal['lengths'][number], 'mm' | 'uncertaintyMm'>;

/**
 * Longest less shortest, as a share of the middle length: above it a set is asked about. Ours; the widest published
 * range of lengths in `flows/` is looked at beside it in `test/find/tray-set.test.ts`.
 */
export const widestSpread = 0.35;

/** Half of a 90 % interval in standard deviations (normal curve). */
const ninety = 1.645;
/** How much less a middle one of many tells than their mean: the root of half of pi (normal curve). */
const ofMiddle = Math.sqrt(Math.PI / 2);

/** The sizes of cases on one photo. */
export function setSizes(reference: Tray['reference'], cases: readonly TrayCase[]): SetSizes {
	const whole = (size: Size): Length => lengthOf(reference, size);
	const widths = cases.flatMap(({width}) => (width ? [width] : []));
	return {
		length: whole(middleOf(cases.map(({length}) => length))),
		width: widths.length === cases.length ? whole(middleOf(widths)) : undefined,
		each: cases.map(({length}) => whole(length)),
	};
}

/** Whether lengths lie farther apart than those of one kind are likely to. */
export function isWide(cases: readonly TrayCase[]): boolean {
	const lengths = cases.map(({length}) => length.mm);
	const middle = medianOf(lengths);
	return Math.max(...lengths) - Math.min(...lengths) > widestSpread * middle;
}

/**
 * The middle size. Its half-width holds the worst single one, since an error of scale is the same for all that lie on
 * one photo and no number of cases makes it less, and how far the middle of so many may lie from that of their kind.
 */
function middleOf(sizes: readonly Size[]): Size {
	const values = sizes.map(({mm}) => mm);
	const single = Math.max(...sizes.map(({uncertaintyMm}) => uncertaintyMm));
	const scatter = (ninety * ofMiddle * deviationOf(values)) / Math.sqrt(values.length);
	return {
		mm: Math.round(medianOf(values) * 10) / 10,
		uncertaintyMm: Math.ceil(Math.hypot(single, scatter) * 10 - 1e-6) / 10,
	};
}

function medianOf(values: readonly number[]): number {
	const sorted = values.toSorted((one, other) => one - other);
	const upper = sorted[Math.floor(sorted.length / 2)] ?? 0;
	const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
	return (upper + lower) / 2;
}

function deviationOf(values: readonly number[]): number {
	if (values.length < 2) return 0;
	const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
	const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
	return Math.sqrt(squares / (values.length - 1));
}

function lengthOf(reference: Tray['reference'], {mm, uncertaintyMm}: Size): Length {
	return {mm, uncertaintyMm, method: 'photo', reference};
}
