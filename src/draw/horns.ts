/** Horns and tendrils seen from above, in millimetres. */
import type {Shape} from '../key/shape.ts';
import type {Outline} from './contour.ts';
import {type Point, upended, upTo} from './path.ts';

const steps = 36;

/** A horn of the right side as an outline; nothing where the shape has none. */
export function hornPart(
	shape: Shape,
	outline: Outline,
	end: 'front' | 'back',
): readonly Point[] | undefined {
	const horn = end === 'front' ? shape.frontHorns : shape.backHorns;
	if (horn.length === 0) return undefined;
	const middle = hornLine(shape, outline, end);
	const footMm = horn.thickness * outline.widthMm;
	const thick = (along: number) => {
		if (horn.blunt) return footMm * (1 - 0.35 * along);
		const thin = horn.thread ? Math.max(0.16, 1 - along / 0.55) : 1 - along;
		return footMm * Math.max(0.09, thin ** 0.8);
	};
	const left: Point[] = [];
	const right: Point[] = [];
	for (const [index, [x, y]] of middle.entries()) {
		const [fromX, fromY] = middle[Math.max(0, index - 1)] ?? [x, y];
		const [toX, toY] = middle[Math.min(middle.length - 1, index + 1)] ?? [x, y];
		const long = Math.hypot(toX - fromX, toY - fromY) || 1;
		const half = thick(index / steps) / 2;
		const [acrossX, acrossY] = [((toY - fromY) / long) * half, (-(toX - fromX) / long) * half];
		left.push([x + acrossX, y + acrossY]);
		right.push([x - acrossX, y - acrossY]);
	}
	return [...left, ...right.toReversed()];
}

/** The middle line of a horn of the right side, from its foot inside the case to its tip. */
export function hornLine(shape: Shape, outline: Outline, end: 'front' | 'back'): readonly Point[] {
	const {length, thickness, turn, hook} = end === 'front' ? shape.frontHorns : shape.backHorns;
	const half = outline.halfAt(end === 'front' ? 0 : 1);
	const downMm = end === 'front' ? outline.frontMm : -outline.backMm;
	const footMm = thickness * outline.widthMm;
	// Straight ahead is up; a little outwards, so that the horn goes on where the side ends.
	const stepMm = (length * outline.lengthMm) / steps;
	let heading = -6;
	let [x, y] = [half - footMm * 0.5, downMm + footMm * 0.2];
	const points: Point[] = [[x, y]];
	for (const step of upTo(steps - 1)) {
		const isLast = step >= steps * 0.75;
		heading += turn / steps + (isLast ? hook / (steps * 0.25) : 0);
		const angle = (heading * Math.PI) / 180;
		x -= Math.sin(angle) * stepMm;
		y -= Math.cos(angle) * stepMm;
		points.push([x, y]);
	}
	return end === 'front' ? points : upended(points);
}

/** How much of a long tendril is drawn coiled, in lengths of the case; the rest would only be more of the coil. */
const mostDrawn = 2;

/** A tendril of the right side as a line that runs out and then coils; nothing where the shape has none. */
export function tendrilLine(
	{tendrils}: Shape,
	outline: Outline,
	end: 'front' | 'back',
): readonly Point[] | undefined {
	const lengths = Math.min(tendrils[end], mostDrawn);
	if (lengths === 0) return undefined;
	const count = 160;
	const stepMm = (lengths * outline.lengthMm) / count;
	const downMm = end === 'front' ? outline.frontMm : -outline.backMm;
	let [x, y] = [outline.halfAt(end === 'front' ? 0 : 1) * 0.93, downMm];
	let heading = -18;
	const points: Point[] = [[x, y]];
	for (const step of upTo(count - 1)) {
		const gone = step / count;
		heading -= curlAt(gone, lengths);
		const angle = (heading * Math.PI) / 180;
		x -= Math.sin(angle) * stepMm;
		y -= Math.cos(angle) * stepMm;
		points.push([x, y]);
	}
	return end === 'front' ? points : upended(points);
}

/** Degrees that a tendril bends in one of its steps: slack waves first, then a coil that winds tighter. */
function curlAt(gone: number, lengths: number): number {
	const calm = 0.55;
	if (gone < calm) return 4.2 * Math.cos((gone / calm) * Math.PI * 2 * Math.max(1, lengths)) - 0.4;
	return 5 + 11 * (gone - calm);
}
