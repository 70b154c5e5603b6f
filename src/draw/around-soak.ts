/** A case in a bowl, all of it under water. */
import {plainShape} from '../key/shape.ts';
import type {Say} from '../text/text.ts';
import {drawCapsule} from './capsule.ts';
import {drawLines, lineHeight, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {drawPath} from './path.ts';
import {type Drawn, onCard} from './picture.ts';

const middle = card.widthUnits / 2;
const rim = {y: 150, half: 290, deep: 74} as const;
const unitsPerMm = 2.6;

/** Draws the bowl from above its rim; the case lies below the water, paler. */
export function drawSoak(say: Say, title: string): Drawn {
	const {svg} = drawCapsule(plainShape, {unitsPerMm});
	const bowl = `M${middle - rim.half} ${rim.y}C${middle - rim.half + 20} ${rim.y + 330} ${middle + rim.half - 20} ${rim.y + 330} ${middle + rim.half} ${rim.y}Z`;
	const water = (half: number, deep: number) => `cx="${middle}" cy="${rim.y}" rx="${half}" ry="${deep}"`;
	// Seen aslant, as the rim is: as much flatter as the rim is less deep than wide.
	const lying = `translate(${middle} ${rim.y + 4}) scale(1 0.42) rotate(90) scale(${unitsPerMm})`;
	const waves = `M${middle - 190} ${rim.y + 22}q24 -18 48 0t48 0M${middle + 96} ${rim.y - 26}q24 -18 48 0t48 0`;
	const words = wrapWords(say.say('drawn-soak'), card.widthUnits - 4 * card.margin, {size: letters.small});
	const foot = rim.y + 290;
	return onCard(
		[
			drawPath(bowl, {fill: colours.white, stroke: colours.ink, 'stroke-width': lines.plain}),
			`<ellipse ${water(rim.half, rim.deep)} fill="${colours.white}" stroke="${colours.ink}" stroke-width="${lines.plain}"/>`,
			`<ellipse ${water(rim.half - 16, rim.deep - 11)} fill="${colours.sea}" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`,
			`<g transform="${lying}">${svg}</g>`,
			`<ellipse ${water(rim.half - 16, rim.deep - 11)} fill="${colours.sea}" fill-opacity="0.45"/>`,
			drawPath(waves, {stroke: colours.mark, 'stroke-width': lines.plain}),
			drawLines(words, {x: middle, y: foot, size: letters.small, anchor: 'middle'}),
		].join('\n'),
		{heightUnits: foot + (words.length - 1) * letters.small * lineHeight + card.margin + 4, title},
	);
}
