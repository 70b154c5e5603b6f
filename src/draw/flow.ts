/** Paragraphs put one below the other on a page, as large as there is room for. */

import {widthOfWords, wrapWords} from './lettering.ts';
import {heightOfLines, type PageWords} from './page.ts';

/** Words that belong together, with the size of letters they would like, in millimetres. */
export type Paragraph = {
	/** What they are to whoever wrote them, for errors. */
	readonly name: string;
	readonly words: string;
	readonly sizeMm: number;
	/** Smaller letters than these are not printed. */
	readonly leastMm: number;
	readonly weight?: 'plain' | 'bold';
	readonly role?: PageWords['role'];
	readonly fill?: string;
	/** Free space above, in millimetres. */
	readonly gapMm: number;
	/** A point before the first line, and all lines set in. */
	readonly isPoint?: boolean;
};

/** Where paragraphs may stand. */
export type Column = {
	readonly xMm: number;
	readonly topMm: number;
	readonly widthMm: number;
	readonly heightMm: number;
};

const steps = 20;
const bullet = '•';

/**
 * Sets paragraphs into a column, all of them smaller by the same share until they fit. Throws when they are too long at
 * their least sizes, and says by how much and which is the longest.
 */
export function flowInto(paragraphs: readonly Paragraph[], column: Column): readonly PageWords[] {
	for (let step = steps; step >= 0; step--) {
		const set = setParagraphs(paragraphs, column, step / steps);
		if (set.heightMm <= column.heightMm) return set.parts.map(({item}) => item);
	}
	const {heightMm, parts} = setParagraphs(paragraphs, column, 0);
	const over = Math.ceil(heightMm - column.heightMm);
	throw new Error(
		`Expected words that fit on the page at their smallest; they are ${over} mm too long, most of all "${tallest(parts)}"`,
	);
}

/** Words in lines of at most a width; a word that is wider by itself is broken, letter by letter. */
export function wrapHard(
	words: string,
	widthMm: number,
	set: {readonly size: number; readonly weight?: 'plain' | 'bold'},
): readonly string[] {
	return wrapWords(words, widthMm, set).flatMap(line => {
		const pieces = [''];
		for (const letter of line) {
			const last = pieces.at(-1) ?? '';
			if (last !== '' && widthOfWords(last + letter, set) > widthMm) pieces.push(letter);
			else pieces[pieces.length - 1] = last + letter;
		}
		return pieces;
	});
}

/** The name under which most of the height is taken. */
function tallest(parts: Set['parts']): string {
	const heights = new Map<string, number>();
	for (const {name, item} of parts) {
		heights.set(name, heightOfLines(item.lines.length, item.sizeMm) + (heights.get(name) ?? 0));
	}
	return [...heights].toSorted(([, one], [, other]) => other - one)[0]?.[0] ?? '';
}

type Set = {
	readonly heightMm: number;
	readonly parts: readonly {readonly name: string; readonly item: PageWords}[];
};

/** `share` 1 sets letters as large as is liked, 0 as small as is allowed. */
function setParagraphs(paragraphs: readonly Paragraph[], {xMm, topMm, widthMm}: Column, share: number): Set {
	let y = topMm;
	const parts = paragraphs.map(({name, words, leastMm, isPoint = false, gapMm, ...paragraph}) => {
		const sizeMm = leastMm + share * (paragraph.sizeMm - leastMm);
		const {weight = 'plain', role = 'text'} = paragraph;
		const restMm = isPoint ? widthOfWords(`${bullet} `, {size: sizeMm, weight}) : 0;
		const wrapped = wrapHard(words, widthMm - restMm, {size: sizeMm, weight});
		const lines = isPoint
			? wrapped.map((line, index) => (index === 0 ? `${bullet} ${line}` : line))
			: wrapped;
		y += gapMm * (0.5 + share / 2);
		const footMm = y + sizeMm;
		y += heightOfLines(lines.length, sizeMm);
		const fill = paragraph.fill === undefined ? {} : {fill: paragraph.fill};
		return {name, item: {kind: 'words', lines, xMm, restMm, footMm, sizeMm, weight, role, ...fill} as const};
	});
	return {heightMm: y - topMm, parts};
}
