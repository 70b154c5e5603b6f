/** A unit that people write a length in. */
export type LengthUnit = 'mm' | 'cm' | 'in';

/** One number as written; `step` is what one more in its last digit, or in its fraction, would add. */
export type WrittenNumber = {readonly value: number; readonly step: number; readonly unit?: LengthUnit};

/**
 * What stands in a text about a length: one number; two ends of one measurement; centimetres and millimetres that
 * belong together; several numbers that do not; or nothing to go by. `isAbout` is true beside words such as "about".
 */
export type Written =
	| {readonly kind: 'one'; readonly number: WrittenNumber; readonly isAbout: boolean}
	| {readonly kind: 'give-or-take'; readonly number: WrittenNumber; readonly margin: WrittenNumber}
	| {readonly kind: 'range'; readonly from: WrittenNumber; readonly to: WrittenNumber}
	| {readonly kind: 'sum'; readonly centimetres: WrittenNumber; readonly millimetres: WrittenNumber}
	| {readonly kind: 'several'}
	| {readonly kind: 'nothing'};

type Token =
	| {readonly kind: 'number'; readonly number: WrittenNumber}
	| {readonly kind: 'to' | 'and' | 'give-or-take' | 'other'};

const about =
	/[~≈]|\b(?:about|around|approx(?:imately|\.)?|circa|ca?\.|ca|roughly|nearly|almost|maybe|some|environ|etwa|or so)(?![a-z])|(?<=[\dmn"]) ?-?ish\b/g;
const filler =
	/(?:\b|(?=-long))(?:it'?s|it is|it was|is|the|length|-?long|in length|in total|capsule|case|measures|measured|measurement|my|mine|from|exactly|just)(?![a-z])|[:=()]/g;
const words = [
	'one',
	'two',
	'three',
	'four',
	'five',
	'six',
	'seven',
	'eight',
	'nine',
	'ten',
	'eleven',
	'twelve',
];
const millimetre = /^(?:mms?|millim(?:et(?:er|re)s?)?)$/;
const centimetre = /^(?:cms?|centim(?:et(?:er|re)s?)?)$/;
const inch = /^(?:in|ins|inch|inches|")$/;
// Dates and powers of ten, which would fall apart into several numbers.
const malformed = /\d\.\d+\.\d|\d[a-wyz]\d/;
const number = /(\d+)(?: |-)(\d+)\/(\d+)|(\d+)\/(\d+)|(\d*\.\d+|\d+)/;
const token = new RegExp(`(?:${number.source})|([a-z]+\\.?|")|(\\+\\/?-|±)|(-)|(\\S)`, 'g');

/** Reads what was written about a length, without deciding about a missing unit. */
export function readWritten(text: string): Written {
	const plain = plainly(text);
	if (malformed.test(plain)) return {kind: 'nothing'};
	const said = plain.replace(about, ' ');
	const tokens = tokensOf(said.replace(filler, ' ').replace(/[. ]+$/, ''));
	const count = tokens.filter(part => part.kind === 'number').length;
	if (count > 1) return severalNumbers(tokens);
	const [only] = tokens;
	if (tokens.length !== 1 || only?.kind !== 'number') return {kind: 'nothing'};
	return {kind: 'one', number: only.number, isAbout: said !== plain};
}

function severalNumbers(tokens: readonly Token[]): Written {
	const [first, link, last] = tokens.length === 2 ? [tokens[0], undefined, tokens[1]] : tokens;
	if (tokens.length > 3 || first?.kind !== 'number' || last?.kind !== 'number') return {kind: 'several'};
	const [from, to] = [first.number, last.number];
	const shared = from.unit === undefined && to.unit !== undefined ? {...from, unit: to.unit} : from;
	if (link?.kind === 'to') return {kind: 'range', from: shared, to};
	if (link?.kind === 'give-or-take') {
		const margin = to.unit === undefined && from.unit !== undefined ? {...to, unit: from.unit} : to;
		return {kind: 'give-or-take', number: shared, margin};
	}
	const belong = from.unit === 'cm' && to.unit === 'mm' && Number.isInteger(from.value) && to.value < 10;
	const joined = link === undefined || link.kind === 'and';
	return belong && joined ? {kind: 'sum', centimetres: from, millimetres: to} : {kind: 'several'};
}

function tokensOf(text: string): readonly Token[] {
	const tokens: Token[] = [];
	for (const found of text.matchAll(token)) {
		const [, whole, top, bottom, bareTop, bareBottom, plain, word, margin, dash, other] = found;
		const last = tokens.at(-1);
		const unit = word === undefined ? undefined : unitOf(word);
		if (plain !== undefined) tokens.push({kind: 'number', number: decimal(plain)});
		else if (top !== undefined) tokens.push(...fraction(Number(whole), Number(top), Number(bottom)));
		else if (bareTop !== undefined) tokens.push(...fraction(0, Number(bareTop), Number(bareBottom)));
		else if (unit && last?.kind === 'number' && last.number.unit === undefined) {
			tokens[tokens.length - 1] = {kind: 'number', number: {...last.number, unit}};
		} else if (margin !== undefined) tokens.push({kind: 'give-or-take'});
		else if (dash !== undefined || word === 'to' || word === 'or') tokens.push({kind: 'to'});
		else if (word === 'and' || other === '+') tokens.push({kind: 'and'});
		else tokens.push({kind: 'other'});
	}
	return tokens;
}

function unitOf(word: string): LengthUnit | undefined {
	const bare = word.replace(/\.$/, '');
	if (millimetre.test(bare)) return 'mm';
	if (centimetre.test(bare)) return 'cm';
	return inch.test(bare) ? 'in' : undefined;
}

function decimal(written: string): WrittenNumber {
	const decimals = written.split('.')[1]?.length ?? 0;
	return {value: Number(written), step: 10 ** -decimals};
}

// 62/38 is two numbers, only 3/8 is a part of one.
function fraction(whole: number, top: number, bottom: number): readonly Token[] {
	if (top < bottom && bottom <= 64) {
		return [{kind: 'number', number: {value: whole + top / bottom, step: 1 / bottom}}];
	}
	return [top, bottom].map(value => ({kind: 'number', number: {value, step: 1}}));
}

// A space before ⅜, or the compatible form of 2⅜ would read 23/8.
function plainly(text: string): string {
	return text
		.replace(/(?=[¼-¾⅐-⅞])/g, ' ')
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.replace(/⁄/g, '/')
		.replace(/[’‘′]/g, "'")
		.replace(/''|[”“]/g, '"')
		.replace(/[‐‑–—−]/g, '-')
		.replace(/(?<=\d),(?=\d)/g, '.')
		.replace(new RegExp(`\\b(?:${words.join('|')})\\b`, 'g'), word => String(words.indexOf(word) + 1))
		.replace(/\bbetween (.+?) and /g, '$1 to ')
		.replace(/\b(?:and )?a half\b/g, '1/2')
		.replace(/(?<!\S)and (?=\d+\/\d)/g, '')
		.replace(/\s+/g, ' ')
		.trim();
}
