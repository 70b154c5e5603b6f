import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import sharp from 'sharp';
import {expect, test} from 'vitest';
import {crossingsIn, depthsOf, layersOf} from '../../src/cli/diagram-layers.ts';
import {planOf, sizes} from '../../src/cli/diagram-places.ts';
import {svgOf} from '../../src/cli/diagram-svg.ts';
import {type Diagram, diagramOf, shortQuestion} from '../../src/key/diagram.ts';
import {readRegion} from '../../src/key/region.ts';
import {compileKey} from '../../src/key/states.ts';
import {readTexts} from '../../src/text/text.ts';
import {projectWith, run} from './project.ts';

const flows = join(import.meta.dirname, '../../flows');
const region = readRegion(flows, 'british-isles');
const diagram = diagramOf(region, readTexts([flows, join(flows, 'british-isles')]).in('en'));

const small = (...ways: readonly (readonly [string, string])[]): Diagram => ({
	region: 'Testland',
	begins: 'a',
	boxes: [...new Set(ways.flat())].map(id => ({id, kind: 'question', title: id, text: ''})),
	ways: ways.map(([from, to]) => ({from, to, label: `${from} to ${to}`})),
});

test('the drawing has a box for each state of the machine but those that are its own', () => {
	const own = new Set(['waiting', 'crossing', 'done']);
	const states = Object.keys(compileKey(region).states).filter(id => !own.has(id));
	expect(diagram.boxes.map(({id}) => id).sort()).toEqual(states.sort());
});

test('the drawing has the arrows of the machine', () => {
	const {states} = compileKey(region);
	for (const {id, kind} of diagram.boxes) {
		if (kind === 'taxon') continue;
		const targets = states[id]?.always?.flatMap(({target}) => target?.map(state => state.key) ?? []) ?? [];
		const drawn = diagram.ways.filter(({from}) => from === id).map(({to}) => to);
		expect(new Set(drawn)).toEqual(new Set(targets));
	}
});

test('arrows bear the words of the button or the sizes of the band', () => {
	const labels = (from: string) => diagram.ways.filter(way => way.from === from).map(({label}) => label);
	expect(labels('keel')).toEqual(['Yes, a thin blade', 'No blade at all']);
	expect(labels('broad-length')).toEqual(['below 67 mm', '67 to below 105 mm', '105 mm or more']);
});

test('each box stands below all that lead to it', () => {
	const depths = depthsOf(small(['a', 'b'], ['a', 'c'], ['b', 'c'], ['c', 'd'], ['a', 'd']));
	expect(Object.fromEntries(depths)).toEqual({a: 0, b: 1, c: 2, d: 3});
});

test('a long arrow bends in every layer between its ends', () => {
	const {routes} = layersOf(small(['a', 'b'], ['b', 'c'], ['a', 'c']));
	expect(routes.map(({through}) => through.length)).toEqual([2, 2, 3]);
});

test('arrows that need not cross do not', () => {
	const {layers, links} = layersOf(
		small(['a', 'b'], ['a', 'c'], ['b', 'e'], ['c', 'd'], ['b', 'd'], ['b', 'f']),
	);
	expect(crossingsIn(layers, links)).toBe(0);
});

test('a key that runs in a loop is not drawn, and the loop is named', () => {
	expect(() => depthsOf(small(['a', 'b'], ['b', 'c'], ['c', 'b']))).toThrow(/without a loop; got .*b → c/);
});

test('no two boxes of the British Isles overlap', () => {
	const {places, width, height} = planOf(diagram);
	const boxes = diagram.boxes.map(({id}) => places.get(id) ?? {middle: Number.NaN, top: Number.NaN});
	for (const [index, one] of boxes.entries()) {
		expect(one.middle - sizes.boxWidth / 2).toBeGreaterThanOrEqual(0);
		expect(one.middle + sizes.boxWidth / 2).toBeLessThanOrEqual(width);
		expect(one.top + sizes.boxHeight).toBeLessThanOrEqual(height);
		for (const other of boxes.slice(index + 1)) {
			const apart = Math.abs(one.middle - other.middle) >= sizes.boxWidth;
			expect(apart || Math.abs(one.top - other.top) >= sizes.boxHeight).toBe(true);
		}
	}
});

