/** Tells a pale or see-through apron beyond a body's border from a shadow: it has a tinge of the body's colour. */
import type {Border} from './border.ts';
import type {Strip} from './strip.ts';

/**
 * A band between a border and one farther out: surely an apron, one that may be, or a dark one without any tinge, as a hard
 * shadow is and now and then an apron.
 */
export type Band = {readonly border: Border; readonly kind: 'apron' | 'maybe' | 'dark'};

/** Narrower, the body's own colour has run into it in the photo. */
const leastMm = 1.9;
/** An outer edge that counts: how strong, on how many of the lines, and how smooth. */
const edge = {strength: 10, seen: 0.55, scatterMm: 0.3} as const;
/** Tinge of the body's colour, as a share of the light lost; shadows stay below the lesser (tuned on made-up photos). */
const tinge = {may: 0.035, sure: 0.1} as const;
/** Less is within the ground's own colours. */
const leastTinge = 0.014;
/** Darker than bare ground all over, so that no horn with ground before it is taken for an apron. */
const leastDark = 0.05;

/** What has no tinge counts only when its own edge is plain to see. */
const plainEdge = {strength: 22, seen: 0.6} as const;

/** The outermost band beyond the inner border. */
export function findBand(
	strip: Strip,
	{inner, borders}: {readonly inner: Border; readonly borders: readonly Border[]},
	mmPerPx: number,
): Band | undefined {
	const body = meanAlong(strip, place => [inner.at(place) - 3, inner.at(place) - 1]);
	// A body of hardly any colour lends none.
	const size = Math.max(0.05, Math.hypot(body[1], body[2]));
	const softMm = Math.max(0.6, 1.6 * mmPerPx);
	const looked = borders.flatMap((border): readonly Band[] => {
		const apart = border.at(0) - inner.at(0);
		const isSharp =
			border.strength > edge.strength && border.seen > edge.seen && border.scatterMm < edge.scatterMm;
		if (apart < leastMm || !isSharp) return [];
		const [light, red, blue] = meanAlong(strip, place => [
			inner.at(place) + Math.max(0.5 * apart, Math.min(1.6, 0.6 * apart)),
			border.at(place) - Math.min(softMm, 0.25 * apart),
		]);
		const [beyond] = meanAlong(strip, place => [border.at(place) + softMm, border.at(place) + softMm + 1.6]);
		const tint = (red * body[1] + blue * body[2]) / size;
		const lost = Math.max(0.05, -light);
		if (beyond < 0.5 * light || !isDarkAllOver(strip, inner, border)) return [];
		if (tint > tinge.sure * lost && tint > 2 * leastTinge) return [{border, kind: 'apron'}];
		if (tint > leastTinge && tint > tinge.may * lost) return [{border, kind: 'maybe'}];
		const isPlain = border.strength > plainEdge.strength && border.seen > plainEdge.seen;
		return isPlain ? [{border, kind: 'dark'}] : [];
	});
	return looked.toSorted((a, b) => b.border.at(0) - a.border.at(0))[0];
}

function isDarkAllOver(strip: Strip, inner: Border, outer: Border): boolean {
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
