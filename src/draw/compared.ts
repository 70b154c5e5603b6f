/** A case beside what a question has people compare it with: its own width, its horn, its string. */
import type {Character} from '../key/region.ts';
import {type Shape, withParts} from '../key/shape.ts';
import {drawCapsule} from './capsule.ts';
import {outlineOf} from './contour.ts';
import {hornLine} from './horns.ts';
import {colours, lines} from './palette.ts';
import {boxAround, boxOf, drawPath, type Point, pathOf} from './path.ts';
import type {Drawing} from './profile.ts';
import type {Pen} from './surface.ts';

/** What is compared, and how many times it is taken. */
export type Against = NonNullable<Character['against']>;

/** A case beside what the question has people compare it with. */
export function drawCompared(shape: Shape, {what, times}: Against, pen: Pen): Drawing {
	switch (what) {
		case 'widths':
			return drawWidths(shape, times, pen);
		case 'horn':
			return drawHornMark(shape, times, pen);
		case 'string':
			return drawString(shape, times, pen);
	}
}

/** Beside the case as many bars as `times`, each as long as the case is wide. */
function drawWidths(shape: Shape, times: number, pen: Pen): Drawing {
	const capsule = drawCapsule(shape, pen);
	const {lengthMm, widthMm} = shape.size;
	const [x, wide] = [widthMm / 2 + 26 / pen.unitsPerMm, 24 / pen.unitsPerMm];
	const bars = Array.from({length: times}, (_, index): readonly Point[] => {
		const top = -lengthMm / 2 + index * widthMm;
		return [
			[x, top],
			[x + wide, top],
			[x + wide, top + widthMm],
			[x, top + widthMm],
		];
	});
	const across = drawPath(
		pathOf(
			[
				[-widthMm / 2, 0],
				[widthMm / 2, 0],
			],
			'open',
		),
		{
			stroke: colours.mark,
			'stroke-width': lines.plain / pen.unitsPerMm,
			'stroke-dasharray': `${12 / pen.unitsPerMm} ${9 / pen.unitsPerMm}`,
		},
	);
	const far = (y: number) =>
		drawPath(
			pathOf(
				[
					[-widthMm / 2, y],
					[x + wide, y],
				],
				'open',
			),
			{stroke: colours.quiet, 'stroke-width': lines.hair / pen.unitsPerMm},
		);
	const svg = bars.map((bar, index) => drawBar(bar, {pen, isDark: index % 2 === 0})).join('');
	return {
		svg: capsule.svg + across + far(-lengthMm / 2) + far(lengthMm / 2) + svg,
		box: boxAround([capsule.box, boxOf(bars.flat())]),
	};
}

function drawBar(bar: readonly Point[], {pen, isDark}: {pen: Pen; isDark: boolean}): string {
	return drawPath(pathOf(bar), {
		fill: isDark ? colours.mark : colours.white,
		stroke: colours.mark,
		'stroke-width': lines.thin / pen.unitsPerMm,
	});
}

/** A bar of `times` the case's length stands at the longest horn. */
function drawHornMark(shape: Shape, times: number, pen: Pen): Drawing {
	const capsule = drawCapsule(shape, pen);
	const isFront = shape.frontHorns.length >= shape.backHorns.length;
	const [foot] = hornLine(shape, outlineOf(shape), isFront ? 'front' : 'back');
	if (!foot) return capsule;
	const out = isFront ? -1 : 1;
	const [x, wide] = [Math.max(capsule.box.right, foot[0]) + 14 / pen.unitsPerMm, 20 / pen.unitsPerMm];
	const tip = foot[1] + out * times * shape.size.lengthMm;
	const bar: readonly Point[] = [
		[x, foot[1]],
		[x + wide, foot[1]],
		[x + wide, tip],
		[x, tip],
	];
	const line = drawPath(
		pathOf(
			[
				[-x, tip],
				[x + wide, tip],
			],
			'open',
		),
		{
			stroke: colours.mark,
			'stroke-width': lines.plain / pen.unitsPerMm,
			'stroke-dasharray': `${12 / pen.unitsPerMm} ${9 / pen.unitsPerMm}`,
		},
	);
	const box = boxAround([capsule.box, boxOf([...bar, [-x, tip]])]);
	return {svg: line + capsule.svg + drawBar(bar, {pen, isDark: true}), box};
}

/** A string stretched out beside the case and a bar of `times` its length. */
function drawString(shape: Shape, times: number, pen: Pen): Drawing {
	const bare = withParts(shape, {tendrils: {front: 0, back: 0}});
	const capsule = drawCapsule(bare, pen);
	const {lengthMm, widthMm} = shape.size;
	const foot: Point = [outlineOf(shape).halfAt(0) * 0.93, -lengthMm / 2];
	const longMm = Math.max(shape.tendrils.front, shape.tendrils.back) * lengthMm;
	const x = widthMm / 2 + 26 / pen.unitsPerMm;
	const stretched = `M${foot.join(' ')}Q${x} ${foot[1] - 8 / pen.unitsPerMm} ${x} ${foot[1] + widthMm * 0.2}L${x} ${foot[1] + longMm}`;
	const ghosts = Array.from({length: Math.max(0, Math.ceil(times) - 1)}, (_, index) => {
		const ghost = drawCapsule(bare, {...pen, lost: ['aprons', 'horns', 'sides', 'surface']});
		return `<g opacity="0.45" transform="translate(0 ${(index + 1) * lengthMm})">${ghost.svg}</g>`;
	});
	const end = foot[1] + times * lengthMm;
	const mark = drawPath(
		pathOf(
			[
				[-widthMm / 2, end],
				[x + 22 / pen.unitsPerMm, end],
			],
			'open',
		),
		{
			stroke: colours.mark,
			'stroke-width': lines.plain / pen.unitsPerMm,
			'stroke-dasharray': `${12 / pen.unitsPerMm} ${9 / pen.unitsPerMm}`,
		},
	);
	const string = drawPath(stretched, {
		stroke: colours.ink,
		'stroke-width': (lines.bold * 1.4) / pen.unitsPerMm,
	});
	const box = boxAround([
		capsule.box,
		{
			left: -widthMm / 2,
			right: x + 22 / pen.unitsPerMm,
			top: foot[1] - 8 / pen.unitsPerMm,
			bottom: Math.max(end, foot[1] + longMm),
		},
	]);
	return {svg: ghosts.join('') + capsule.svg + mark + string, box};
}
