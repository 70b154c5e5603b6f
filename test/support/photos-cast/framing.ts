/** Where the phone is held: near enough to see all that must be seen, tilted as people do. */
import {between, type Pick} from '../../../src/key/random.ts';
import {type CameraStand, nearest, through, viewOfPlane} from '../photos/camera.ts';

/** A camera with a lens that bends straight lines a little, and how much larger than it is cast the photo becomes. */
export type Camera = {
	readonly stand: CameraStand;
	/** Of the distance from the middle, at the corner: above 0 the corners are drawn inwards. */
	readonly bend: number;
	readonly enlarged: number;
};

/** What a camera must show, as points of the table, and how it may be held. */
export type FramingWish = {
	readonly points: readonly (readonly [number, number])[];
	readonly level: 'clean' | 'normal' | 'hard';
	readonly isTilted: boolean;
	/** How much of the picture's side lies round the points; below 0 they are cut off. */
	readonly margin: readonly [number, number];
	/** How much farther away than needed. */
	readonly away?: number;
	/** A multiple of 4, instead of a phone's. */
	readonly longSidePx?: number;
};

/** Holds the camera. */
export function holdCamera(wish: FramingWish, pick: Pick): Camera {
	const {points, level} = wish;
	const [drawn, grown] = sizeFor(level, pick);
	const [wide, enlarged] = wish.longSidePx === undefined ? [drawn, grown] : [wish.longSidePx, 1];
	const shape = pick() < 0.75 ? 0.75 : pick() < 0.7 ? 0.5625 : 2 / 3;
	const narrow = Math.round((wide * shape) / 4) * 4;
	const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))];
	const [top, foot] = [Math.min(...points.map(([, y]) => y)), Math.max(...points.map(([, y]) => y))];
	const isUpright = foot - top > right - left !== pick() < 0.12;
	const most = wish.isTilted ? 47 : {clean: 10, normal: 25, hard: 35}[level];
	const tilt = wish.isTilted ? between(pick, [43, most]) : most * Math.sqrt(pick());
	const azimuth = between(pick, [0, 360]);
	const sway = pick() < 0.15 ? between(pick, [-45, 45]) : between(pick, [-9, 9]);
	const [offX, offY] = [between(pick, [-0.08, 0.08]), between(pick, [-0.08, 0.08])];
	const aimMm = [(left + right) / 2 + offX * (right - left), (top + foot) / 2 + offY * (foot - top)] as const;
	const [widthPx, heightPx] = isUpright ? [narrow, wide] : [wide, narrow];
	const start = {widthPx, heightPx, focalShare: between(pick, [0.6, 1.05]), tilt, azimuth, roll: 0, aimMm};
	const posed = {...start, distanceMm: 400};
	// Turning the phone by the sway alone keeps the table's sides along the picture's; whole quarters come from below.
	const level0 = -azimuthTurn(posed) + sway + (pick() < 0.4 ? 180 : 0);
	const marginPx = wide * between(pick, wish.margin);
	const placed = nearest({...posed, roll: level0}, points, marginPx);
	const away = (wish.away ?? 1) * (level === 'clean' ? 1 : between(pick, [1, 1.25]));
	const bend = level === 'clean' ? between(pick, [-0.004, 0.004]) : between(pick, [-0.03, 0.03]);
	return {stand: {...placed, distanceMm: placed.distanceMm * away}, bend, enlarged};
}

/** The table's way to the right, in degrees as the picture shows it. */
function azimuthTurn(stand: CameraStand): number {
	const view = viewOfPlane(stand, 0);
	const [x, y] = stand.aimMm;
	const [a, b] = [through(view, [x, y]), through(view, [x + 1, y])];
	return (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
}

/** The long side as it is cast, and how much it is enlarged: casting every pixel of a large photo would take too long. */
function sizeFor(level: FramingWish['level'], pick: Pick): readonly [number, number] {
	const kind = pick();
	const rest = pick();
	if (kind < 0.35) return [Math.round(250 + 70 * rest) * 4, 1];
	if (kind < 0.7 || level === 'clean') return [Math.round(320 + 70 * rest) * 4, 1];
	return [Math.round(260 + 73 * rest) * 4, kind < 0.85 ? 2 : 3];
}

/** Where a point of the table, or above it, comes to lie; the middle of the first pixel is at a half. */
export function seenAt(
	camera: Camera,
	atMm: readonly [number, number],
	highMm: number,
): readonly [number, number] {
	const {stand, bend} = camera;
	const [x, y] = through(viewOfPlane(stand, highMm), atMm);
	const [cx, cy] = [stand.widthPx / 2, stand.heightPx / 2];
	const corner = cx * cx + cy * cy;
	let [dx, dy] = [x - cx, y - cy];
	for (let round = 0; round < 12; round += 1) {
		const stretch = 1 + (bend * (dx * dx + dy * dy)) / corner;
		[dx, dy] = [(x - cx) / stretch, (y - cy) / stretch];
	}
	return [(cx + dx) * camera.enlarged, (cy + dy) * camera.enlarged];
}
