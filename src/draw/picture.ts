/** A whole picture: a light card with rounded corners, and what stands on it. */
import {escapeSvg} from './lettering.ts';
import {card, colours, lines} from './palette.ts';

/** A finished picture as SVG, and what it shows in words. */
export type Drawn = {readonly svg: string; readonly widthUnits: number; readonly heightUnits: number};

/** Puts SVG on a card of 720 units by `heightUnits`; `title` says in words what is to be seen. */
export function onCard(inside: string, {heightUnits, title}: {heightUnits: number; title: string}): Drawn {
	const {widthUnits, corner} = card;
	const height = Math.round(heightUnits);
	const svg = [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthUnits} ${height}" width="${widthUnits}" height="${height}" role="img" stroke-linejoin="round" stroke-linecap="round">`,
		`<title>${escapeSvg(title)}</title>`,
		// Opaque to the very corners: what shows through in a dark chat would be dark.
		`<rect width="${widthUnits}" height="${height}" fill="${colours.card}"/>`,
		`<rect x="4" y="4" width="${widthUnits - 8}" height="${height - 8}" rx="${corner}" fill="none" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`,
		inside,
		'</svg>',
	].join('\n');
	return {svg, widthUnits, heightUnits: height};
}
