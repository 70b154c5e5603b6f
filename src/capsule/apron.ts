/** Tells a pale or see-through apron beyond a body's border from a shadow: it has a tinge of the body's colour. */
import type {Border} from './border.ts';
import type {Strip} from './strip.ts';

/**
 * A band between a border and one farther out: surely an apron, one that may be, or a dark one without any tinge, as a hard
 * shadow is and now and then an apron.
 */
export type Band = {
	readonly border: Border;
	readonly kind: 'apron' | 'maybe' | 'dark';
	/** How it differs from bare ground. */
	readonly tones: Tones;
};

/** Light, red against green, and blue against both. */
export type Tones = readonly [light: number, red: number, blue: number];

/** Narrower, the body's own colour has run into it in the photo; down to the lesser a plain tinge tells all the same. */
const leastMm = {plain: 1.9, tinged: 1.2} as const;
/** An outer edge that counts: how strong, on how many of the lines, and how smooth. */
const edge = {strength: 10, seen: 0.55, scatterMm: 0.3} as const;
/** Tinge of the body's colour, as a share of the light lost; shadows stay below the lesser (tuned on made-up photos). */
const tinge = {may: 0.035, sure: 0.1} as const;
/** Less is within the ground's own colours. */
const leastTinge = 0.014;
/** Darker than bare ground all over, so that no horn with ground before it is taken for an apron. */
const leastDark = 0.05;
/** A band is no shadow that is lighter than ground by so much, or no darker and of so much another colour (our choice). */
const lighter = {light: 0.2, colour: 0.1} as const;
/** How evenly the outer edge of what is lighter than ground must be seen. */
const evenEdge = {seen: 0.85, scatterMm: 0.2} as const;
/** Ground shows in the loop of a horn or tendril, on more of the lines than worn aprons have gaps (tuned on made-up photos). */
const mostBare = 0.3;

/** The aprons of one case differ by no more (tuned on photos by the second maker). */
const alike = {light: 0.15, colour: 0.06} as const;

/** What has no tinge counts only when its own edge is plain to see. */
const plainEdge = {strength: 22, seen: 0.6} as const;

/** The border of a body, and all that were seen on that side. */
type Borders = {
	readonly inner: Border;
	readonly borders: readonly Border[];
	/** The apron at the other end, if there is one. */
	readonly like?: Tones | undefined;
};

/** The outermost band beyond the inner border. */
export function findBand(strip: Strip, {inner, borders, like}: Borders, mmPerPx: number): Band | undefined {
	const body = meanAlong(strip, place => [inner.at(place) - 3, inner.at(place) - 1]);
	const softMm = Math.max(0.6, 1.6 * mmPerPx);
	const looked = borders.flatMap((border): readonly Band[] => {
		const apart = border.at(0) - inner.at(0);
		if (apart < leastMm.tinged || !isSharp(border)) return [];
		const band = meanAlong(strip, place => [
			inner.at(place) + Math.max(0.5 * apart, Math.min(1.6, 0.6 * apart)),
			border.at(place) - Math.min(softMm, 0.25 * apart),
		]);
		const [beyond] = meanAlong(strip, place => [border.at(place) + softMm, border.at(place) + softMm + 1.6]);
		const isAlike = like !== undefined && areAlike(band, like) && beyond > 0.6 * band[0];
		const kind = isAlike ? 'apron' : kindOf(border, {band, body, beyond});
		if (!kind || bareShare(strip, {inner, outer: border}, [band[0], beyond]) > mostBare) return [];
		if (apart < leastMm.plain && (kind !== 'apron' || band[0] < body[0])) return [];
		return [{border, kind, tones: band}];
	});
	return looked.toSorted((a, b) => b.border.at(0) - a.border.at(0))[0];
}

function isSharp({strength, seen, scatterMm}: Border): boolean {
	return strength > edge.strength && seen > edge.seen && scatterMm < edge.scatterMm;
}

