/** A map of finds: land and sea, places as dots, blurred places as the squares they may lie in. */
import type {Say} from '../text/text.ts';
import {type Chart, chartOf, drawHeading, drawNote, emptyChart, innerWidth} from './chart.ts';
import {type Box, type Coast, cutCoast} from './coastline.ts';
import {drawWords, widthOfWords} from './lettering.ts';
import {type Dot, gathered} from './map-dots.ts';
import {cornersOf, frameAround, type MapFrame, type MapPlace} from './map-frame.ts';
import {type Busy, drawScale} from './map-scale.ts';
import {card, colours, letters, lines} from './palette.ts';

/** What a map is drawn from; `coast` has to hold all that the map shows. */
export type MapParts = {
	readonly heading: string;
	readonly places: readonly MapPlace[];
	readonly coast: Coast;
	readonly say: Say;
};

/** The stretch of coast that a map of these places needs; `undefined` when there are none. */
export function mapBox(places: readonly MapPlace[]): Box | undefined {
	return places.length === 0 ? undefined : frameAround(places, innerWidth).box;
}

/** Draws a map cut to its places; throws when the coast does not reach as far as the map. */
export function drawMap({heading, places, coast, say}: MapParts): Chart {
	const [points, squares] = [places.filter(isPoint), sumSquares(places.filter(isSquare))];
	if (places.length === 0) return emptyChart(heading, say.say('chart-nothing'));
	const frame = frameAround(places, innerWidth);
	expectCoast(coast, frame.box);
	const dots = gathered(points, frame);
	const head = drawHeading(heading);
	const notes = [
		...(dots.length > 0 ? [say.say('map-dots')] : []),
		...(squares.length > 0 ? [say.say('map-squares')] : []),
		say.say('map-source'),
	];
	let foot = head.footUnits + frame.heightUnits + 12;
	const under = notes.map(note => {
		const drawn = drawNote(note, foot);
		foot = drawn.footUnits;
		return drawn.svg;
	});
	const inside = [
		head.svg,
		`<svg x="${card.margin}" y="${head.footUnits}" width="${frame.widthUnits}" height="${frame.heightUnits}" viewBox="0 0 ${frame.widthUnits} ${frame.heightUnits}" overflow="hidden">`,
		drawLand(coast, frame),
		// Below all finds: where every corner has some, it may be covered and covers none.
		drawScale(frame, [...dots, ...squares.map(square => reachOf(square, frame))], say),
		...squares.map(square => drawSquare(square, frame)),
		...dots.map(drawDot),
		`<rect width="${frame.widthUnits}" height="${frame.heightUnits}" fill="none" stroke="${colours.ink}" stroke-width="${lines.plain}"/>`,
		'</svg>',
		...under,
	].join('\n');
	return chartOf({inside, heightUnits: foot + card.margin - 8, ...mapWords({heading, points, squares, say})});
}

type Square = Extract<MapPlace, {kind: 'square'}>;
type Point = Extract<MapPlace, {kind: 'point'}>;

function isSquare(place: MapPlace): place is Square {
	return place.kind === 'square';
}

function isPoint(place: MapPlace): place is Point {
	return place.kind === 'point';
}

/** The round that holds a square. */
function reachOf(square: Square, frame: MapFrame): Busy {
	const corners = cornersOf(square).map(([longitude, latitude]) => frame.project(longitude, latitude));
	const middle = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length;
	const [x, y] = [middle(0), middle(1)];
	return {x, y, radius: Math.max(...corners.map(corner => Math.hypot(corner[0] - x, corner[1] - y)))};
}

/** Finds in one square are one square with their sum. */
function sumSquares(squares: readonly Square[]): readonly Square[] {
	const sums = new Map<string, Square>();
	for (const square of squares) {
		const corners = `${square.south} ${square.west} ${square.north} ${square.east}`;
		sums.set(corners, {...square, count: square.count + (sums.get(corners)?.count ?? 0)});
	}
	return [...sums.values()];
}

