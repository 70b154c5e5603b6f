/** Faults in the profiles of a region: sources, sizes, names. */
import {checkShares} from './check-shares.ts';
import {type At, type Checkable, inProfiles, quoted, type Remark} from './checkable.ts';
import type {Measure, Taxon} from './region.ts';
import {typicalSpecimens, walkKey} from './specimen.ts';
import type {Fault} from './yaml.ts';

/**
 * No sample spreads wider than its range over the root of two, as two cases do that lie at its ends
 * (from Popoviciu's inequality). A spread judged from few cases may be wider, up to a tenth of the
 * middle: half of that is what cases of one kind commonly show, judged from the profiles at hand.
 */
const judgedSpread = 0.05;

/** Every fault in the profiles, and every taxon that its own typical specimen does not come to. */
export function checkProfiles(checkable: Checkable): readonly Fault[] {
	return Object.entries(checkable.region.profiles.taxa).flatMap(([id, taxon]) => {
		const at = (path: readonly (string | number)[], remark: Remark) =>
			inProfiles(checkable, ['taxa', id, ...path], remark);
		return [
			...checkSources(checkable, taxon, at),
			...checkMeasure('lengthMm', taxon.lengthMm, at),
			...checkMeasure('widthMm', taxon.widthMm, at),
			...checkCoast(checkable, taxon, at),
			...checkShares(checkable, taxon, at),
			...checkWords(checkable, taxon, at),
			...checkTypical(checkable, id, at),
		];
	});
}

function checkSources({region}: Checkable, taxon: Taxon, at: At): readonly Fault[] {
	const {sources} = region.profiles;
	const {lengthMm, widthMm, coast, protected: law, described, fact} = taxon;
	const cited = [
		...Object.entries({lengthMm, widthMm, coast, protected: law, described, fact}).flatMap(([name, cite]) =>
			cite ? [{path: [name], ...cite}] : [],
		),
		...taxon.notUsed.map((cite, index) => ({path: ['notUsed', index], ...cite})),
	];
	return cited.flatMap(({path, source, page}) => {
		const listed = Object.hasOwn(sources, source) ? sources[source] : undefined;
		if (!listed) {
			const what = `The source "${source}" is not listed.`;
			return [at(path, {what, todo: 'Add it under "sources" with its citation.'})];
		}
		if (page !== undefined || listed.fromMemory) return [];
		const what = `No page of "${source}" is given.`;
		return [at(path, {what, todo: 'Write where it stands there: pages, "abstract", "table 1".'})];
	});
}

function checkMeasure(name: string, measure: Measure | undefined, at: At): readonly Fault[] {
	if (!measure) return [];
	const {range, mean, sd, basis} = measure;
	const [low, high] = range;
	if (low > high) {
		const what = `The range ${low} to ${high} mm runs backwards.`;
		return [at([name], {what, todo: 'Write the smaller end first.'})];
	}
	if (low === high && (sd === undefined || basis === undefined)) {
		const what = `One size of ${low} mm does not tell how much cases differ.`;
		return [at([name], {what, todo: 'Judge "sd", and say under "basis" how.'})];
	}
	if (mean !== undefined && (mean < low || mean > high)) {
		const what = `The mean of ${mean} mm lies outside ${low} to ${high} mm.`;
		return [at([name], {what, todo: 'Compare both with their source.'})];
	}
	const widest = Math.max((high - low) / Math.SQRT2, (high + low) * judgedSpread);
	if (sd === undefined || sd <= widest) return [];
	const what = `A spread of ${sd} mm is too wide for ${low} to ${high} mm.`;
	return [at([name], {what, todo: 'Compare "sd" with its source, and mind the decimal point.'})];
}

function checkCoast({region}: Checkable, taxon: Taxon, at: At): readonly Fault[] {
	const known = Object.keys(region.key.areas);
	return (taxon.coast?.usual ?? [])
		.filter(area => !known.includes(area))
		.map(area =>
			at(['coast', 'usual'], {
				what: `The area "${area}" is not in key.yaml.`,
				todo: `Write one of ${known.join(', ')}, or draw the area.`,
			}),
		);
}

function checkWords({region}: Checkable, taxon: Taxon, at: At): readonly Fault[] {
	const words = Object.keys(region.key.howCommon);
	const strangers = taxon.lookalikes.filter(other => !Object.hasOwn(region.profiles.taxa, other));
	return [
		...(words.includes(taxon.howCommon)
			? []
			: [
					at(['howCommon'], {
						what: `The key gives no weight to "${taxon.howCommon}".`,
						todo: `Use one of ${quoted(words)}, or add the word to "howCommon" in key.yaml.`,
					}),
				]),
		...strangers.map(other =>
			at(['lookalikes'], {
				what: `The lookalike "${other}" has no profile.`,
				todo: 'Name a taxon of this file.',
			}),
		),
	];
}

function checkTypical({region}: Checkable, id: string, at: At): readonly Fault[] {
	const taxon = region.profiles.taxa[id];
	if (!taxon) return [];
	const {leaves} = walkKey(region.key, typicalSpecimens(taxon).middle);
	if (leaves.includes(id)) return [];
	const what = `A typical specimen does not come to "${id}" but to ${quoted(leaves)}.`;
	return [at([], {what, todo: 'Compare its commonest states and its sizes with the way through the key.'})];
}
