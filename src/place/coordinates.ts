import {type AngleRead, readAngle} from './angle.ts';
import type {Degrees} from './grid.ts';

/**
 * What a text says as latitude and longitude. `radiusM` is how far, in metres, the written digits leave the spot
 * open: half the last digit in each axis, combined, or what a geo URI states.
 */
export type PointRead =
	| {readonly kind: 'point'; readonly point: Degrees; readonly radiusM: number}
	| {readonly kind: 'refused'; readonly why: 'off-the-earth' | 'half-a-pair'}
	| {readonly kind: 'other'};

// As for a position whose accuracy is not recorded: Darwin Core, comments on coordinateUncertaintyInMeters.
const unstatedRadiusM = 30;
const halfWayRoundM = 20_037_509;

const halfAPair: PointRead = {kind: 'refused', why: 'half-a-pair'};
const offTheEarth: PointRead = {kind: 'refused', why: 'off-the-earth'};

/** Reads decimal degrees, degrees with minutes and seconds, or a geo URI (RFC 5870). */
export function readPoint(text: string): PointRead {
	if (/^geo:/i.test(text)) return readGeoUri(text);
	const tidied = pointDecimals(tidy(text));
	if (!isNumbers(tidied)) return {kind: 'other'};
	const halves = inHalves(tidied).map(half => half.replace(/^[ ,;:/()]+|[ ,;:/().]+$/g, ''));
	const [first, second] = halves;
	if (first === undefined || second === undefined || halves.length > 2) return halfAPair;
	return joinAngles(readAngle(first), readAngle(second));
}

function joinAngles(first: AngleRead, second: AngleRead): PointRead {
	if (first.kind === 'unreadable' || second.kind === 'unreadable') return halfAPair;
	if (first.kind === 'impossible' || second.kind === 'impossible') return offTheEarth;
	if (first.axis !== undefined && first.axis === second.axis) return halfAPair;
	const turned = first.axis === 'longitude' || second.axis === 'latitude';
	const [latitude, longitude] = turned ? [second, first] : [first, second];
	if (Math.abs(latitude.degrees) > 90 || Math.abs(longitude.degrees) > 180) return offTheEarth;
	const metres = metresPerDegree(latitude.degrees);
	return {
		kind: 'point',
		point: {latitude: latitude.degrees, longitude: longitude.degrees},
		radiusM: Math.hypot(latitude.halfStep * metres.north, longitude.halfStep * metres.east),
	};
}

function readGeoUri(text: string): PointRead {
	const [place = '', ...settings] = text.slice('geo:'.length).trim().toLowerCase().split(';');
	const [latitude, longitude, height = '0', ...more] = place.split(',');
	const number = /^-?\d+(\.\d+)?$/;
	if (latitude === undefined || longitude === undefined || more.length > 0) return halfAPair;
	if (![latitude, longitude, height].every(value => number.test(value))) return halfAPair;
	// Another reference frame would need a datum shift that we do not have.
	const frame = settings.find(setting => setting.startsWith('crs='));
	if (frame !== undefined && frame !== 'crs=wgs84') return offTheEarth;
	const read = joinAngles(readAngle(latitude), readAngle(longitude));
	const stated = settings.find(setting => /^u=\d+(\.\d+)?$/.test(setting));
	if (read.kind !== 'point') return read;
	// RFC 5870, 3.4.3: the digits do not say how sure the place is; without `u` nobody said. Many digits then earn
	// nothing, but few still cost.
	const radiusM =
		stated === undefined
			? Math.max(read.radiusM, unstatedRadiusM)
			: Math.min(Number(stated.slice('u='.length)), halfWayRoundM);
	return {...read, radiusM};
}

// φ and λ stand for the written words, so that the letters left over are only N, S, E and W.
function tidy(text: string): string {
	return text
		.toUpperCase()
		.replace(/[’‘′´`ʹ]/g, "'")
		.replace(/''|[”“″ʺ]/g, '"')
		.replace(/[º˚]|(?<=\d) ?DEG(?:REES?)?/g, '°')
		.replace(/[−–—]/g, '-')
		.replace(/\bLAT(?:ITUDE)?(?![A-Z])[:=. ]*/g, 'φ')
		.replace(/\b(?:LNG|LONG?(?:ITUDE)?)(?![A-Z])[:=. ]*/g, 'λ')
		.replace(/\b(N)ORTH\b|\b(S)OUTH\b|\b(E)AST\b|\b(W)EST\b/g, '$1$2$3$4')
		.trim();
}

// Commas between digits are decimal commas when there is no point at all; of three, the middle one parts the pair.
function pointDecimals(text: string): string {
	if (text.includes('.')) return text;
	const count = text.match(/(?<=\d),(?=\d)/g)?.length ?? 0;
	let seen = 0;
	return text.replace(/(?<=\d),(?=\d)/g, () => {
		seen += 1;
		return count === 3 && seen === 2 ? ' ' : '.';
	});
}

// "West 5" and "12 S" stay names: a compass letter needs a fraction, a degree sign or its partner beside it.
function isNumbers(text: string): boolean {
	if (!/^[NSEWφλ\d .,;:/°'"+()-]+$/.test(text) || !/\d/.test(text) || /[NSEW]{2}/.test(text)) return false;
	return !/[NSEW]/.test(text) || /[°φλ]|\d\.\d/.test(text) || (/[NS]/.test(text) && /[EW]/.test(text));
}

function inHalves(text: string): readonly string[] {
	if (/[φλ]/.test(text)) return text.split(/(?=[φλ])/).filter(half => /\d/.test(half));
	const letters = text.match(/[NSEW]/g)?.length ?? 0;
	if (letters === 2) return text.split(/^[ (]*[NSEW]/.test(text) ? /(?=[NSEW])/ : /(?<=[NSEW])(?=.*\d)/);
	const parted = text.split(/[,;/]/).filter(half => /\d/.test(half));
	if (parted.length === 2 || letters > 0) return parted;
	const [, before, after] = /^([^°]*°[^°]*) ([+-]?[\d.]+ ?°[^°]*)$/.exec(text) ?? [];
	if (before !== undefined && after !== undefined) return [before, after];
	const words = text.split(' ');
	const middle = words.length / 2;
	return Number.isInteger(middle) ? [words.slice(0, middle).join(' '), words.slice(middle).join(' ')] : words;
}

/** How long one degree northwards and one eastwards are at a latitude on WGS 84, in metres. */
export function metresPerDegree(latitude: number): {readonly north: number; readonly east: number} {
	// WGS 84: half axis 6378137 m, flattening 1/298.257223563.
	const radius = 6_378_137;
	const flattening = 1 / 298.257223563;
	const eccentricity = flattening * (2 - flattening);
	const angle = (latitude * Math.PI) / 180;
	const bend = 1 - eccentricity * Math.sin(angle) ** 2;
	return {
		north: ((Math.PI / 180) * radius * (1 - eccentricity)) / bend ** 1.5,
		east: ((Math.PI / 180) * radius * Math.cos(angle)) / Math.sqrt(bend),
	};
}
