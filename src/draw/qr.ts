/** A link as a square of dots that a phone's camera reads (QR code, ISO/IEC 18004). */
import makeCode from 'qrcode-generator';
import type {Box} from './path.ts';

/** A QR code as SVG with one unit for each dot, four units of white round it as the standard wants. */
export type Code = {readonly svg: string; readonly box: Box; readonly dots: number};

const quietDots = 4;
/** Version 40 of level M. */
const mostBytes = 2331;

/** Draws a link as a QR code with medium error correction; throws for what is no link or has over 2331 bytes. */
export function drawCode(link: string): Code {
	if (!URL.canParse(link)) throw new Error(`Expected a whole link for a QR code; got "${link}"`);
	// The package takes the lower half of each letter's code: only the written-out form is safe.
	const plain = new URL(link).href;
	if (plain.length > mostBytes) {
		throw new Error(`Expected a link of at most ${mostBytes} bytes for a QR code; got ${plain.length}`);
	}
	const code = makeCode(0, 'M');
	code.addData(plain, 'Byte');
	code.make();
	const dots = code.getModuleCount();
	const rows = Array.from({length: dots}, (_, row) => rowPath(column => code.isDark(row, column), row, dots));
	const side = dots + 2 * quietDots;
	const svg = `<rect x="0" y="0" width="${side}" height="${side}" fill="#ffffff"/><path d="${rows.join('')}" fill="#000000"/>`;
	return {svg, box: {left: 0, top: 0, right: side, bottom: side}, dots};
}

/** Dark dots side by side are one bar: seams between them show in print. */
function rowPath(isDark: (column: number) => boolean, row: number, dots: number): string {
	let path = '';
	for (let from = 0; from < dots; from++) {
		if (!isDark(from)) continue;
		let to = from;
		while (to < dots && isDark(to)) to++;
		path += `M${from + quietDots} ${row + quietDots}h${to - from}v1h-${to - from}z`;
		from = to;
	}
	return path;
}
