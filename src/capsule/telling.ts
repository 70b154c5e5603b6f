/** Tells what lies on the ground from the ground and its shadows, point by point, by colour. */
import type {FlatView} from './flat-view.ts';
import type {Ground} from './ground.ts';
import {type Field, smooth} from './raster.ts';

/** How much rather a colour is of something lying there than of bare ground, as a logarithm; zero is undecided. */
export type Oddness = (light: number, red: number, blue: number) => number;

/** What was told: the oddness of each point of the view, that of each colour, and that by the rule for shadows alone. */
export type Told = {readonly field: Field; readonly oddness: Oddness; readonly rule: Oddness};

/** Bins of light by red by blue; light in steps of 0.1 from -3.2 to 0.8, colours of 0.06 from -0.96 to 0.96. */
const lights = 40;
const tones = 32;
const lightStep = 0.1;
const toneStep = 0.06;

/** Tells by a rule first, then by the colours that the rule found on both sides. */
export function tellApart(view: FlatView, ground: Ground, shade = 1): Told {
	const rule = ruleFor(ground, shade);
	const {ruled, bins} = look(view, ground, rule);
	const size = {width: view.width, height: view.height};
	const learnt = learn(bins, smooth({...size, values: ruled}, 1));
	const oddness: Oddness = (light, red, blue) =>
		0.5 * rule(light, red, blue) + (learnt[binOf(light, red, blue)] ?? 0);
	for (let at = 0; at < ruled.length; at += 1) {
		const bin = bins[at] ?? -1;
		if (bin >= 0) ruled[at] = 0.5 * (ruled[at] ?? 0) + (learnt[bin] ?? 0);
	}
	return {field: smooth({...size, values: ruled}, 1), oddness, rule};
}

/** What the rule says of each point, and the bin of its colour; -1 for both where nothing is known. */
function look(
	{width, height, tones, known}: FlatView,
	{differAlong}: Ground,
	rule: Oddness,
): {readonly ruled: Float32Array; readonly bins: Int32Array} {
	const ruled = new Float32Array(known.length).fill(-1);
	const bins = new Int32Array(known.length).fill(-1);
	const row = new Float32Array(width * 3);
	for (let at = 0, y = 0; y < height; y += 1) {
		differAlong(tones.subarray(at * 3, (at + width) * 3), y, row);
		for (let from = 0; from < row.length; from += 3, at += 1) {
			if (known[at] !== 1) continue;
			// One by one: a list made and taken apart for each point would be rubbish by the megabyte.
			const light = row[from] ?? 0;
			const red = row[from + 1] ?? 0;
			const blue = row[from + 2] ?? 0;
			ruled[at] = rule(light, red, blue);
			bins[at] = binOf(light, red, blue);
		}
	}
	return {ruled, bins};
}

/**
 * Shadow is darker and hardly another colour; what lies there is of another colour or darker than any shadow. That a
 * shadow takes no more than six tenths of the light, and may turn a little blue, is common practice.
 */
function ruleFor({colourSpread, lightSpread}: Ground, shade: number): Oddness {
	const toned = Math.max(0.09, 3.5 * colourSpread);
	const deep = shade * (1.02 + Math.min(0.6, 2.5 * lightSpread));
	return (light, red, blue) => {
		const dark = Math.max(0, -light);
		const bluish = Math.max(0, blue) * 0.5 + Math.min(0, blue);
		const colour = Math.sqrt(red * red + bluish * bluish) / (toned * (1 + 0.6 * dark));
		const depth = dark / deep;
		const most = Math.max(colour, depth);
		return Math.max(-3, Math.min(4, 3 * (most - 1)));
	};
}

/** How much rather the colours of each bin are of what was told odd, as a logarithm. */
function learn(bins: Int32Array, {values}: Field): Float32Array {
	const [odd, plain] = [new Float32Array(lights * tones * tones), new Float32Array(lights * tones * tones)];
	for (let at = 0; at < bins.length; at += 1) {
		const bin = bins[at] ?? -1;
		if (bin < 0) continue;
		const side = (values[at] ?? 0) > 0 ? odd : plain;
		side[bin] = (side[bin] ?? 0) + 1;
	}
	soften(odd);
	soften(plain);
	// Counts and not shares: shadows are a small part of the ground, and would lose against any part of a case.
	for (let bin = 0; bin < odd.length; bin += 1) {
		const ratio = ((odd[bin] ?? 0) + 1.5) / ((plain[bin] ?? 0) + 1.5);
		odd[bin] = ratio === 1 ? 0 : Math.max(-3, Math.min(3, 0.8 * Math.log(ratio)));
	}
	return odd;
}

function binOf(light: number, red: number, blue: number): number {
	const l = Math.max(0, Math.min(lights - 1, Math.floor((light + 3.2) / lightStep)));
	const r = Math.max(0, Math.min(tones - 1, Math.floor((red + 0.96) / toneStep)));
	const b = Math.max(0, Math.min(tones - 1, Math.floor((blue + 0.96) / toneStep)));
	return (l * tones + r) * tones + b;
}

/** Neighbouring bins lend each other a share, along each of the three. */
function soften(bins: Float32Array): void {
	const other = new Float32Array(bins.length);
	for (const step of [1, tones, tones * tones]) {
		for (let at = 0; at < bins.length; at += 1) {
			other[at] = 0.5 * (bins[at] ?? 0) + 0.25 * ((bins[at - step] ?? 0) + (bins[at + step] ?? 0));
		}
		bins.set(other);
	}
}
