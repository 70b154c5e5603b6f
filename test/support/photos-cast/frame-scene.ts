/** Holds the camera over what is laid out. */
import type {Pick} from '../../../src/key/random.ts';
import {type Laid, toTable} from './case.ts';
import {type Camera, holdCamera, seenAt} from './framing.ts';
import {roundBody, tipsOf} from './lay-out.ts';
import type {Wish} from './wish.ts';

type At = readonly [number, number];

/** What is looked at where nothing lies. */
const bareTable: readonly At[] = [
	[-90, -90],
	[90, 90],
];

/** Holds the camera so that all is seen; where something shall be cut off, it comes nearer until it is. */
export function frameScene(
	wish: Wish,
	points: readonly At[],
	{laid, pick}: {laid: readonly Laid[]; pick: Pick},
): Camera {
	const [first] = laid;
	const isCut = wish.subject === 'cut';
	const bodies = laid.flatMap(one => [...roundBody(one), ...(isCut ? [] : tipsOf(one))]);
	const kept =
		isCut && first ? [...points, toTable(first.wish, -first.shape.lengthMm / 2, 0)] : [...points, ...bodies];
	const margin = wish.reference === 'card' ? ([0.03, 0.12] as const) : ([0.012, 0.06] as const);
	const {level, isTilted = false} = wish;
	const away = wish.isTiny ? 2.4 : 1;
	const size = wish.longSidePx === undefined ? {} : {longSidePx: wish.longSidePx};
	const seen = kept.length > 0 ? kept : bareTable;
	const camera = holdCamera({points: seen, level, isTilted, margin, away, ...size}, pick);
	const cut: At | undefined = isCut && first ? toTable(first.wish, first.shape.lengthMm / 2, 0) : undefined;
	return nearerUntilCut(camera, cut ?? (wish.isCut ? points.at(-1) : undefined));
}

function nearerUntilCut(camera: Camera, cut: At | undefined): Camera {
	let {stand} = camera;
	if (!cut) return camera;
	for (let round = 0; round < 40; round += 1) {
		const [x, y] = seenAt({...camera, stand, enlarged: 1}, cut, 0);
		const over = 0.02 * stand.widthPx;
		if (x < -over || y < -over || x > stand.widthPx + over || y > stand.heightPx + over) break;
		stand = {...stand, distanceMm: stand.distanceMm * 0.96};
	}
	return {...camera, stand};
}
