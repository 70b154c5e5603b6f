/** The main axis of many points, worked out from their sums. */
import type {Point} from './raster.ts';

/** Where points lie in the middle, along which way they are spread most, and how much along it and across it. */
export type Principal = {
	readonly middle: Point;
	/** Of length 1. */
	readonly along: Point;
	/** Mean squares of the distances from the middle. */
	readonly longSquare: number;
	readonly wideSquare: number;
};

/** Takes points one by one, each by its weight; asked for the axis of none, it throws. */
export function gatherPoints() {
	let [sum, sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0, 0];
	const add = (x: number, y: number, weight: number): void => {
		sum += weight;
		sx += weight * x;
		sy += weight * y;
		sxx += weight * x * x;
		sxy += weight * x * y;
		syy += weight * y * y;
	};
	const principal = (): Principal => {
		if (sum === 0) throw new Error('Expected at least one point; got none');
		const [x, y] = [sx / sum, sy / sum];
		const [xx, xy, yy] = [sxx / sum - x * x, sxy / sum - x * y, syy / sum - y * y];
		const angle = Math.atan2(2 * xy, xx - yy) / 2;
		const [mean, spread] = [(xx + yy) / 2, Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy)];
		return {
			middle: [x, y],
			along: [Math.cos(angle), Math.sin(angle)],
			longSquare: mean + spread,
			wideSquare: Math.max(0, mean - spread),
		};
	};
	return {add, principal};
}
