/** What can be seen on the face of a case: lines, net, ridges, prickles, hairs, bark, fur; in millimetres. */
import type {Shape} from '../key/shape.ts';
import type {Outline} from './contour.ts';
import {colours, lines} from './palette.ts';
import {drawPath, type Point, pathOf, scattered, upTo} from './path.ts';

/** What is drawn with: units of the picture to a millimetre, so that lines stay as thick at any size. */
export type Pen = {readonly unitsPerMm: number};

/** Room kept free at both sides, so that lines do not touch the outline. */
const inset = 0.88;

/** Everything on one face; `face` says which, since fur and hairs may cover only the top. */
export function drawSurface(
	shape: Shape,
	outline: Outline,
	{pen, face}: {pen: Pen; face: 'top' | 'under'},
): string {
	const {surface} = shape;
	const isFurry = surface.fur && (face === 'top' || surface.under === 'same');
	return [
		isFurry ? '' : drawGrain(shape, outline, pen),
		surface.net ? drawNet(shape, outline, pen) : '',
		surface.ridges ? drawRidges(outline, pen) : '',
		surface.bark ? drawBark(outline, pen) : '',
		surface.prickles ? drawPrickles(outline, pen) : '',
		surface.hairs ? drawHairs(outline, pen) : '',
		isFurry ? drawFur(outline, pen) : '',
	].join('');
}

function drawGrain({grain}: Shape, outline: Outline, pen: Pen): string {
	const isStrong = grain.strength === 'strong';
	const runs = upTo(grain.count - 1).map(index => {
		// Strong lines stand further apart.
		if (isStrong && index % 2 === 1) return '';
		const across = grain.count === 1 ? 0 : (index / (grain.count - 1)) * 2 - 1;
		const [from, to] = isStrong
			? [0.05, 0.95]
			: [0.06 + scattered(index) * 0.1, 0.94 - scattered(index + 50) * 0.1];
		return pathOf(lengthwise(outline, across * inset, {from, to}), 'open');
	});
	return drawPath(runs.join(''), {
		stroke: colours.grain,
		'stroke-width': (isStrong ? lines.plain : lines.hair) / pen.unitsPerMm,
		'stroke-opacity': isStrong ? 1 : 0.75,
	});
}

/** A line from end to end that keeps its place between the sides. */
export function lengthwise(
	outline: Outline,
	across: number,
	{from, to}: {from: number; to: number},
): readonly Point[] {
	return upTo(12).map(step => {
		const along = from + ((to - from) * step) / 12;
		return [across * outline.halfAt(along), outline.downAt(along)];
	});
}

function drawNet({grain}: Shape, outline: Outline, pen: Pen): string {
	const rows = 16;
	const rungs = upTo(grain.count - 2).flatMap(index => {
		const at = (place: number) => ((place / (grain.count - 1)) * 2 - 1) * inset;
		return upTo(rows - 1).map(row => {
			const along = 0.08 + (row + (index % 2) * 0.5) * (0.84 / rows);
			const half = outline.halfAt(along);
			const down = outline.downAt(along);
			return pathOf(
				[
					[at(index) * half, down],
					[at(index + 1) * half, down],
				],
				'open',
			);
		});
	});
	return drawPath(rungs.join(''), {stroke: colours.grain, 'stroke-width': lines.thin / pen.unitsPerMm});
}

function drawRidges(outline: Outline, pen: Pen): string {
	return [-0.42, 0.42]
		.map(across => {
			const d = pathOf(lengthwise(outline, across, {from: 0.1, to: 0.9}), 'open');
			return (
				drawPath(d, {stroke: colours.ink, 'stroke-width': (lines.bold * 2.1) / pen.unitsPerMm}) +
				drawPath(d, {stroke: colours.pale, 'stroke-width': lines.bold / pen.unitsPerMm})
			);
		})
		.join('');
}

function drawPrickles(outline: Outline, pen: Pen): string {
	const tall = 15 / pen.unitsPerMm;
	const spikes = spread(outline, 90, 0.86).map(([x, y]) =>
		pathOf([
			[x - tall * 0.45, y + tall / 2],
			[x, y - tall / 2],
			[x + tall * 0.45, y + tall / 2],
		]),
	);
	return drawPath(spikes.join(''), {fill: colours.ink});
}

function drawHairs(outline: Outline, pen: Pen): string {
	const long = 24 / pen.unitsPerMm;
	const hairs = spread(outline, 70, 0.8).map(([x, y], index) => {
		const lean = (scattered(index + 7) - 0.5) * 1.6;
		return `M${x.toFixed(2)} ${y.toFixed(2)}q${(long * lean).toFixed(2)} ${(-long * 0.3).toFixed(2)} ${(long * lean * 0.6).toFixed(2)} ${(-long).toFixed(2)}`;
	});
	return drawPath(hairs.join(''), {stroke: colours.ink, 'stroke-width': lines.thin / pen.unitsPerMm});
}

function drawFur(outline: Outline, pen: Pen): string {
	const tall = 20 / pen.unitsPerMm;
	const tufts = spread(outline, 210, 0.92).map(([x, y], index) => {
		const lean = tall * (index % 2 === 0 ? 0.7 : -0.7);
		return pathOf(
			[
				[x - lean / 2, y + tall / 3],
				[x + lean / 2, y - tall / 3],
			],
			'open',
		);
	});
	return drawPath(tufts.join(''), {stroke: colours.ink, 'stroke-width': lines.thin / pen.unitsPerMm});
}

/** A pale coat that peels in strips: what is bare shows the case beneath. */
function drawBark(outline: Outline, pen: Pen): string {
	const strips = upTo(8).map(index => {
		const [from, to] = [scattered(index + 20) * 0.16, 1 - scattered(index + 40) * 0.3];
		const left = lengthwise(outline, -0.98 + index * 0.218, {from, to});
		const right = lengthwise(outline, -0.98 + index * 0.218 + 0.16 + scattered(index) * 0.05, {
			from: from + 0.03,
			to: to - 0.05,
		});
		const ragged = (points: readonly Point[], salt: number) =>
			points.map(
				([x, y], step): Point => [x + (scattered(salt + step * 3) - 0.5) * outline.widthMm * 0.035, y],
			);
		return pathOf([...ragged(left, index), ...ragged(right, index + 90).toReversed()]);
	});
	const cracks = upTo(26).map(index => {
		const across = -0.9 + scattered(index + 3) * 1.8;
		const from = 0.1 + scattered(index + 31) * 0.6;
		return pathOf(lengthwise(outline, across, {from, to: from + 0.14}), 'open');
	});
	return (
		drawPath(strips.join(''), {
			fill: colours.pale,
			stroke: colours.ink,
			'stroke-width': lines.thin / pen.unitsPerMm,
		}) + drawPath(cracks.join(''), {stroke: colours.grain, 'stroke-width': lines.thin / pen.unitsPerMm})
	);
}

/** Places all over the closed part, evenly but not in rows: a lattice turned by the golden angle's share. */
function spread(outline: Outline, count: number, within: number): readonly Point[] {
	return upTo(count - 1).map(index => {
		const along = 0.06 + (0.88 * (index + 0.5)) / count;
		const across = (((index * 0.618034) % 1) * 2 - 1) * within;
		return [across * outline.halfAt(along), outline.downAt(along)];
	});
}
