import {join} from 'node:path';
import {expect, test} from 'vitest';
import {drawWantedChart} from '../../src/draw/wanted-charts.ts';
import {projectRoot} from '../../src/settings.ts';
import {readTexts} from '../../src/text/text.ts';

const say = readTexts([join(projectRoot(), 'src', 'text')]).in('en');
const wanted = {kind: 'map', region: 'british-isles', language: 'en', heading: 'Spring walk'} as const;

test('a map that waited as data is drawn on the coast that it needs, with its words', () => {
	const places = [
		{kind: 'point' as const, latitude: 50.103, longitude: -5.543, count: 2},
		{kind: 'square' as const, south: 50.1, west: -5.6, north: 50.2, east: -5.5, count: 1},
	];
	const {alt, svg} = drawWantedChart({...wanted, places}, say);
	expect(alt).toContain('Spring walk. A map with 3 cases at one place');
	// Land was there to be drawn.
	expect(svg).toMatch(/<path d="M[^"]{200,}"/);
});