test('a box shows the last question of its sentence, cut at a word', () => {
	expect(shortQuestion('Look closely. Is it round? Wet it first.')).toBe('Is it round?');
	expect(shortQuestion('Just look.')).toBe('Just look.');
	const cut = shortQuestion(`Is it ${'very '.repeat(30)}long?`);
	expect(cut.length).toBeLessThanOrEqual(85);
	expect(cut).toMatch(/very…$/);
});

test('a region is drawn into two files that are named as they are written', async () => {
	const root = projectWith();
	const {said, exitCode} = await run(['draw', 'british-isles', '--out', 'drawn'], {root});
	expect(said).toBe('drawn/british-isles.svg\ndrawn/british-isles.mmd');
	expect(exitCode).toBe(0);
	const svg = readFileSync(join(root, 'drawn/british-isles.svg'), 'utf8');
	expect(svg).toContain('Thornback ray');
	expect(svg).toContain('Can’t tell: every way out of the question stays open.');
	const mermaid = readFileSync(join(root, 'drawn/british-isles.mmd'), 'utf8');
	expect(mermaid.split('\n')).toContain('stateDiagram-v2');
});

test('the state diagram names each state once and uses no id that it did not name', async () => {
	const {said} = await run(['draw', 'british-isles', '--stdout', 'mermaid']);
	const named = [...said.matchAll(/^\tstate ".*" as (\w+)$/gm)].map(([, id]) => id);
	expect(new Set(named).size).toBe(diagram.boxes.length);
	const used = [...said.matchAll(/^\t(\S+) --> (\S+?)(?: :.*)?$/gm)].flatMap(([, from, to]) => [from, to]);
	// One arrow in, one out of each taxon, and those of the key.
	expect(used.length / 2).toBe(diagram.ways.length + 1 + Object.keys(region.profiles.taxa).length);
	expect(used.filter(id => id !== '[*]' && !named.includes(id))).toEqual([]);
});

test('words that mean something to XML are written out', async () => {
	const root = projectWith({
		in: 'british-isles/en.ftl',
		find: 'option-keel-none = No blade at all',
		put: 'option-keel-none = None <at> all & "no"',
	});
	const {said} = await run(['draw', 'british-isles', '--stdout', 'svg'], {root});
	expect(said).toContain('&lt;at&gt;');
	expect(said).not.toContain('<at>');
});

test('a region with a fault is not drawn', async () => {
	const root = projectWith({in: 'british-isles/key.yaml', find: 'leads: net}', put: 'leads: nets}'});
	const {said, complained, exitCode} = await run(['draw', 'british-isles', '--stdout', 'svg'], {root});
	expect(said).toBe('');
	expect(complained).toContain('"broad-length" leads to "nets"');
	expect(exitCode).toBe(1);
});

test('an unknown kind of drawing is refused', async () => {
	const {complained, exitCode} = await run(['draw', 'british-isles', '--stdout', 'png']);
	expect(complained).toBe('Expected --stdout svg or --stdout mermaid; got "png"');
	expect(exitCode).toBe(2);
});

test.each([
	'Testland',
	'British Isles',
	'Eastern North Pacific',
	'Western Mediterranean',
	'Great Maws and the Wide Waters of the Warm Middle West',
])('the name %s does not run into the note beside it', async name => {
	const svg = svgOf({...small(['a', 'b']), region: name});
	const [, viewBox = ''] = /viewBox="0 0 ([\d.]+) /.exec(svg) ?? [];
	const [, left = '', wide = ''] = /<rect x="([\d.]+)" y="16" width="([\d.]+)"/.exec(svg) ?? [];
	const [text = ''] = /<text x="28" y="44".*?<\/text>/.exec(svg) ?? [];
	const paper = '<rect width="1600" height="60" fill="white"/>';
	const alone = `<svg xmlns="http://www.w3.org/2000/svg" width="1600" height="60" font-family="DejaVu Sans, Verdana, sans-serif">${paper}${text}</svg>`;
	const {info} = await sharp(Buffer.from(alone)).trim().toBuffer({resolveWithObject: true});
	const end = -(info.trimOffsetLeft ?? 0) + info.width;
	expect(end).toBeGreaterThan(28 + 5 * name.length);
	expect(end).toBeLessThan(Number(left));
	expect(Number(left) + Number(wide)).toBeLessThan(Number(viewBox));
});
