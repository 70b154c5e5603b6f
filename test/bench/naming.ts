/** How many specimens a second the key names. */
import {nameSpecimen} from '../../src/key/name.ts';
import type {Region} from '../../src/key/region.ts';
import {typicalSpecimens} from '../../src/key/specimen.ts';
import {compileKey} from '../../src/key/states.ts';

const rounds = 20;

/** Rows of the table: typical specimens of every taxon, small, middling and large, named again and again. */
export function measureNaming(region: Region): readonly (readonly string[])[] {
	const machine = compileKey(region);
	const specimens = Object.values(region.profiles.taxa)
		.flatMap(taxon => Object.values(typicalSpecimens(taxon)))
		.map(({seen, lengthMm, widthMm}) => ({
			seen,
			lost: [],
			length: sizeOf(lengthMm),
			width: sizeOf(widthMm),
		}));
	const nameAll = () => specimens.map(specimen => nameSpecimen(region, machine, specimen));
	nameAll();
	const began = performance.now();
	for (let round = 0; round < rounds; round += 1) nameAll();
	const seconds = (performance.now() - began) / 1000;
	return [['specimens a second', ((specimens.length * rounds) / seconds).toFixed(0)]];
}

function sizeOf(mm: number | undefined) {
	return mm === undefined ? {kind: 'unknown' as const} : {kind: 'exact' as const, mm, uncertaintyMm: 1};
}
