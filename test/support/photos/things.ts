/** Sheets, cards, stones and weed as SVG, sizes in millimetres. */
import {between, type Pick} from '../../../src/key/random.ts';

/** A plain sheet of paper; each sheet is a little off white. */
export function drawPaper(widthMm: number, heightMm: number, pick: Pick): string {
	const light = between(pick, [222, 250]);
	const blue = light * between(pick, [0.95, 1.01]);
	const fill = `rgb(${Math.round(light)},${Math.round(light * between(pick, [0.985, 1.005]))},${Math.round(Math.min(255, blue))})`;
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthMm} ${heightMm}"><rect width="${widthMm}" height="${heightMm}" fill="${fill}"/></svg>`;
}

/** A bank card with rounded corners, print, a stripe or a chip. */
export function drawCard(widthMm: number, heightMm: number, pick: Pick): string {
	const tone = () => Math.round(between(pick, [10, 250]));
	const colour = () => `rgb(${tone()},${tone()},${tone()})`;
	const [face, other] = [colour(), colour()];
	const parts: string[] = [];
	if (pick() < 0.4)
		parts.push(`<rect y="${heightMm * 0.1}" width="${widthMm}" height="${heightMm * 0.22}" fill="#221f1e"/>`);
	if (pick() < 0.4) parts.push('<rect x="9" y="19" width="13" height="10" rx="1.5" fill="#c8b06a"/>');
	if (pick() < 0.4) {
		parts.push(
			`<circle cx="${widthMm * 0.7}" cy="${heightMm * 0.6}" r="${between(pick, [8, 30])}" fill="${other}" opacity="0.5"/>`,
		);
	}
	for (let row = 0; row < Math.floor(between(pick, [0, 5])); row += 1) {
		const wide = between(pick, [15, 50]);
		parts.push(
			`<rect x="8" y="${33 + row * 4}" width="${wide}" height="1.6" fill="${other}" opacity="0.8"/>`,
		);
	}
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthMm} ${heightMm}"><defs><clipPath id="c"><rect width="${widthMm}" height="${heightMm}" rx="3.18"/></clipPath></defs><g clip-path="url(#c)"><rect width="${widthMm}" height="${heightMm}" fill="${face}"/>${parts.join('')}</g></svg>`;
}

/** A pebble, or a coin when `isCoin`. */
export function drawStone(sizeMm: number, pick: Pick, isCoin = false): string {
	const grey = Math.round(between(pick, [70, 170]));
	const points = Array.from({length: 40}, (_, index) => {
		const angle = (index / 40) * 2 * Math.PI;
		const r = isCoin ? 0.48 : 0.44 + 0.03 * Math.sin(2 * angle + 1) + 0.02 * Math.sin(3 * angle);
		return `${(0.5 + r * Math.cos(angle)) * sizeMm} ${(0.5 + r * (isCoin ? 1 : 0.7) * Math.sin(angle)) * sizeMm}`;
	});
	const fill = isCoin ? '#b08d57' : `rgb(${grey},${grey - 4},${grey - 12})`;
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${sizeMm} ${sizeMm}"><path d="M${points.join('L')}Z" fill="${fill}"/></svg>`;
}

/** A strand of weed or a few fibres. */
export function drawWeed(sizeMm: number, pick: Pick): string {
	const strands = Array.from({length: Math.floor(between(pick, [1, 4]))}, () => {
		const at = () => between(pick, [0.1, 0.9]) * sizeMm;
		const green = pick() < 0.5 ? '#4a4a22' : '#7a5230';
		return `<path d="M${at()} ${at()}Q${at()} ${at()} ${at()} ${at()}" fill="none" stroke="${green}" stroke-linecap="round" stroke-width="${between(pick, [0.3, 2])}"/>`;
	});
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${sizeMm} ${sizeMm}">${strands.join('')}</svg>`;
}
