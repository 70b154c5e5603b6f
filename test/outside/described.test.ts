/** Each egg case whose size was described is named to a shortlist that holds it, in each region where it is found. */
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {nameSpecimen} from '../../src/key/name.ts';
import {readRegion} from '../../src/key/region.ts';
import {typicalSpecimens} from '../../src/key/specimen.ts';
import {compileKey} from '../../src/key/states.ts';
import {described} from './described.ts';

const flows = join(import.meta.dirname, '../../flows');
const regions = ['british-isles', 'north-east-pacific', 'western-mediterranean'].map(id => {
	const region = readRegion(flows, id);
	return {id, region, machine: compileKey(region)};
});
const ids = regions.map(({id}) => id);

const specimens = regions.flatMap(({id, region, machine}) =>
	Object.entries(region.profiles.taxa).flatMap(([kind, taxon]) => {
		const {middle} = typicalSpecimens(taxon);
		return (described[kind] ?? [])
			.filter(([, , , only = id]) => only === id)
			.map(([lengthMm, widthMm, source]) => {
				// Where one figure is flagged suspect, or was not given, the middle of the profile stands in.
				const length = exact(lengthMm ?? middle.lengthMm);
				const width = exact(widthMm ?? middle.widthMm);
				const {conclusion} = nameSpecimen(region, machine, {seen: middle.seen, length, width, lost: []});
				const isHeld = [...conclusion.names, ...conclusion.also].some(({taxon}) => taxon === kind);
				return {id, kind, size: `${lengthMm ?? '?'} x ${widthMm ?? '?'} mm`, source, isHeld};
			});
	}),
);

test('every kind of every region is described by its size, but for three without one', () => {
	const silent = regions.flatMap(({region}) =>
		Object.keys(region.profiles.taxa).filter(id => !described[id]),
	);
	// No size was found of a horn shark's, a swell shark's and a Maltese skate's case.
	expect(silent).toEqual(['heterodontus-francisci', 'cephaloscyllium-ventriosum', 'leucoraja-melitensis']);
	expect(Object.keys(described)).toHaveLength(31);
	const kinds = (id: string) => new Set(specimens.filter(one => one.id === id).map(({kind}) => kind)).size;
	expect(ids.map(kinds)).toEqual([13, 10, 17]);
	expect(ids.map(id => specimens.filter(one => one.id === id).length)).toEqual([82, 18, 89]);
});

/**
 * Described cases that our profiles are too narrow for. One more must not come; one that is held at last leaves
 * this list. FishBase's range is wider than the profile; the undulate ray is one that its authors call aberrant;
 * the long-nosed skates are of the British Isles, where this kind is not in the key, and larger than those of
 * Sardinia that the profile rests on.
 */
const missed = [
	['raja-microocellata', '66 x 41 mm', 'british-isles'],
	['raja-undulata', '107 x 40.5 mm', 'british-isles'],
	['raja-undulata', '107 x 40.5 mm', 'western-mediterranean'],
	['dipturus-oxyrinchus', '128 x 74 mm', 'western-mediterranean'],
	['dipturus-oxyrinchus', '133 x 101 mm', 'western-mediterranean'],
	['dipturus-oxyrinchus', '133 x 79.5 mm', 'western-mediterranean'],
];

test('six described cases are not held by their lists, and no other', () => {
	expect(specimens.filter(({isHeld}) => !isHeld).map(({kind, size, id}) => [kind, size, id])).toEqual(missed);
});

const held = specimens
	.filter(
		({kind, size, id}) =>
			!missed.some(([other, ...rest]) => other === kind && rest.join() === `${size},${id}`),
	)
	.map(({kind, size, source, id, isHeld}) => [kind, size, source, id, isHeld] as const);

test.each(held)('a typical %s of %s (%s) is named in %s to a list that holds it', (...row) => {
	expect(row.at(-1)).toBe(true);
});

function exact(mm: number | undefined) {
	return mm === undefined ? undefined : ({kind: 'exact', mm, uncertaintyMm: 1} as const);
}
