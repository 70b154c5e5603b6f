/** The thin flaps at both ends, seen from above. */
import type {Shape} from '../key/shape.ts';
import type {Outline} from './contour.ts';
import {type Point, upended, upTo} from './path.ts';

/** How much of its depth the border of a flap bends. */
const bend = 0.55;
const steps = 16;

/** The flap at one end, from the closed part to its border, which is as far out as the case is long. */
export function apronPart(shape: Shape, outline: Outline, end: 'front' | 'back'): readonly Point[] {
	const {depth, border} = end === 'front' ? shape.frontApron : shape.backApron;
	const foot = outline.halfAt(end === 'front' ? 0 : 1) * 0.96;
	const depthMm = depth * outline.lengthMm;
	const outMm = outline.lengthMm / 2;
	const rim = upTo(steps).map((step): Point => {
		const across = (step / steps) * 2 - 1;
		return [across * foot * 0.96, -outMm + depthMm * dipAt(across, border)];
	});
	const inner = -outMm + depthMm + 0.04 * outline.lengthMm;
	const points: readonly Point[] = [[-foot, inner], ...rim, [foot, inner]];
	return end === 'front' ? points : upended(points);
}

/** How far the border lies back from the very end, as a share of the depth. */
function dipAt(across: number, border: Shape['frontApron']['border']): number {
	if (border === 'bulging') return across ** 2 * 0.95;
	if (border === 'hollow') return bend * (1 - across ** 2);
	return 0;
}
