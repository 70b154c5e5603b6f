/** How far apart two points are. */
import type {Degrees} from './grid.ts';

// Mean radius of the earth, International Union of Geodesy and Geophysics (from memory).
const earthM = 6_371_009;

/** Metres between two points on a sphere as large as the earth; within 0.6 % of the geodesic. */
export function distanceM(one: Degrees, other: Degrees): number {
	const radians = (degrees: number) => (degrees * Math.PI) / 180;
	const half =
		Math.sin(radians(other.latitude - one.latitude) / 2) ** 2 +
		Math.cos(radians(one.latitude)) *
			Math.cos(radians(other.latitude)) *
			Math.sin(radians(other.longitude - one.longitude) / 2) ** 2;
	return 2 * earthM * Math.asin(Math.min(1, Math.sqrt(half)));
}
