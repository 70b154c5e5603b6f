/** Faults in the shares of a taxon's states: forgotten characters, unknown states, sums. */
import {type At, type Checkable, quoted} from './checkable.ts';
import type {Taxon} from './region.ts';
import type {Fault} from './yaml.ts';

/** How far the shares of one character may be from 1 together. */
const slack = 0.001;

/** Every fault in what a taxon's profile says, or does not say, of each character. */
export function checkShares(checkable: Checkable, taxon: Taxon, at: At): readonly Fault[] {
	return [...checkSums(checkable, taxon, at), ...checkSilent(checkable, taxon, at)];
}

function checkSums({region}: Checkable, taxon: Taxon, at: At): readonly Fault[] {
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

/** A character is either described or said to be silent, so that none is forgotten. */
function checkSilent({region}: Checkable, {states, silent}: Taxon, at: At): readonly Fault[] {
	const known = Object.keys(region.key.characters);
	const forgotten = known.filter(id => !Object.hasOwn(states, id) && !silent.includes(id));
	const twice = silent.filter(id => Object.hasOwn(states, id));
	const strange = silent.filter(id => !known.includes(id));
	return [
		...forgotten.map(id =>
			at(['states'], {
				what: `The shares of "${id}" are missing.`,
				todo: `Write them, or put "${id}" under "silent" where no description tells.`,
			}),
		),
		...twice.map(id =>
			at(['silent'], {
				what: `"${id}" is said to be silent and has shares.`,
				todo: 'Take it out of one of the two.',
			}),
		),
		...strange.map(id =>
			at(['silent'], {
				what: `"${id}" under "silent" is no character of the key.`,
				todo: `Use one of ${quoted(known)}.`,
			}),
		),
	];
}
