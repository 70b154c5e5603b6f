/** Squares on a map as tests want them: cells of a twentieth of a degree. */
import type {Box} from '../../src/draw/coastline.ts';

const perDegree = 20;

/** The cell that holds a spot. */
export function cellAt(latitude: number, longitude: number): Box {
	const [south, west] = [latitude, longitude].map(degrees => Math.floor(degrees * perDegree) / perDegree);
	return {
		south: south ?? 0,
		west: west ?? 0,
		north: (south ?? 0) + 1 / perDegree,
		east: (west ?? 0) + 1 / perDegree,
	};
}
