/** Whether a four-sided thing can be paper: nearly the brightest there is, and hardly coloured, whatever the light. */
import {type Corners, middleOf} from './four-sided.ts';
import {median} from './median.ts';
import {type Point, type Raster, readColour} from './raster.ts';

/** Tells whether what lies just inside an outline can be paper. */
export type PaperTest = (corners: Corners) => boolean;

/** Makes the test for one photo. */
export function makePaperTest(raster: Raster): PaperTest {
	const bright = brightOf(raster);
	return corners => {
		const [cx, cy] = middleOf(corners);
		const colour = new Float32Array(3);
		const [lights, tones]: [number[], number[]] = [[], []];
		for (const [index, [x, y]] of corners.entries()) {
			const [nextX, nextY] = corners[(index + 1) % 4] ?? [x, y];
			for (let share = 0.05; share < 1; share += 0.1) {
				const at = [x + share * (nextX - x), y + share * (nextY - y)] as const;
				const inside: Point = [at[0] + 0.06 * (cx - at[0]), at[1] + 0.06 * (cy - at[1])];
				if (!readColour(raster, ...inside, colour)) continue;
				const most = Math.max(...colour);
				lights.push(colour[1] ?? 0);
				tones.push((most - Math.min(...colour)) / (most + 1));
			}
		}
		return median(lights) > 0.45 * bright && median(tones) < 0.42;
	};
}

/** The green of the brightest twentieth of a photo. */
function brightOf({rgb}: Raster): number {
	const some = new Uint8Array(2000);
	for (let index = 0; index < some.length; index += 1)
		some[index] = rgb[Math.floor((index * rgb.length) / (3 * some.length)) * 3 + 1] ?? 0;
	return some.sort()[Math.floor(0.95 * some.length)] ?? 255;
}
