/** Where things stand on a map: its cut, its projection and its scale. */
import proj4 from 'proj4';
import type {Box} from './coastline.ts';

/**
 * A place on a map, in degrees on WGS 84, with how many cases. A blurred place comes as its square and without the
 * spot, so that no map can give the spot away.
 */
export type MapPlace =
	| {readonly kind: 'point'; readonly latitude: number; readonly longitude: number; readonly count: number}
	| ({readonly kind: 'square'; readonly count: number} & Box);

/** A cut of the earth on a plane, x to the right and y down in units of the drawing. */
export type MapFrame = {
	readonly widthUnits: number;
	readonly heightUnits: number;
	/** True in the middle; at the edges within 0.1 % on a map 1,000 km across. */
	readonly metresPerUnit: number;
	readonly project: (longitude: number, latitude: number) => readonly [x: number, y: number];
	/** Holds the whole frame: what has to be known of the coast. */
	readonly box: Box;
};

/** Smaller, and a coast of 1:10 million is a line without a shape. */
const leastAcrossM = 25_000;
/** Left free round the outermost places, in parts of the map. */
const margin = 0.14;
/** Height by width: what looks well above and below in a chat. */
const shapes = {flattest: 0.7, tallest: 1.3} as const;
/** Beyond a third of the round of the earth no flat map is true enough. */
const widestDegrees = 120;

/** The frame that holds all places, at least 25 km across; throws without a place, or when they are too far apart. */
export function frameAround(places: readonly MapPlace[], widthUnits: number): MapFrame {
	const bounds = boundsOf(places);
	const latitude = (bounds.south + bounds.north) / 2;
	const longitude = (bounds.west + bounds.east) / 2;
	// Equal areas about the middle of the map: a square looks alike wherever it lies. Without x_0 and y_0 proj4 gives NaN.
	const plane = proj4(
		`+proj=laea +lat_0=${latitude} +lon_0=${longitude} +x_0=0 +y_0=0 +ellps=WGS84 +units=m +no_defs`,
	);
	const reach = {across: leastAcrossM / 2, up: (leastAcrossM * shapes.flattest) / 2};
	for (const corner of places.flatMap(cornersOf)) {
		const [x = 0, y = 0] = plane.forward([...corner]);
		reach.across = Math.max(reach.across, Math.abs(x) / (1 - 2 * margin));
		reach.up = Math.max(reach.up, Math.abs(y) / (1 - 2 * margin));
	}
	const shape = Math.min(shapes.tallest, Math.max(shapes.flattest, reach.up / reach.across));
	const heightUnits = Math.round(widthUnits * shape);
	const metresPerUnit = Math.max((2 * reach.across) / widthUnits, (2 * reach.up) / heightUnits);
	const size = {widthUnits, heightUnits, metresPerUnit};
	return {
		...size,
		project: (east, north) => {
			const [x = 0, y = 0] = plane.forward([east, north]);
			return [widthUnits / 2 + x / metresPerUnit, heightUnits / 2 - y / metresPerUnit];
		},
		box: boxOf(size, longitude, point => plane.inverse([...point])),
	};
}

/** The corners of a place as longitude and latitude: of a square four, of a point one. */
export function cornersOf(place: MapPlace): readonly (readonly [number, number])[] {
	if (place.kind === 'point') return [[place.longitude, place.latitude]];
	const {south, west, north, east} = place;
	return [
		[west, south],
		[east, south],
		[east, north],
		[west, north],
	];
}

function boundsOf(places: readonly MapPlace[]): Box {
	const corners = places.flatMap(cornersOf);
	const [first] = corners;
	if (!first) throw new Error('Expected at least one place to draw a map of; got none');
	// From the first place the short way round, so that a map may lie across the date line.
	const longitudes = corners.map(([longitude]) => first[0] + shortWay(longitude - first[0]));
	const latitudes = corners.map(([, latitude]) => latitude);
	const west = Math.min(...longitudes);
	const east = Math.max(...longitudes);
	if (east - west > widestDegrees) {
		throw new Error(`Expected places within ${widestDegrees} degrees of longitude; got ${west} to ${east}`);
	}
	return {south: Math.min(...latitudes), west, north: Math.max(...latitudes), east};
}

function shortWay(degrees: number): number {
	return degrees - 360 * Math.round(degrees / 360);
}

/** Walks round the frame's edge: the widest parallel may lie between its corners. */
function boxOf(
	{widthUnits, heightUnits, metresPerUnit}: Pick<MapFrame, 'widthUnits' | 'heightUnits' | 'metresPerUnit'>,
	middle: number,
	toDegrees: (point: readonly [number, number]) => readonly number[],
): Box {
	const [halfX, halfY] = [(widthUnits * metresPerUnit) / 2, (heightUnits * metresPerUnit) / 2];
	const steps = Array.from({length: 33}, (_, index) => index / 16 - 1);
	const edge = steps.flatMap(
		share =>
			[
				[halfX * share, halfY],
				[halfX * share, -halfY],
				[halfX, halfY * share],
				[-halfX, halfY * share],
			] as const,
	);
	const degrees = edge.map(point => {
		const [longitude = middle, latitude = 0] = toDegrees(point);
		return [middle + shortWay(longitude - middle), latitude] as const;
	});
	const longitudes = degrees.map(([longitude]) => longitude);
	const latitudes = degrees.map(([, latitude]) => latitude);
	const pad = 0.02;
	return {
		south: Math.max(-90, Math.min(...latitudes) - pad),
		north: Math.min(90, Math.max(...latitudes) + pad),
		west: Math.min(...longitudes) - pad,
		east: Math.max(...longitudes) + pad,
	};
}
