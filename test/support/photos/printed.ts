/** The measuring sheet as somebody's printer put it on paper. */
import {between, type Pick} from '../../../src/key/random.ts';

// Rows of the dictionary "4x4" of ArUco, ids 0 to 3, 1 for white; `test/outside/` holds them to OpenCV.
const grids = ['1011010100110010', '0000111110011010', '0011001100101101', '1001100101000110'];

/** A sheet of A4 with its marks printed at a scale; 1 is true. */
export function drawSheet(scale: number, pick: Pick): string {
	const paper = Math.round(between(pick, [228, 250]));
	const ink = Math.round(between(pick, [8, 50]));
	const places = [
		[12, 12],
		[173, 12],
		[173, 260],
		[12, 260],
	] as const;
	const marks = grids.map((bits, id) => {
		const [x, y] = places[id] ?? [0, 0];
		const cell = 25 / 6;
		const white = [...bits].flatMap((bit, index) =>
			bit === '1'
				? [
						`<rect x="${x + cell * (1 + (index % 4))}" y="${y + cell * (1 + Math.floor(index / 4))}" width="${cell}" height="${cell}" fill="rgb(${paper},${paper},${paper})"/>`,
					]
				: [],
		);
		return `<rect x="${x}" y="${y}" width="25" height="25" fill="rgb(${ink},${ink},${ink})"/>${white.join('')}`;
	});
	const extras = `<rect x="62.2" y="230" width="85.6" height="53.98" rx="3.18" fill="none" stroke="rgb(${ink},${ink},${ink})" stroke-width="0.3"/><path d="M55 20H155M55 17V23M155 17V23" fill="none" stroke="rgb(${ink},${ink},${ink})" stroke-width="0.4"/>`;
	const whole = pick() < 0.6 ? extras : '';
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 210 297"><rect width="210" height="297" fill="rgb(${paper},${paper},${paper - 3})"/><g transform="translate(105 148.5) scale(${scale}) translate(-105 -148.5)" shape-rendering="geometricPrecision">${marks.join('')}${whole}</g></svg>`;
}
