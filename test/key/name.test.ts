import {join} from 'node:path';
import {expect, test} from 'vitest';
import {rank} from '../../src/key/evidence.ts';
import {nameSpecimen} from '../../src/key/name.ts';
import {nothingObserved, type Observed} from '../../src/key/observed.ts';
import {readRegion} from '../../src/key/region.ts';
import {type Specimen, typicalSpecimens} from '../../src/key/specimen.ts';
import {compileKey} from '../../src/key/states.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const machine = compileKey(region);
const taxa = Object.entries(region.profiles.taxa);

const measured = (mm: number | undefined) =>
	mm === undefined ? undefined : ({kind: 'exact', mm, uncertaintyMm: 1} as const);
const observedOf = ({seen, lengthMm, widthMm, lost = []}: Specimen): Observed => ({
	seen,
	length: measured(lengthMm),
	width: measured(widthMm),
	lost,
});

test.each(taxa)('a middling specimen of %s is led to its own name and ranks first or second', (id, taxon) => {
	const named = nameSpecimen(region, machine, observedOf(typicalSpecimens(taxon).middle));
	expect(named.leaves).toContain(id);
	// A very rare taxon may stand behind a common one that looks like it.
	expect(named.ranking.slice(0, 2).map(({taxon: ranked}) => ranked)).toContain(id);
});

test('a name rests on what the key asks for and on the length, and on nothing else', () => {
	const [, taxon] = taxa.find(([id]) => id === 'raja-clavata') ?? [];
	if (!taxon) throw new Error('Expected a thornback ray');
	const specimen = observedOf(typicalSpecimens(taxon).middle);
	const {asked, observed, ranking} = nameSpecimen(region, machine, specimen);
	expect(asked).toEqual(['outline', 'keel', 'taper']);
	expect(Object.keys(observed.seen)).toEqual(asked);
	expect(observed.width).toBeUndefined();
	expect(ranking).toEqual(rank(region, observed));
	expect(ranking).not.toEqual(rank(region, specimen));
});

test('a specimen that shows nothing may be any taxon', () => {
	const {leaves} = nameSpecimen(region, machine, nothingObserved);
	expect([...leaves].sort()).toEqual(taxa.map(([id]) => id).sort());
});

test('a state that the key does not know is refused by name', () => {
	const specimen: Observed = {...nothingObserved, seen: {outline: 'round'}};
	expect(() => nameSpecimen(region, machine, specimen)).toThrow(/question "outline".*round/);
});
