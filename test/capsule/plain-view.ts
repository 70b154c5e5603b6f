/** A view of a plane of which all is known, one millimetre a step. */
import type {FlatView} from '../../src/capsule/flat-view.ts';

/** A view so many steps across and down, from the origin on, without any tones. */
export function plainView(width: number, height: number): FlatView {
	const count = width * height;
	return {
		...{width, height, stepMm: 1, tones: new Float32Array(count * 3)},
		from: [0, 0],
		known: new Uint8Array(count).fill(1),
	};
}
