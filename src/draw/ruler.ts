/** A printed ruler that shows whether a page was printed at its true size. */
import type {PageDrawing, PageWords} from './page.ts';
import {colours} from './palette.ts';

/** The length of the ruler, in millimetres. */
export const rulerMm = 100;

const heightMm = 6;

/** A ruler of 100 mm with a line for each millimetre and a number for each ten; 10 mm high with its numbers. */
export function drawRuler(at: {
	readonly xMm: number;
	readonly yMm: number;
	readonly alt: string;
}): readonly [PageDrawing, ...PageWords[]] {
	const ticks = Array.from({length: rulerMm + 1}, (_, mm) => {
		const long = mm % 10 === 0 ? heightMm : mm % 5 === 0 ? 4 : 2.5;
		return `M${mm} ${heightMm}V${heightMm - long}`;
	});
	// Half of the line's width stands over on both sides, so the box is wider than the ruler by as much.
	const half = 0.1;
	const svg = `<path d="M0 ${heightMm}H${rulerMm}${ticks.join('')}" fill="none" stroke="${colours.ink}" stroke-width="${2 * half}"/>`;
	const numbers = Array.from(
		{length: rulerMm / 10 + 1},
		(_, tens): PageWords => ({
			kind: 'words',
			lines: [String(tens * 10)],
			xMm: at.xMm + tens * 10,
			footMm: at.yMm + heightMm + 3.6,
			sizeMm: 3,
			anchor: 'middle',
		}),
	);
	const box = {left: -half, top: 0, right: rulerMm + half, bottom: heightMm + half};
	const size = {widthMm: rulerMm + 2 * half, heightMm: heightMm + half};
	return [{kind: 'drawing', svg, box, xMm: at.xMm - half, yMm: at.yMm, ...size, alt: at.alt}, ...numbers];
}
