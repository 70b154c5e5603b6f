/** How likely every pair of readings is under the model, summed over all true sizes and all ways of shrinking. */

import {curvesOf, errorOf, factorsOf, type Shrunk, type SizeCurve, type SizeCurves} from './model-sizes.ts';
import type {Region} from './region.ts';
import {type Ends, stepsBetween} from './shrink.ts';
import {upperTail} from './size-share.ts';

/** The chance of a reading, a pair of readings, or of none (1). */
export type SizeChance = (read: {
	readonly length: number | undefined;
	readonly width: number | undefined;
}) => number;

/** True sizes are summed at this many places of each curve, factors at so many of theirs. */
const sizeSteps = 80;
const factorSteps = 8;
/** Beyond so many spreads no reading is counted. */
const reach = 6;

/** For each true size, from which reading on how likely each is. */
type Column = {readonly from: number; readonly chances: Float64Array};

/** Builds the chances of all pairs of readings of a taxon, or of something else, that has shrunk so. */
export function sizeTable(region: Region, taxon: string, shrunk: Shrunk): SizeChance {
	const curves = curvesOf(region, taxon);
	const factors = factorsOf(region, taxon, shrunk);
	const lengths = readings(region.key.possibleMm.length);
	const widths = readings(region.key.possibleMm.width);
	const weights = weightsOf(curves);
	const table = lengths.all.map(() => new Float64Array(widths.all.length));
	const dryings = stepsBetween(factors.dry, factorSteps);
	for (const dry of dryings) {
		const byLength = columnsOf(curves.length, {dry, ends: factors.length, possible: lengths});
		const byWidth = columnsOf(curves.width, {dry, ends: factors.width, possible: widths});
		addTo(table, {weights, byLength, byWidth, share: 1 / dryings.length});
	}
	const ofLength = table.map(row => row.reduce((sum, chance) => sum + chance, 0));
	const ofWidth = widths.all.map((_, index) => table.reduce((sum, row) => sum + (row[index] ?? 0), 0));
	return ({length, width}) => {
		const row = length === undefined ? undefined : length - lengths.first;
		const column = width === undefined ? undefined : width - widths.first;
		if (row !== undefined && column !== undefined) return table[row]?.[column] ?? 0;
		if (row !== undefined) return ofLength[row] ?? 0;
		return column === undefined ? 1 : (ofWidth[column] ?? 0);
	};
}

function readings([low, high]: Ends): {readonly first: number; readonly all: readonly number[]} {
	const first = Math.ceil(low);
	return {first, all: Array.from({length: Math.floor(high) - first + 1}, (_, index) => first + index)};
}

/** The share of each pair of true sizes, rows by length; sums to 1. */
function weightsOf({length, width, correlation}: SizeCurves): readonly Float64Array[] {
	const zs = (curve: SizeCurve) =>
		stepsBetween(curve.ends, sizeSteps).map(mm => (curve.kind === 'flat' ? 0 : (mm - curve.mean) / curve.sd));
	const across = zs(width);
	const rows = zs(length).map(u =>
		Float64Array.from(across, v =>
			Math.exp(-(u * u - 2 * correlation * u * v + v * v) / (2 * (1 - correlation ** 2))),
		),
	);
	const total = rows.reduce((sum, row) => sum + row.reduce((all, weight) => all + weight, 0), 0);
	return rows.map(row => row.map(weight => weight / total));
}

function columnsOf(
	curve: SizeCurve,
	{dry, ends, possible}: {dry: number; ends: Ends; possible: ReturnType<typeof readings>},
): readonly Column[] {
	const factors = stepsBetween(ends, factorSteps);
	const last = possible.all.length - 1;
	const first = possible.first;
	return stepsBetween(curve.ends, sizeSteps).map(mm => {
		const shown = factors.map(factor => ({size: mm * dry * factor, error: errorOf(mm * dry * factor)}));
		const place = (reading: number) => Math.min(last, Math.max(0, Math.round(reading) - first));
		const from = Math.min(...shown.map(({size, error}) => place(size - reach * error)));
		const to = Math.max(...shown.map(({size, error}) => place(size + reach * error)));
		// The ends take in all that lies beyond them, as the model's readings do.
		const beyond = (reading: number) =>
			shown.reduce((sum, {size, error}) => sum + upperTail((reading - 0.5 - size) / error), 0) / shown.length;
		const chances = new Float64Array(to - from + 1);
		let above = 1;
		for (let at = 0; at < chances.length; at++) {
			const next = from + at === to ? 0 : beyond(first + from + at + 1);
			chances[at] = Math.max(0, above - next);
			above = next;
		}
		return {from, chances};
	});
}

function addTo(
	table: readonly Float64Array[],
	parts: {
		weights: readonly Float64Array[];
		byLength: readonly Column[];
		byWidth: readonly Column[];
		share: number;
	},
): void {
	const {weights, byLength, byWidth, share} = parts;
	// First over true lengths, so that each reading of a length has the shares of the true widths behind it.
	const behind = table.map(() => new Float64Array(byWidth.length));
	for (const [index, {from, chances}] of byLength.entries()) {
		for (let offset = 0; offset < chances.length; offset++) {
			addRow(behind[from + offset], weights[index], chances[offset]);
		}
	}
	for (const [index, shares] of behind.entries()) {
		const into = table[index];
		for (const [at, {from, chances}] of byWidth.entries()) {
			addRow(into?.subarray(from, from + chances.length), chances, (shares[at] ?? 0) * share);
		}
	}
}

function addRow(into: Float64Array | undefined, row: Float64Array | undefined, factor = 0): void {
	if (!into || !row || factor === 0) return;
	for (let at = 0; at < into.length; at++) into[at] = (into[at] ?? 0) + factor * (row[at] ?? 0);
}
