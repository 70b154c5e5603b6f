/** A case lying flat and seen from its long side, and a case cut across; in millimetres. */
import type {Shape} from '../key/shape.ts';
import {type Outline, outlineOf} from './contour.ts';
import {colours, lines} from './palette.ts';
import {type Box, boxOf, drawPath, type Point, pathOf, upTo} from './path.ts';
import type {Pen} from './surface.ts';

/** Drawn SVG in millimetres with the box it fills. */
export type Drawing = {readonly svg: string; readonly box: Box};

const steps = 30;

/** A case from its long side: front to the left, the more domed face up, on a line of ground. */
export function drawProfile(shape: Shape, pen: Pen): Drawing {
	const outline = outlineOf(shape);
	const {above, below} = shape.dome;
	const stroke = {stroke: colours.ink, 'stroke-width': lines.plain / pen.unitsPerMm};
	const rise = (along: number) => Math.sin(Math.PI * Math.min(1, Math.max(0, along))) ** 0.7;
	const at = (along: number, height: number): Point => [
		outline.downAt(along),
		-height * outline.widthMm * rise(along),
	];
	const top = upTo(steps).map(step => at(step / steps, above));
	const under = upTo(steps).map(step => at(step / steps, -below));
	const body = [...top, ...under.toReversed()];
	const half = outline.lengthMm / 2;
	const aprons = pathOf(
		[
			[-half, 0],
			[half, 0],
		],
		'open',
	);
	const horns = (['front', 'back'] as const).map(end => hornFromSide(shape, outline, end));
	const groundMm = below * outline.widthMm + 6 / pen.unitsPerMm;
	const points = [...body, ...horns.flat(), [-half, 0] satisfies Point, [half, 0] satisfies Point];
	const box = boxOf([...points, [0, groundMm]]);
	const ground = pathOf(
		[
			[box.left, groundMm],
			[box.right, groundMm],
		],
		'open',
	);
	const svg = [
		drawPath(ground, {
			stroke: colours.quiet,
			'stroke-width': lines.thin / pen.unitsPerMm,
			'stroke-dasharray': `${8 / pen.unitsPerMm}`,
		}),
		drawPath(aprons, {...stroke, 'stroke-width': lines.bold / pen.unitsPerMm}),
		...horns
			.filter(points => points.length > 0)
			.map(points => drawPath(pathOf(points), {fill: colours.horn, ...stroke})),
		drawPath(pathOf(body), {fill: colours.capsule, ...stroke}),
		drawPath(pathOf([at(0.04, 0), at(0.96, 0)], 'open'), {
			stroke: colours.grain,
			'stroke-width': lines.thin / pen.unitsPerMm,
		}),
	];
	return {svg: svg.join(''), box};
}

function hornFromSide(shape: Shape, outline: Outline, end: 'front' | 'back'): readonly Point[] {
	const horn = end === 'front' ? shape.frontHorns : shape.backHorns;
	if (horn.length === 0) return [];
	const side = end === 'front' ? -1 : 1;
	const footMm = Math.max(horn.thickness * outline.widthMm, outline.widthMm * 0.1);
	const longMm = horn.length * outline.lengthMm;
	const from = (end === 'front' ? outline.frontMm : outline.backMm) - side * footMm;
	let [x, y, heading] = [from, 0, 0];
	const middle: Point[] = [[x, y]];
	for (const step of upTo(steps - 1)) {
		heading += (horn.rises ? 95 : 4) / steps + (horn.rises && step > steps * 0.7 ? 2 : 0);
		x += side * Math.cos((heading * Math.PI) / 180) * ((longMm + footMm) / steps);
		y -= Math.sin((heading * Math.PI) / 180) * ((longMm + footMm) / steps);
		middle.push([x, y]);
	}
	const edge = (way: number) =>
		middle.map(([across, down], index): Point => {
			const thick = (footMm / 2) * Math.max(0.08, 1 - (index / steps) ** 1.3);
			const bent = horn.rises ? (index / steps) * (Math.PI / 2) : 0;
			return [across - way * side * Math.sin(bent) * thick, down - way * Math.cos(bent) * thick];
		});
	return [...edge(1), ...edge(-1).toReversed()];
}

/** A case cut across where it is widest. */
export function drawCut(shape: Shape, pen: Pen): Drawing {
	const outline = outlineOf(shape);
	const stroke = {stroke: colours.ink, 'stroke-width': lines.plain / pen.unitsPerMm};
	const {lengthMm: _, widthMm, bladeMm} = outline;
	const half = widthMm / 2 - bladeMm;
	const [above, below] = [shape.dome.above * widthMm, shape.dome.below * widthMm];
	const round = upTo(60).map((step): Point => {
		const angle = (step / 60) * 2 * Math.PI;
		const across = Math.cos(angle);
		const ridge = shape.surface.ridges ? ridgeAt(across) * widthMm * 0.1 : 0;
		const height = Math.abs(Math.sin(angle)) ** 0.85;
		return [across * half, Math.sin(angle) >= 0 ? -height * above - ridge : height * below];
	});
	const thick = Math.max(widthMm * 0.035, 5 / pen.unitsPerMm);
	const ditch = shape.blades.groove ? Math.max(bladeMm * 0.75, 12 / pen.unitsPerMm) : 0;
	const blades =
		bladeMm === 0
			? []
			: [-1, 1].map(side => bladeCut({side, half: half - ditch * 0.25, out: widthMm / 2, thick, ditch}));
	const points = [...round, ...blades.flat()];
	const svg = [
		...blades.map(blade => drawPath(pathOf(blade), {fill: colours.keel, ...stroke})),
		drawPath(pathOf(round), {fill: colours.capsule, ...stroke}),
	];
	return {svg: svg.join(''), box: boxOf(points)};
}

function ridgeAt(across: number): number {
	return [-0.42, 0.42].reduce((sum, at) => sum + Math.max(0, 1 - Math.abs(across - at) / 0.13), 0);
}

type Cut = {
	readonly side: number;
	readonly half: number;
	readonly out: number;
	readonly thick: number;
	readonly ditch: number;
};

/** A blade cut across; with a ditch it is thin at its foot and thick again further out. */
function bladeCut({side, half, out, thick, ditch}: Cut): readonly Point[] {
	const foot = half * 0.93;
	if (ditch === 0) {
		return [
			[side * foot, -thick * 0.7],
			[side * out, -thick * 0.3],
			[side * out, thick * 0.3],
			[side * foot, thick * 0.7],
		];
	}
	return [
		[side * foot, -thick * 0.25],
		[side * (half + ditch * 0.45), -thick * 0.25],
		[side * (half + ditch * 0.6), -thick * 1.6],
		[side * (out + ditch * 0.2), -thick * 0.6],
		[side * (out + ditch * 0.2), thick * 0.6],
		[side * foot, thick * 0.6],
	];
}
