/** A small picture in the ways that tell things apart: light, blue against yellow, red against green, and slopes. */
import {type Field, type Raster, smooth} from './raster.ts';
import type {Mask} from './regions.ts';

/** Light and two shades of colour, softened, and how they rise across and down. */
export type Shades = {readonly channels: readonly Field[]; readonly across: Field; readonly down: Field};

/** Works a small raster out into shades. */
export function shadesOf(raster: Raster): Shades {
	const channels = channelsOf(raster).map(channel => smooth(channel, 1));
	return {channels, ...slopesOf(channels)};
}

const lightLevels = {byArea: 8, byValue: 3};
const colourLevels = {byArea: 3, byValue: 4};

/** A way of making masks: by levels of light, by levels of both colours, or what lies between edges. */
export type Way = 'light' | 'colour' | 'edges';

/** Every mask by one way, and whether to look at what is of it or at what is not; one mask is gone with the next. */
export function* masksOf(
	{channels, across, down}: Shades,
	way: Way,
): Generator<{readonly mask: Mask; readonly of: 0 | 1}> {
	const {width, height} = across;
	const mask = {width, height, on: new Uint8Array(width * height)};
	if (way === 'edges') {
		const edges = steepness(across, down);
		for (const level of [3, 5, 9, 15, 27]) {
			mark(mask, edges, level);
			yield {mask, of: 0};
		}
		return;
	}
	for (const soft of way === 'light' ? channels.slice(0, 1) : channels.slice(1)) {
		for (const level of levelsOf(soft, way === 'light' ? lightLevels : colourLevels)) {
			mark(mask, soft, level);
			yield {mask, of: 1};
			yield {mask, of: 0};
		}
	}
}

/** Light, blue against yellow and red against green. */
function channelsOf({width, height, rgb}: Raster): readonly Field[] {
	const fieldOf = (): Field => ({width, height, values: new Float32Array(width * height)});
	const [light, bluish, reddish] = [fieldOf(), fieldOf(), fieldOf()];
	for (let at = 0, from = 0; from < rgb.length; at += 1, from += 3) {
		const red = rgb[from] ?? 0;
		const green = rgb[from + 1] ?? 0;
		const blue = rgb[from + 2] ?? 0;
		light.values[at] = 0.3 * red + 0.5 * green + 0.2 * blue;
		bluish.values[at] = blue - (red + green) / 2;
		reddish.values[at] = red - green;
	}
	return [light, bluish, reddish];
}

/** Levels that part the picture by area, and some that part it by value: a small card of its own colour is no large area. */
function levelsOf({values}: Field, {byArea, byValue}: {byArea: number; byValue: number}): readonly number[] {
	const some = new Float32Array(2000);
	for (let index = 0; index < some.length; index += 1)
		some[index] = values[Math.floor((index / some.length) * values.length)] ?? 0;
	some.sort();
	const at = (share: number) => some[Math.floor(share * some.length)] ?? 0;
	const [least, most] = [at(0.01), at(0.99)];
	const areas = Array.from({length: byArea}, (_, index) => at((index + 0.7) / (byArea + 0.4)));
	const steps = Array.from(
		{length: byValue},
		(_, index) => least + ((index + 1) / (byValue + 1)) * (most - least),
	);
	return [...new Set([...areas, ...steps])];
}

function mark({on}: Mask, {values}: Field, level: number): void {
	for (let index = 0; index < on.length; index += 1) on[index] = (values[index] ?? 0) > level ? 1 : 0;
}

function steepness(across: Field, down: Field): Field {
	const values = new Float32Array(across.values.length);
	for (let at = 0; at < values.length; at += 1) {
		const x = across.values[at] ?? 0;
		const y = down.values[at] ?? 0;
		values[at] = Math.sqrt(x * x + y * y);
	}
	return {width: across.width, height: across.height, values};
}

/** At each point the slope of the channel that is steepest there. */
function slopesOf(channels: readonly Field[]): {readonly across: Field; readonly down: Field} {
	const [first] = channels;
	if (!first) throw new Error('Expected at least one channel; got none');
	const {width, height} = first;
	const [across, down] = [new Float32Array(width * height), new Float32Array(width * height)];
	for (const {values} of channels) {
		for (let y = 1; y < height - 1; y += 1) {
			for (let x = 1; x < width - 1; x += 1) {
				const at = y * width + x;
				const gx = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
				const gy = (values[at + width] ?? 0) - (values[at - width] ?? 0);
				if (gx * gx + gy * gy <= (across[at] ?? 0) ** 2 + (down[at] ?? 0) ** 2) continue;
				across[at] = gx;
				down[at] = gy;
			}
		}
	}
	return {across: {width, height, values: across}, down: {width, height, values: down}};
}
