/** A measured length against the lengths of the kinds it may be: a bar for each kind, and the mark at every bar. */
import type {Measure, Region} from '../key/region.ts';
import type {Say} from '../text/text.ts';
import {drawHeading, innerWidth} from './chart.ts';
import {drawLines, drawWords, lineHeight, widthOfWords, wrapWords} from './lettering.ts';
import {card, colours, letters, lines} from './palette.ts';
import {type Drawn, onCard} from './picture.ts';
import type {Wanted} from './title.ts';

/** A length as measured, and the kinds it is held against. */
export type LengthsWanted = Extract<Wanted, {kind: 'lengths'}>;

type Scale = {readonly from: number; readonly to: number};

const barHeight = 26;
/** How far the mark reaches over a bar, above and below. */
const markBeyond = 9;

/** Draws the lengths; a kind without a published length is told so in words. */
export function drawLengths(wanted: LengthsWanted, {region, say}: {region: Region; say: Say}): Drawn {
	const kinds = wanted.taxa.map(taxon => ({
		name: say.say(`taxon-${taxon}`),
		measure: region.profiles.taxa[taxon]?.lengthMm,
	}));
	const scale = scaleOf(
		wanted,
		kinds.flatMap(({measure}) => measure ?? []),
	);
	const head = drawHeading(measuredText(wanted, say));
	const rows: string[] = [];
	let foot = head.footUnits;
	for (const {name, measure} of kinds) {
		const row = drawRow({name, measure}, {wanted, top: foot, scale, say});
		rows.push(row.svg);
		foot = row.foot;
	}
	return onCard([head.svg, ...rows].join('\n'), {
		heightUnits: foot + card.margin,
		title: lengthsTitle(wanted, {region, say}),
	});
}

/** What the picture shows in words. */
export function lengthsTitle(wanted: LengthsWanted, {region, say}: {region: Region; say: Say}): string {
	const kinds = wanted.taxa.map(taxon => {
		const range = region.profiles.taxa[taxon]?.lengthMm?.range;
		const name = say.say(`taxon-${taxon}`);
		return range
			? say.say('lengths-kind', {name, low: Math.round(range[0]), high: Math.round(range[1])})
			: say.say('lengths-kind-none', {name});
	});
	return [measuredText(wanted, say), ...kinds].join(' ');
}

function measuredText({mm, plusMinusMm, countsAs}: LengthsWanted, say: Say): string {
	return say.say(countsAs === 'exact' ? 'lengths-measured' : 'lengths-least', {mm, plusMinus: plusMinusMm});
}

/** All that is drawn, with a little room at both ends. */
function scaleOf({mm, plusMinusMm}: LengthsWanted, measures: readonly Measure[]): Scale {
	const ends = [mm - plusMinusMm, mm + plusMinusMm, ...measures.flatMap(({range}) => range)];
	const [low, high] = [Math.min(...ends), Math.max(...ends)];
	const room = (high - low) * 0.06 + 1;
	return {from: low - room, to: high + room};
}

function at(mm: number, {from, to}: Scale): number {
	return card.margin + (innerWidth * (mm - from)) / (to - from);
}

/** A band as wide as the uncertainty; a length that is only the least goes on to the right. */
function drawMark(
	{mm, plusMinusMm, countsAs}: LengthsWanted,
	{scale, y}: {readonly scale: Scale; readonly y: number},
): string {
	const [top, foot] = [y - markBeyond, y + barHeight + markBeyond];
	const left = at(mm - plusMinusMm, scale);
	const right = countsAs === 'exact' ? at(mm + plusMinusMm, scale) : card.margin + innerWidth;
	const band = `<rect x="${left}" y="${top}" width="${Math.max(right - left, 3)}" height="${foot - top}" fill="${colours.mark}" opacity="0.25"/>`;
	const x = at(mm, scale);
	return `${band}<path d="M${x} ${top}V${foot}" stroke="${colours.mark}" stroke-width="${lines.plain}" stroke-dasharray="${countsAs === 'exact' ? 'none' : '12 9'}"/>`;
}

function drawRow(
	{name, measure}: {readonly name: string; readonly measure: Measure | undefined},
	{
		wanted,
		top,
		scale,
		say,
	}: {
		readonly wanted: LengthsWanted;
		readonly top: number;
		readonly scale: Scale;
		readonly say: Say;
	},
): {readonly svg: string; readonly foot: number} {
	const set = {size: letters.plain, weight: 'bold'} as const;
	const words = wrapWords(name, innerWidth, set);
	const title = drawLines(words, {...set, x: card.margin, y: top + 12 + set.size});
	const below = top + 12 + words.length * set.size * lineHeight;
	if (!measure) {
		const none = {size: letters.small, x: card.margin, y: below + letters.small, fill: colours.quiet};
		return {svg: title + drawWords(say.say('lengths-none'), none), foot: below + letters.small * 1.6};
	}
	const [low, high] = measure.range;
	const [left, right, y] = [at(low, scale), at(high, scale), below + 14];
	const bar = `<rect x="${left}" y="${y}" width="${Math.max(right - left, 4)}" height="${barHeight}" rx="5" fill="${colours.capsule}" stroke="${colours.ink}" stroke-width="${lines.thin}"/>`;
	const foot = y + barHeight + letters.small * 1.15;
	return {
		svg: title + bar + drawMark(wanted, {scale, y}) + drawEnds([low, high], {ends: [left, right], y: foot}),
		foot: foot + 16,
	};
}

/** The figures under a bar; where both would not fit side by side they become one. */
function drawEnds(
	[low, high]: readonly [number, number],
	{ends: [left, right], y}: {readonly ends: readonly [number, number]; readonly y: number},
): string {
	const set = {size: letters.small, y, fill: colours.quiet, anchor: 'middle'} as const;
	const [first, last] = [String(Math.round(low)), String(Math.round(high))];
	const both = `${first}–${last}`;
	const inside = (x: number, words: string) => {
		const half = widthOfWords(words, set) / 2;
		return Math.min(Math.max(x, card.margin + half), card.margin + innerWidth - half);
	};
	const isNarrow = right - left < widthOfWords(both, set);
	if (isNarrow) return drawWords(both, {...set, x: inside((left + right) / 2, both)});
	return (
		drawWords(first, {...set, x: inside(left, first)}) + drawWords(last, {...set, x: inside(right, last)})
	);
}
