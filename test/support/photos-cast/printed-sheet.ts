/** Our measuring sheet as a printer would put it on paper, to be looked up point by point. */
import {join} from 'node:path';
import sharp from 'sharp';
import {markSideMm, marks} from '../../../src/capsule/marks.ts';
import {measuringSheet} from '../../../src/draw/measuring-sheet.ts';
import {a4, pageSvg} from '../../../src/draw/page.ts';
import {projectRoot} from '../../../src/settings.ts';
import {readTexts} from '../../../src/text/text.ts';
import type {Print} from './paper.ts';
import {lightOf} from './scene.ts';

const dotsPerMm = 6;
/** Printed black is never quite black. */
const inkDepth = 0.94;

/** The sheet's print, as a share of the paper's light at each point; `printScale` is 1 for a true print. */
export async function readPrintedSheet(printScale: number): Promise<Print> {
	const [width, height] = [a4.widthMm * dotsPerMm, a4.heightMm * dotsPerMm];
	const {data, info} = await sharp(Buffer.from(sheetSvg()), {density: 72})
		.resize(width, height, {fit: 'fill'})
		.flatten({background: '#fff'})
		.greyscale()
		.raw()
		.toBuffer({resolveWithObject: true});
	const levels = Float32Array.from(data, lightOf);
	const at = (column: number, row: number) =>
		column < 0 || row < 0 || column >= width || row >= height
			? 1
			: (levels[(row * width + column) * info.channels] ?? 1);
	return (x, y, ink) => {
		const across = (x / printScale + a4.widthMm / 2) * dotsPerMm - 0.5;
		const down = (y / printScale + a4.heightMm / 2) * dotsPerMm - 0.5;
		const [left, top] = [Math.floor(across), Math.floor(down)];
		const [a, b] = [across - left, down - top];
		const upper = at(left, top) * (1 - a) + at(left + 1, top) * a;
		const lower = at(left, top + 1) * (1 - a) + at(left + 1, top + 1) * a;
		const share = 1 - inkDepth * (1 - (upper * (1 - b) + lower * b));
		for (let channel = 0; channel < 3; channel += 1) ink[channel] = (ink[channel] ?? 0) * share;
	};
}

function sheetSvg(): string {
	const placed = marks.map(({fromMm: [x, y], cells}) => ({
		xMm: x + a4.widthMm / 2,
		yMm: y + a4.heightMm / 2,
		sideMm: markSideMm,
		cells,
	}));
	const say = readTexts([join(projectRoot(), 'src', 'text')]).in('en');
	const svg = pageSvg(measuringSheet(placed, say), 'sheet');
	// Drawn at its size in pixels from the first: enlarging it later would blur the marks.
	return svg.replace(
		/width="[^"]*" height="[^"]*"/,
		`width="${a4.widthMm * dotsPerMm}" height="${a4.heightMm * dotsPerMm}"`,
	);
}
