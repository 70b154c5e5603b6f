/** What we use of a package that may be missing: the build does not depend on whether it is installed. */
declare module 'neaps' {
	/** A place with known tides. */
	export type Station = {
		readonly name: string;
		/** Tide stations and stations of currents lie in the same list. */
		readonly kind: 'tide' | 'current';
		readonly license: {readonly type: string};
		/** What has to be shown wherever the station is used. */
		readonly attribution: string;
	};

	/** A station as found, with the way there in kilometres and its high and low waters. */
	export type StationNear = Station & {
		readonly distance: number;
		readonly getExtremesPrediction: (span: {readonly start: Date; readonly end: Date}) => {
			readonly extremes: readonly {
				readonly time: Date;
				/** Metres over the station's own datum. */
				readonly level: number;
				readonly low: boolean;
			}[];
		};
	};

	/** The stations that pass the filter, the nearest first; distances in kilometres. */
	export function stationsNear(wanted: {
		readonly latitude: number;
		readonly longitude: number;
		readonly maxDistance: number;
		readonly maxResults: number;
		readonly filter: (station: Station) => boolean;
	}): readonly StationNear[];
}
