/** A sheet of a region's cases at their true size, to hold a find against. */
import type {Say} from '../text/text.ts';
import {wrapHard} from './flow.ts';
import {a4, heightOfLines, type Page, type PageWords} from './page.ts';
import {colours} from './palette.ts';
import type {Drawing} from './profile.ts';
import {drawRuler} from './ruler.ts';
import {type Cell, type Placed, placeOnPages} from './shelves.ts';

/** A published size in whole or half millimetres, and where it was published. */
export type CribSize = {
	readonly range: readonly [from: number, to: number];
	/** What is drawn. */
	readonly middle: number;
	readonly citation: string;
};

/** One kind of a sheet; its drawing is in millimetres at true size. */
export type CribKind = {
	readonly label: string;
	readonly scientificName: string;
	/** Absent where nobody has published it. */
	readonly length?: CribSize | undefined;
	readonly width?: CribSize | undefined;
	readonly drawing: Drawing;
	/** Its strings are drawn shorter than they are, so that the case itself can be shown at true size. */
	readonly hasShortStrings?: boolean;
};

const marginMm = 12;
const headMm = 13;
const footMm = 24;
const area = {
	xMm: marginMm,
	topMm: marginMm + headMm,
	widthMm: a4.widthMm - 2 * marginMm,
	heightMm: a4.heightMm - 2 * marginMm - headMm - footMm,
};
/** Three beside each other. */
const leastCellMm = 58.6;
const gapMm = 5;
const nameSet = {size: 4, weight: 'bold'} as const;
const plainSet = {size: 3.3} as const;
const sourceSet = {size: 2.9} as const;

/**
 * Lays out kinds at true size, those too large for the page at half of it, which is said beside them; then the sources
 * of their sizes. Every page carries a ruler to check the print with.
 */
export function cribPages(parts: {
	readonly heading: string;
	readonly kinds: readonly CribKind[];
	readonly say: Say;
}): readonly Page[] {
	const {heading, kinds, say} = parts;
	if (kinds.length === 0) throw new Error('Expected at least one kind for a sheet; got none');
	const citations = citationsOf(kinds);
	const cells = kinds.map(kind => kindCell(kind, {say, citations}));
	const sources = sourceCell(citations, say);
	const pages = placeOnPages(cells, sources, area);
	return pages.map((placed, index) => ({
		...a4,
		items: [
			...headOf(heading, {say, page: index + 1, pages: pages.length}),
			...placed.flatMap(itemsOf),
			...footOf(say),
		],
	}));
}

/** What a sheet shows, kind by kind, as plain text. */
export function cribWords(kinds: readonly CribKind[], say: Say): string {
	const citations = citationsOf(kinds);
	return kinds
		.map(kind => `${kind.label} (${kind.scientificName}): ${sizeWords(kind, {say, citations}).join(' ')}`)
		.join('\n');
}

type Told = {readonly say: Say; readonly citations: readonly string[]};

function citationsOf(kinds: readonly CribKind[]): readonly string[] {
	const all = kinds.flatMap(({length, width}) => [length?.citation, width?.citation]);
	return [...new Set(all)].filter(citation => citation !== undefined);
}

function sizeWords({length, width}: CribKind, {say, citations}: Told): readonly string[] {
	const written = (mm: number, decimals: number) =>
		new Intl.NumberFormat(say.language, {maximumFractionDigits: decimals}).format(mm);
	const words = (size: CribSize, id: string) =>
		say.say(id, {
			from: written(size.range[0], 0),
			to: written(size.range[1], 0),
			middle: written(size.middle, 1),
			number: citations.indexOf(size.citation) + 1,
		});
	return [
		length ? words(length, 'crib-length') : say.say('crib-no-length'),
		width ? words(width, 'crib-width') : say.say('crib-no-width'),
	];
}

