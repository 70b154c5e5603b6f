/** A pinhole camera above a table: where points of the table, or above it, come to lie in the photo. */

/** How a camera stands; angles in degrees, lengths in millimetres, the focal length as a share of the long side. */
export type CameraStand = {
	readonly widthPx: number;
	readonly heightPx: number;
	readonly focalShare: number;
	readonly tilt: number;
	readonly azimuth: number;
	readonly roll: number;
	/** The point of the table in the middle of the photo. */
	readonly aimMm: readonly [number, number];
	readonly distanceMm: number;
};

/** Nine numbers, row by row. */
export type Matrix = readonly number[];

/** The homography from table millimetres at a height above the table to pixels, pixel middles at halves. */
export function viewOfPlane(stand: CameraStand, heightMm: number): Matrix {
	const [r0, r1, r2] = turnOf(stand);
	const [x, y] = stand.aimMm;
	const shifted = [r0, r1, r2].map(([a, b, c]) => -a * x - b * y - c * heightMm);
	const [t0 = 0, t1 = 0, t2 = 0] = [shifted[0], shifted[1], (shifted[2] ?? 0) + stand.distanceMm];
	const focal = stand.focalShare * Math.max(stand.widthPx, stand.heightPx);
	const [cx, cy] = [stand.widthPx / 2, stand.heightPx / 2];
	const row = (along: readonly [number, number, number], t: number, centre: number) => [
		focal * along[0] + centre * r2[0],
		focal * along[1] + centre * r2[1],
		focal * t + centre * t2,
	];
	return [...row(r0, t0, cx), ...row(r1, t1, cy), r2[0], r2[1], t2];
}

/** A point through a homography. */
export function through(m: Matrix, [x, y]: readonly [number, number]): readonly [number, number] {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = m;
	const w = g * x + h * y + i;
	return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** The homography back. */
export function backwards(m: Matrix): Matrix {
	const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = m;
	const whole = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
	return [
		e * i - f * h,
		c * h - b * i,
		b * f - c * e,
		f * g - d * i,
		a * i - c * g,
		c * d - a * f,
		d * h - e * g,
		b * g - a * h,
		a * e - b * d,
	].map(value => value / whole);
}

/** The same camera as near as all these points of the table stay `marginPx` inside the photo. */
export function nearest(
	stand: CameraStand,
	points: readonly (readonly [number, number])[],
	marginPx: number,
): CameraStand {
	const holds = (distanceMm: number) => {
		const view = viewOfPlane({...stand, distanceMm}, 0);
		return points.every(point => {
			const [x, y] = through(view, point);
			return x > marginPx && y > marginPx && x < stand.widthPx - marginPx && y < stand.heightPx - marginPx;
		});
	};
	let [low, high] = [80, 3000];
	for (let step = 0; step < 30; step += 1) {
		const middle = (low + high) / 2;
		if (holds(middle)) high = middle;
		else low = middle;
	}
	return {...stand, distanceMm: high};
}

type Row = readonly [number, number, number];

function turnOf({tilt, azimuth, roll}: CameraStand): readonly [Row, Row, Row] {
	const [a, t, r] = [azimuth, tilt, roll].map(angle => (angle * Math.PI) / 180);
	const [ca, sa, ct, st, cr, sr] = [a, t, r].flatMap((angle = 0) => [Math.cos(angle), Math.sin(angle)]);
	const [x = 1, y = 0, z = 1, u = 0, v = 1, w = 0] = [ca, sa, ct, st, cr, sr];
	return [
		[v * x - w * z * y, -v * y - w * z * x, w * u],
		[w * x + v * z * y, -w * y + v * z * x, -v * u],
		[u * y, u * x, z],
	];
}