/** Whether two bands may be the aprons of one case, the light of which falls from one side. */
function areAlike([light, red, blue]: Tones, [otherLight, otherRed, otherBlue]: Tones): boolean {
	const apart = Math.hypot(red - otherRed, blue - otherBlue);
	return Math.abs(light - otherLight) < alike.light && apart < alike.colour;
}

type Colours = {readonly band: Tones; readonly body: Tones; readonly beyond: number};

function kindOf(
	{strength, seen, scatterMm}: Border,
	{band, body, beyond}: Colours,
): Band['kind'] | undefined {
	const [light, red, blue] = band;
	const isOther = light > lighter.light || (light > 0 && Math.hypot(red, blue) > lighter.colour);
	if (isOther) {
		const isEven = seen > evenEdge.seen && scatterMm < evenEdge.scatterMm;
		return isEven && beyond < 0.5 * light ? 'apron' : undefined;
	}
	if (light > -leastDark || beyond < 0.5 * light) return undefined;
	// A body of hardly any colour lends none.
	const tint = (red * body[1] + blue * body[2]) / Math.max(0.05, Math.hypot(body[1], body[2]));
	const lost = Math.max(0.05, -light);
	if (tint > tinge.sure * lost && tint > 2 * leastTinge) return 'apron';
	if (tint > leastTinge && tint > tinge.may * lost) return 'maybe';
	return strength > plainEdge.strength && seen > plainEdge.seen ? 'dark' : undefined;
}

/** On how much of the side what lies beyond a band shows somewhere within it, too. */
function bareShare(
	{places, fromMm, stepMm, count, differences}: Strip,
	{inner, outer}: {readonly inner: Border; readonly outer: Border},
	[band, beyond]: readonly [number, number],
): number {
	const reach = Math.max(1, Math.round(0.2 / stepMm));
	const bare = [...places.entries()].filter(([line, place]) => {
		const apart = outer.at(place) - inner.at(place);
		const first = Math.max(reach, Math.round((inner.at(place) + 0.3 * apart - fromMm) / stepMm));
		const last = Math.min(count - 1 - reach, Math.round((inner.at(place) + 0.75 * apart - fromMm) / stepMm));
		for (let index = first; index <= last; index += 1) {
			let sum = 0;
			for (let near = index - reach; near <= index + reach; near += 1)
				sum += differences[(line * count + near) * 3] ?? 0;
			const light = sum / (2 * reach + 1);
			if ((light - beyond) / (band - beyond) < 0.3) return true;
		}
		return false;
	});
	return bare.length / places.length;
}

/** Whether it is darker than bare ground all the way from one border to one farther out. */
export function isDarkBetween(strip: Strip, inner: Border, outer: Border): boolean {
	return [0.25, 0.4, 0.55, 0.7].every(share => {
		const [light] = meanAlong(strip, place => {
			const from = inner.at(place) + share * (outer.at(place) - inner.at(place));
			return [from, from + 0.15 * (outer.at(place) - inner.at(place))];
		});
		return light < -leastDark;
	});
}

/** How light, red and blue differ from bare ground on the mean of all lines, each between its own two distances. */
function meanAlong(
	{places, fromMm, stepMm, count, differences}: Strip,
	between: (place: number) => readonly [fromMm: number, toMm: number],
): readonly [light: number, red: number, blue: number] {
	let [light, red, blue, some] = [0, 0, 0, 0];
	for (const [line, place] of places.entries()) {
		const [near, far] = between(place);
		const first = Math.max(0, Math.round((near - fromMm) / stepMm));
		const last = Math.min(count - 1, Math.round((far - fromMm) / stepMm));
		for (let index = first; index <= last; index += 1) {
			const at = (line * count + index) * 3;
			light += differences[at] ?? 0;
			red += differences[at + 1] ?? 0;
			blue += differences[at + 2] ?? 0;
			some += 1;
		}
	}
	const share = 1 / Math.max(1, some);
	return [light * share, red * share, blue * share];
}
