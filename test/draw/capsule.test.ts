/** Cases of every kind, measured from the pixels they are drawn with. */
import {join} from 'node:path';
import sharp from 'sharp';
import {describe, expect, test} from 'vitest';
import {regionsIn} from '../../src/cli/regions.ts';
import {drawCapsule, type Look} from '../../src/draw/capsule.ts';
import {colours} from '../../src/draw/palette.ts';
import {taxonShape} from '../../src/key/drawn.ts';
import {readRegion} from '../../src/key/region.ts';
import {plainShape, type Shape, withParts} from '../../src/key/shape.ts';

const root = join(import.meta.dirname, '../..');
const kinds = regionsIn(root).flatMap(id => {
	const region = readRegion(join(root, 'flows'), id);
	return Object.keys(region.profiles.taxa).map(taxon => ({name: `${taxon} of ${id}`, region, taxon}));
});

test.each(kinds)('the body of $name is as long and as wide as its millimetres', async ({region, taxon}) => {
	const {shape} = taxonShape(region, taxon);
	const {widthMm, lengthMm} = await measured(shape);
	expect(Math.abs(lengthMm / shape.size.lengthMm - 1)).toBeLessThan(0.01);
	expect(Math.abs(widthMm / shape.size.widthMm - 1)).toBeLessThan(0.01);
	const measures = region.profiles.taxa[taxon];
	if (measures?.lengthMm) expect(shape.size.lengthMm).toBeGreaterThanOrEqual(measures.lengthMm.range[0]);
	if (measures?.lengthMm) expect(shape.size.lengthMm).toBeLessThanOrEqual(measures.lengthMm.range[1]);
});

test('a body drawn ten per cent too wide would be measured so', async () => {
	const wide = withParts(plainShape, {size: {lengthMm: 75, widthMm: 55}});
	expect((await measured(wide)).widthMm / plainShape.size.widthMm).toBeCloseTo(1.1, 2);
});

describe('what a shape says is what is drawn', () => {
	const svgOf = (shape: Shape, look: Partial<Look> = {}) => drawCapsule(shape, {unitsPerMm: 5, ...look}).svg;
	const reach = (shape: Shape) => drawCapsule(shape, {unitsPerMm: 5}).box;

	test('a longer horn reaches further out, and the body stays', async () => {
		const long = withParts(plainShape, {frontHorns: {length: 0.9, turn: 0, hook: 0}});
		expect(reach(long).top).toBeLessThan(reach(plainShape).top - 30);
		expect((await measured(long)).lengthMm).toBeCloseTo(75, 0);
	});

	test('a horn is as long along its curve as its share of the case', () => {
		const straight = withParts(plainShape, {frontHorns: {length: 1, turn: 0, hook: 0}});
		// From its foot at the closed part; it leans outwards by six degrees.
		const foot = -75 / 2 + 0.07 * 75 + 0.2 * 0.12 * 50;
		expect(foot - reach(straight).top).toBeCloseTo(75 * Math.cos((6 * Math.PI) / 180), 0);
	});

	test.each([
		['tendrils', {tendrils: {front: 1, back: 1}}],
		['blades', {blades: {width: 0.1}}],
		['hairs along the sides', {rim: {hairs: true}}],
		['a net', {surface: {net: true}}],
		['two ridges', {surface: {ridges: true}}],
		['prickles', {surface: {prickles: true}}],
		['hairs', {surface: {hairs: true}}],
		['bark', {surface: {bark: true}}],
		['fur', {surface: {fur: true}}],
		['strong lines', {grain: {strength: 'strong'}}],
		['a screw', {form: {kind: 'screw'}}],
		['a bulging apron', {frontApron: {border: 'bulging'}}],
	] as const)('%s changes the drawing', (_, part) => {
		expect(svgOf(withParts(plainShape, part))).not.toBe(svgOf(plainShape));
	});

	test('a smoother underside is bare of fur, a like one is not', () => {
		const furry = (under: 'same' | 'smoother') => withParts(plainShape, {surface: {fur: true, under}});
		expect(svgOf(furry('smoother'), {view: 'under'})).toBe(svgOf(plainShape));
		expect(svgOf(furry('same'), {view: 'under'})).toBe(svgOf(furry('same')));
	});

	test('from the side a rising horn stands higher than the dome', () => {
		const look = {unitsPerMm: 5, view: 'side'} as const;
		const dome = plainShape.dome.above * plainShape.size.widthMm;
		const risen = withParts(plainShape, {backHorns: {length: 0.5, rises: true}});
		expect(-drawCapsule(plainShape, look).box.top).toBeCloseTo(dome, 0);
		expect(-drawCapsule(risen, look).box.top).toBeGreaterThan(dome * 1.2);
	});
});

test.each(['horns', 'sides', 'aprons'] as const)('lost %s are drawn pale and broken', part => {
	const shape = withParts(plainShape, {blades: {width: 0.1}});
	const whole = drawCapsule(shape, {unitsPerMm: 5}).svg;
	const worn = drawCapsule(shape, {unitsPerMm: 5, lost: [part]}).svg;
	expect(whole).not.toContain(colours.faded);
	expect(worn).toContain(colours.faded);
	expect(worn).toContain('stroke-dasharray');
});

test('nothing that is drawn holds a number that is none', () => {
	for (const {region, taxon} of kinds) {
		const {shape} = taxonShape(region, taxon);
		for (const view of ['above', 'under', 'side', 'cut'] as const) {
			expect(drawCapsule(shape, {unitsPerMm: 4, view}).svg).not.toMatch(/NaN|undefined|Infinity/);
		}
	}
});

/** The body alone, ten pixels to a millimetre, measured by its outermost dark pixels. */
async function measured(shape: Shape): Promise<{lengthMm: number; widthMm: number}> {
	const {lengthMm, widthMm} = shape.size;
	const perMm = Math.min(10, 1200 / lengthMm);
	const {svg} = drawCapsule(shape, {unitsPerMm: perMm, only: 'body'});
	const [wide, high] = [Math.ceil(widthMm * perMm * 1.6), Math.ceil(lengthMm * perMm * 1.6)];
	const page = `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}"><rect width="100%" height="100%" fill="#fff"/><g transform="translate(${wide / 2} ${high / 2}) scale(${perMm})">${svg}</g></svg>`;
	const {data, info} = await sharp(Buffer.from(page), {density: 72})
		.greyscale()
		.raw()
		.toBuffer({resolveWithObject: true});
	let [left, right, top, bottom] = [info.width, -1, info.height, -1];
	for (let y = 0; y < info.height; y++) {
		for (let x = 0; x < info.width; x++) {
			if ((data[(y * info.width + x) * info.channels] ?? 255) > 127) continue;
			[left, right] = [Math.min(left, x), Math.max(right, x)];
			[top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
		}
	}
	return {lengthMm: (bottom - top + 1) / perMm, widthMm: (right - left + 1) / perMm};
}
