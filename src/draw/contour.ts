/** The outline of a case seen from above, in millimetres; its middle is at 0, 0 and its front is up. */
import type {Shape} from '../key/shape.ts';
import {mirrored, type Point, upTo} from './path.ts';

/** The measures of an outline in millimetres, worked out once. */
export type Outline = {
	readonly lengthMm: number;
	readonly widthMm: number;
	/** Where the closed part begins and ends. */
	readonly frontMm: number;
	readonly backMm: number;
	/** Width of one blade. */
	readonly bladeMm: number;
	/** Half of the width of the closed part, `along` from 0 at the front to 1 at the back. */
	readonly halfAt: (along: number) => number;
	/** How far the blade stands out there. */
	readonly bladeAt: (along: number) => number;
	/** Millimetres down for a place along the closed part. */
	readonly downAt: (along: number) => number;
};

const steps = 40;
/** Over this share of its run a blade rises to its width. */
const rise = 0.14;

/** Works out the outline of a shape. */
export function outlineOf({size, sides, frontApron, backApron, blades}: Shape): Outline {
	const {lengthMm, widthMm} = size;
	const frontMm = -lengthMm / 2 + frontApron.depth * lengthMm;
	const backMm = lengthMm / 2 - backApron.depth * lengthMm;
	const bladeMm = blades.width * widthMm;
	const half = widthMm / 2 - bladeMm;
	const halfAt = (along: number) => {
		const isFront = along < sides.widestAt;
		const [end, run] = isFront ? [sides.front, sides.widestAt] : [sides.back, 1 - sides.widestAt];
		const away = Math.min(1, Math.abs(along - sides.widestAt) / run);
		return half * (1 - (1 - end) * easeOut(away));
	};
	const run = Math.max(blades.to - blades.from, 0.01);
	const bladeAt = (along: number) => {
		const into = (along - blades.from) / run;
		if (into < 0 || into > 1) return 0;
		const nearest = Math.min(into, 1 - into);
		return bladeMm * Math.min(1, Math.sin((Math.min(nearest, rise) / rise) * (Math.PI / 2)));
	};
	const downAt = (along: number) => frontMm + along * (backMm - frontMm);
	return {lengthMm, widthMm, frontMm, backMm, bladeMm, halfAt, bladeAt, downAt};
}

/** The closed part, all round. */
export function closedPart(outline: Outline): readonly Point[] {
	const right = upTo(steps).map(
		(step): Point => [outline.halfAt(step / steps), outline.downAt(step / steps)],
	);
	return [...right, ...mirrored(right).toReversed()];
}

/** One blade, on the right; its foot lies well under the closed part. */
export function bladePart(outline: Outline): readonly Point[] {
	const at = upTo(steps).map(step => step / steps);
	const outer = at.map(
		(along): Point => [outline.halfAt(along) + outline.bladeAt(along), outline.downAt(along)],
	);
	const inner = at.map((along): Point => [outline.halfAt(along) * 0.9, outline.downAt(along)]);
	return [...outer, ...inner.toReversed()];
}

/** Slow at first and steep at the end, so that sides run straight past the middle. */
function easeOut(away: number): number {
	return away ** 2.4;
}
