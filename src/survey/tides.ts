/** Tides worked out from published constants of tide gauges: good for a doubt, never for going by. */

/** A high or low water; `levelM` counts from the gauge's own zero. */
export type Extreme = {readonly at: number; readonly levelM: number; readonly isLow: boolean};

/** A gauge whose tides may be shown to anybody, with the words that have to stand beside them. */
export type Gauge = {
	readonly name: string;
	readonly distanceM: number;
	readonly attribution: string;
	/** High and low waters from one instant to another (UTC ms), in their order. */
	readonly extremesBetween: (from: number, to: number) => readonly Extreme[];
};

/** Every gauge that is known. */
export type Tides = {
	/** The nearest gauge under a free licence, if there is one within so many metres. */
	readonly gaugeNear: (
		spot: {readonly latitude: number; readonly longitude: number},
		withinM: number,
	) => Gauge | undefined;
};

/** Free for every use as long as the source is named, or for all: others forbid what a keeper may want to do. */
const freeLicences = ['cc-by-4.0', 'public domain'];

/** Loads the gauges, about 115 MB of memory; nothing where the package that has them is not installed. */
export async function loadTides(): Promise<Tides | undefined> {
	const neaps = await import('neaps').catch((error: unknown) => {
		if (isNotInstalled(error)) return undefined;
		throw error;
	});
	return neaps && {gaugeNear: (spot, withinM) => gaugeNear(neaps, spot, withinM)};
}

function gaugeNear(
	neaps: Pick<typeof import('neaps'), 'stationsNear'>,
	{latitude, longitude}: {readonly latitude: number; readonly longitude: number},
	withinM: number,
): Gauge | undefined {
	const [station] = neaps.stationsNear({
		latitude,
		longitude,
		maxDistance: withinM / 1000,
		maxResults: 1,
		filter: ({kind, license}) => kind === 'tide' && freeLicences.includes(license.type),
	});
	return (
		station && {
			name: station.name,
			distanceM: station.distance * 1000,
			attribution: station.attribution,
			extremesBetween: (from, to) =>
				station
					.getExtremesPrediction({start: new Date(from), end: new Date(to)})
					.extremes.map(({time, level, low}) => ({at: time.getTime(), levelM: level, isLow: low})),
		}
	);
}

function isNotInstalled(error: unknown): boolean {
	return error instanceof Error && 'code' in error && error.code === 'ERR_MODULE_NOT_FOUND';
}