function expectCoast({box}: Coast, needed: Box): void {
	const turn = 360 * Math.round((box.west - needed.west) / 360);
	const isWhole = box.east - box.west >= 360;
	const isHeld =
		box.south <= needed.south &&
		box.north >= needed.north &&
		(isWhole || (box.west <= needed.west + turn && box.east >= needed.east + turn));
	if (isHeld) return;
	const words = ({south, west, north, east}: Box) =>
		[south, west, north, east].map(degrees => degrees.toFixed(2)).join(', ');
	throw new Error(
		`Expected a coast that holds the map's box (south, west, north, east: ${words(needed)}); it holds ${words(box)}`,
	);
}

function drawLand(coast: Coast, frame: MapFrame): string {
	const paths = cutCoast(coast, frame.box).rings.map(ring => {
		const path: string[] = [];
		let last: readonly [number, number] | undefined;
		for (const [longitude, latitude] of ring) {
			const [x, y] = frame.project(longitude, latitude);
			// Nearer points than a hair is wide only make the file larger.
			if (last && Math.hypot(x - last[0], y - last[1]) < 0.7) continue;
			last = [x, y];
			path.push(`${path.length === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`);
		}
		return `${path.join('')}Z`;
	});
	return [
		`<rect width="${frame.widthUnits}" height="${frame.heightUnits}" fill="${colours.sea}"/>`,
		`<path d="${paths.join('')}" fill="${colours.land}" fill-rule="evenodd" stroke="${colours.quiet}" stroke-width="2"/>`,
	].join('\n');
}

function drawSquare(square: Square, frame: MapFrame): string {
	const corners = cornersOf(square).map(([longitude, latitude]) => frame.project(longitude, latitude));
	const path = corners.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`);
	const xs = corners.map(([x]) => x);
	const ys = corners.map(([, y]) => y);
	const [left, right] = [Math.min(...xs), Math.max(...xs)];
	const middleY = (Math.min(...ys) + Math.max(...ys)) / 2;
	const shape = `<path d="${path.join('')}Z" fill="${colours.white}" fill-opacity="0.55" stroke="${colours.mark}" stroke-width="${lines.plain}" stroke-dasharray="14 10"/>`;
	if (square.count < 2) return shape;
	const words = String(square.count);
	const set = {size: letters.small, weight: 'bold'} as const;
	const width = widthOfWords(words, set) + 14;
	// A number that does not fit into its square stands beside it.
	const x = width < right - left - 10 ? (left + right) / 2 - width / 2 : right + 6;
	return [
		shape,
		`<rect x="${x}" y="${middleY - 20}" width="${width}" height="40" rx="6" fill="${colours.white}"/>`,
		drawWords(words, {...set, x: x + width / 2, y: middleY + 13, anchor: 'middle', fill: colours.mark}),
	].join('');
}

function drawDot({x, y, radius, count}: Dot): string {
	const round = `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="${radius.toFixed(1)}" fill="${colours.mark}" stroke="${colours.white}" stroke-width="4"/>`;
	if (count < 2) return round;
	const placed = {
		size: letters.small,
		weight: 'bold',
		anchor: 'middle',
		fill: colours.white,
		x,
		y: y + 12.5,
	} as const;
	return round + drawWords(String(count), placed);
}

function mapWords(parts: {heading: string; points: readonly Point[]; squares: readonly Square[]; say: Say}): {
	readonly alt: string;
	readonly plain: readonly string[];
} {
	const {heading, points, squares, say} = parts;
	const sum = (places: readonly MapPlace[]) => places.reduce((all, {count}) => all + count, 0);
	const values = {places: points.length, squares: squares.length, cases: sum(points) + sum(squares)};
	const degrees = (value: number, decimals: number) => value.toFixed(decimals);
	return {
		alt: `${heading}. ${say.say('map-alt', values)}`,
		plain: [
			heading,
			...points.map(({latitude, longitude, count}) =>
				say.say('map-line', {latitude: degrees(latitude, 4), longitude: degrees(longitude, 4), count}),
			),
			...squares.map(({south, west, north, east, count}) => {
				const ends = {
					south: degrees(south, 3),
					west: degrees(west, 3),
					north: degrees(north, 3),
					east: degrees(east, 3),
				};
				return say.say('map-line-square', {...ends, count});
			}),
		],
	};
}
