/** Faults in the profiles of a region: sources, sizes, shares, names. */
import {type Checkable, inProfiles, quoted, type Remark} from './checkable.ts';
import type {Measure, Taxon} from './region.ts';
import {typicalSpecimens, walkKey} from './specimen.ts';
import type {Fault} from './yaml.ts';

/** How far the shares of one character may be from 1 together. */
const slack = 0.001;

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

type At = (path: readonly (string | number)[], remark: Remark) => Fault;

function checkSources({region}: Checkable, taxon: Taxon, at: At): readonly Fault[] {
	const {sources} = region.profiles;
	const cited = [
		...(taxon.lengthMm ? [{path: ['lengthMm'], source: taxon.lengthMm.source}] : []),
		...(taxon.widthMm ? [{path: ['widthMm'], source: taxon.widthMm.source}] : []),
		...(taxon.coast ? [{path: ['coast'], source: taxon.coast.source}] : []),
		...(taxon.protected ? [{path: ['protected'], source: taxon.protected.source}] : []),
		{path: ['described'], source: taxon.described.source},
		{path: ['fact'], source: taxon.fact.source},
		...taxon.notUsed.map(({source}, index) => ({path: ['notUsed', index], source})),
	];
	return cited
		.filter(({source}) => !Object.hasOwn(sources, source))
		.map(({path, source}) =>
			at(path, {
				what: `The source "${source}" is not listed.`,
				todo: 'Add it under "sources" with its citation.',
			}),
		);
}

function checkMeasure(name: string, measure: Measure | undefined, at: At): readonly Fault[] {
	if (!measure) return [];
	const {range, mean} = measure;
	const [low, high] = range;
	if (low >= high) {
		const what = `The range ${low} to ${high} mm runs backwards.`;
		return [at([name], {what, todo: 'Write the smaller end first.'})];
	}
	if (mean === undefined || (mean >= low && mean <= high)) return [];
	const what = `The mean of ${mean} mm lies outside ${low} to ${high} mm.`;
	return [at([name], {what, todo: 'Compare both with their source.'})];
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

function checkShares({region}: Checkable, taxon: Taxon, at: At): readonly Fault[] {
	const {characters} = region.key;
	return Object.entries(taxon.states).flatMap(([id, shares]) => {
		const character = characters[id];
		if (!character) {
			const todo = `Use one of ${quoted(Object.keys(characters))}.`;
			return [at(['states', id], {what: `"${id}" is no character of the key.`, todo})];
		}
		const unknown = Object.keys(shares).filter(state => !character.states.includes(state));
		const sum = Object.values(shares).reduce((total, share) => total + share, 0);
		return [
			...unknown.map(state =>
				at(['states', id], {
					what: `"${id}" has no state "${state}".`,
					todo: `Use ${quoted(character.states)}.`,
				}),
			),
			...(Math.abs(sum - 1) > slack
				? [
						at(['states', id], {
							what: `The shares of "${id}" sum to ${Number(sum.toFixed(4))}.`,
							todo: 'Make them sum to 1.',
						}),
					]
				: []),
		];
	});
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
