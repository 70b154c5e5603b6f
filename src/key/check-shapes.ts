/** Faults in what is to be drawn: states without a drawing, taxa without looks, looks that contradict the states. */
import {type Checkable, inKey, inProfiles, quoted} from './checkable.ts';
import {commonestStates, nearestStates, taxonShape} from './drawn.ts';
import type {Character, Taxon} from './region.ts';
import {leavesOf} from './shape.ts';
import type {Fault} from './yaml.ts';

/** Every fault of the drawings of a region. */
export function checkShapes(checkable: Checkable): readonly Fault[] {
	const {key, profiles} = checkable.region;
	return [
		...Object.entries(key.characters).flatMap(([id, character]) => checkDraws(checkable, id, character)),
		...Object.entries(profiles.taxa).flatMap(([id, taxon]) => checkTaxon(checkable, id, taxon)),
	];
}

function checkDraws(checkable: Checkable, id: string, {draws = {}, states}: Character): readonly Fault[] {
	const at = (state: string, what: string, todo: string) =>
		inKey(checkable, ['characters', id, 'draws', state], {what, todo});
	const nothing = states.filter(state => leavesOf(draws[state] ?? {}).size === 0);
	const strangers = Object.keys(draws).filter(state => !states.includes(state));
	return [
		...nothing.map(state =>
			at(
				state,
				`The state "${state}" of "${id}" draws nothing.`,
				'Say under "draws" what of a case it stands for.',
			),
		),
		...strangers.map(state =>
			at(state, `"${id}" draws "${state}", which is no state of it.`, `Use ${quoted(states)}.`),
		),
		...(nothing.length > 0 ? [] : checkTwins(checkable, id, {draws, states})),
	];
}

/** Two states that are drawn alike cannot be told apart. */
function checkTwins(
	checkable: Checkable,
	id: string,
	{draws, states}: {draws: NonNullable<Character['draws']>; states: readonly string[]},
): readonly Fault[] {
	const looks = states.map(state => JSON.stringify([...leavesOf(draws[state] ?? {})].toSorted()));
	return states
		.filter((_, index) => looks.indexOf(looks[index] ?? '') < index)
		.map(state =>
			inKey(checkable, ['characters', id, 'draws', state], {
				what: `The state "${state}" of "${id}" is drawn like another one.`,
				todo: 'Draw what parts them.',
			}),
		);
}

function checkTaxon(checkable: Checkable, id: string, taxon: Taxon): readonly Fault[] {
	const at = (path: readonly string[], what: string, todo: string) =>
		inProfiles(checkable, ['taxa', id, ...path], {what, todo});
	const {shape} = taxon;
	if (!shape)
		return [
			at(
				[],
				`"${id}" has no shape.`,
				'Write what is known of its looks under "shape", or size and basis alone.',
			),
		];
	const isSized = taxon.lengthMm !== undefined && taxon.widthMm !== undefined;
	const faults = [
		...(isSized || shape.size
			? []
			: [
					at(
						['shape'],
						`"${id}" has neither published sizes nor a stand-in to be drawn at.`,
						'Write a "size" in its shape.',
					),
				]),
		...(isSized && shape.size
			? [
					at(
						['shape', 'size'],
						`"${id}" has a stand-in beside its published sizes.`,
						'Take it out; the published ones are drawn.',
					),
				]
			: []),
		...(shape.basis === undefined && (shape.source === undefined || shape.page === undefined)
			? [
					at(
						['shape'],
						`The shape of "${id}" does not say where it is from.`,
						'Write source and page, or a basis.',
					),
				]
			: []),
		...(shape.source === undefined || Object.hasOwn(checkable.region.profiles.sources, shape.source)
			? []
			: [
					at(
						['shape', 'source'],
						`The source "${shape.source}" is not listed.`,
						'Add it under "sources" with its citation.',
					),
				]),
	];
	return faults.length > 0 ? faults : checkContradictions(checkable, id, taxon);
}

function checkContradictions(checkable: Checkable, id: string, taxon: Taxon): readonly Fault[] {
	const {shape} = taxonShape(checkable.region, id);
	return commonestStates(checkable.region, taxon).flatMap(({id: name, character, state}) => {
		const nearest = nearestStates(character, shape);
		if (nearest.length === 1 && nearest[0] === state) return [];
		return [
			inProfiles(checkable, ['taxa', id, 'shape'], {
				what: `"${id}" is mostly "${state}" in "${name}", but its shape looks like ${quoted(nearest)}.`,
				todo: 'Compare its shape and sizes with what the states of the character draw.',
			}),
		];
	});
}