function kindCell(kind: CribKind, told: Told): Cell {
	const {svg} = kind.drawing;
	const box = withEdge(kind.drawing.box);
	const [fullWide, fullHigh] = [box.right - box.left, box.bottom - box.top];
	const roomMm = area.heightMm - 34;
	const scale = fullWide > area.widthMm || fullHigh > roomMm ? 0.5 : 1;
	const [wide, high] = [fullWide * scale, fullHigh * scale];
	if (wide > area.widthMm || high > roomMm) {
		throw new Error(
			`Expected a drawing of "${kind.label}" that fits on the page at half size; it is ${Math.round(fullWide)} by ${Math.round(fullHigh)} mm`,
		);
	}
	const widthMm = Math.max(leastCellMm, wide);
	const notes = [
		...(kind.hasShortStrings ? [told.say.say('crib-strings')] : []),
		...(scale === 1 ? [] : [told.say.say('crib-half')]),
	];
	const paragraphs = [
		{words: kind.label, set: nameSet, role: 'heading'},
		{words: kind.scientificName, set: plainSet, role: 'text'},
		...sizeWords(kind, told).map(words => ({words, set: plainSet, role: 'text'}) as const),
		...notes.map(words => ({words, set: {...plainSet, weight: 'bold'}, role: 'text'}) as const),
	] as const;
	let y = high + 1.5;
	const words = paragraphs.map(({words, set, role}): PageWords => {
		const lines = wrapHard(words, widthMm, set);
		const item = {kind: 'words', lines, xMm: 0, footMm: y + set.size, sizeMm: set.size, role} as const;
		y += heightOfLines(lines.length, set.size);
		return {...item, weight: 'weight' in set ? set.weight : 'plain'};
	});
	const alt = told.say.say('crib-alt', {label: kind.label});
	const drawing = {kind: 'drawing', svg, box, xMm: 0, yMm: 0, widthMm: wide, heightMm: high, alt} as const;
	return {widthMm, heightMm: y, items: [...words.slice(0, 1), drawing, ...words.slice(1)], gapMm};
}

/** A box with room for the outer half of the lines along its edge. */
function withEdge({left, top, right, bottom}: Drawing['box']): Drawing['box'] {
	const edgeMm = 0.4;
	return {left: left - edgeMm, top: top - edgeMm, right: right + edgeMm, bottom: bottom + edgeMm};
}

function sourceCell(citations: readonly string[], say: Say): Cell {
	const texts = [
		say.say('crib-sources'),
		...citations.map((citation, index) => `[${index + 1}] ${citation}`),
	];
	let y = 2;
	const items = texts.map((words, index): PageWords => {
		const set = index === 0 ? plainSet : sourceSet;
		const lines = wrapHard(words, area.widthMm, set);
		const item = {kind: 'words', lines, xMm: 0, footMm: y + set.size, sizeMm: set.size} as const;
		y += heightOfLines(lines.length, set.size);
		return {...item, fill: colours.quiet};
	});
	return {widthMm: area.widthMm, heightMm: y, items, gapMm};
}

function headOf(
	heading: string,
	{say, page, pages}: {say: Say; page: number; pages: number},
): readonly PageWords[] {
	const words = {kind: 'words', footMm: marginMm + 6} as const;
	const right = {xMm: a4.widthMm - marginMm, anchor: 'end'} as const;
	return [
		{
			...words,
			lines: [heading],
			xMm: marginMm,
			sizeMm: 6,
			weight: 'bold',
			role: page === 1 ? 'title' : 'heading',
		},
		{
			...words,
			lines: [say.say('crib-page', {page, pages})],
			...right,
			sizeMm: plainSet.size,
			fill: colours.quiet,
		},
	];
}

function footOf(say: Say): Page['items'] {
	const yMm = a4.heightMm - marginMm - 11;
	const size = {kind: 'words', sizeMm: 4, weight: 'bold'} as const;
	return [
		{...size, lines: [say.say('crib-ruler')], xMm: marginMm, footMm: yMm - 2.5},
		...drawRuler({xMm: marginMm + 2, yMm, alt: say.say('crib-ruler-alt')}),
	];
}

function itemsOf({cell, xMm, yMm}: Placed): Page['items'] {
	return cell.items.map(item =>
		item.kind === 'words'
			? {...item, xMm: item.xMm + xMm, footMm: item.footMm + yMm}
			: {...item, xMm: item.xMm + xMm, yMm: item.yMm + yMm},
	);
}
