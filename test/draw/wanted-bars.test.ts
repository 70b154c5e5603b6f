import {join} from 'node:path';
import {expect, test} from 'vitest';
import {drawWantedBars} from '../../src/draw/wanted-bars.ts';
import {readRegion} from '../../src/key/region.ts';
import {readTexts} from '../../src/text/text.ts';

const flows = join(import.meta.dirname, '../../flows');
const from = {
	region: readRegion(flows, 'british-isles'),
	say: readTexts([join(import.meta.dirname, '../../src/text'), flows, join(flows, 'british-isles')]).in('en'),
};
const wanted = (...bars: Parameters<typeof drawWantedBars>[0]['bars']) =>
	drawWantedBars({kind: 'bars', region: 'british-isles', language: 'en', heading: 'Today', bars}, from);

test('a bar of a kind has its small drawing, and one that is no kind of the region stands there in words', () => {
	const drawn = (taxon: string | undefined) =>
		wanted({label: 'A kind', count: 2, ...(taxon === undefined ? {} : {taxon})}).svg.match(/<svg /g)?.length;
	expect(drawn('raja-clavata')).toBe(2);
	expect(drawn('testa-prima')).toBe(1);
	expect(drawn(undefined)).toBe(1);
});

test('the words beside the picture hold every figure of it', () => {
	const {plain, alt} = wanted(
		{label: 'Thornback ray', scientificName: 'Raja clavata', count: 7, taxon: 'raja-clavata'},
		{label: 'One of several kinds', count: 3},
	);
	expect(plain).toBe('Today\nThornback ray (Raja clavata): 7\nOne of several kinds: 3');
	expect(alt).toContain('10 cases of 2 kinds');
});
