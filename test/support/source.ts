/** Our own TypeScript cut into pieces, so that a check can tell code from words. */
import {readdirSync, readFileSync} from 'node:fs';
import {join, relative, sep} from 'node:path';

/** A piece of a file; `text` of a string or template is what stands between its quotes. */
export type Piece = {
	readonly kind: 'code' | 'comment' | 'string' | 'template' | 'pattern';
	readonly text: string;
	/** Where the whole piece, quotes included, begins and ends. */
	readonly from: number;
	readonly to: number;
};

/** A file with its path from the folder that was read, parted by `/`. */
export type Source = {readonly path: string; readonly text: string};

/** Every file under a folder whose name ends like this, in the order of their paths. */
export function sourcesUnder(folder: string, ending: RegExp): readonly Source[] {
	return readdirSync(folder, {recursive: true, withFileTypes: true})
		.filter(entry => entry.isFile() && ending.test(entry.name))
		.map(entry => join(entry.parentPath, entry.name))
		.sort()
		.map(file => ({path: relative(folder, file).split(sep).join('/'), text: readFileSync(file, 'utf8')}));
}

/** The line of a position, as an editor counts. */
export function lineAt(text: string, position: number): number {
	return text.slice(0, position).split('\n').length;
}

/** After these a slash begins a pattern; after anything else it divides. */
const beforePattern = /(?:^|[=(,:[!&|?{};+\-*%<>~^]|\b(?:return|typeof|case|in|of|void|throw|await))\s*$/;

const starts: readonly {readonly kind: Piece['kind']; readonly first: string; readonly begins: RegExp}[] = [
	{kind: 'comment', first: '/', begins: /\/\/[^\n]*|\/\*[\s\S]*?\*\//y},
	{kind: 'string', first: `'"`, begins: /'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"/y},
	{kind: 'pattern', first: '/', begins: /\/(?![/*])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+\/[a-z]*/y},
];
/** The words of a template up to its end or to the next value. */
const templateWords = /(?:\\[\s\S]|\$(?!\{)|[^\\`$])*/y;

/** Cuts a file into pieces; the words of a template between its values are pieces of their own. */
export function piecesOf(source: string): readonly Piece[] {
	const pieces: Piece[] = [];
	/** For each template left open, how many braces its value has open. */
	const depths: number[] = [];
	let codeFrom = 0;
	let at = 0;
	const put = (kind: Piece['kind'], {from, to, text}: {from: number; to: number; text: string}) => {
		if (from > codeFrom)
			pieces.push({kind: 'code', text: source.slice(codeFrom, from), from: codeFrom, to: from});
		pieces.push({kind, text, from, to});
		codeFrom = to;
		at = to;
	};
	const template = (from: number) => {
		const text = matchAt(templateWords, source, from + 1) ?? '';
		const end = from + 1 + text.length;
		const isValue = source.startsWith('${', end);
		if (isValue) depths.push(0);
		put('template', {from, to: end + (isValue ? 2 : 1), text});
	};
	while (at < source.length) {
		const char = source[at];
		const depth = depths.at(-1);
		const found = starts
			.filter(({first}) => char !== undefined && first.includes(char))
			.map(({kind, begins}) => ({kind, text: matchAt(begins, source, at)}))
			.find(
				({kind, text}) =>
					text !== undefined &&
					(kind !== 'pattern' || beforePattern.test(lastCode(source, pieces, {codeFrom, at}))),
			);
		if (found?.text !== undefined) {
			const text = found.kind === 'string' ? found.text.slice(1, -1) : found.text;
			put(found.kind, {from: at, to: at + found.text.length, text});
		} else if (char === '`') {
			template(at);
		} else if (char === '}' && depth === 0) {
			depths.pop();
			template(at);
		} else {
			if (depth !== undefined && (char === '{' || char === '}')) {
				depths[depths.length - 1] = depth + (char === '{' ? 1 : -1);
			}
			at += 1;
		}
	}
	if (codeFrom < source.length)
		pieces.push({kind: 'code', text: source.slice(codeFrom), from: codeFrom, to: source.length});
	return pieces;
}

/** The file with everything but code blanked out: positions and lines stay. */
export function codeOf(source: string): string {
	return piecesOf(source)
		.map(({kind, text, from, to}) => {
			if (kind === 'code') return text;
			const blank = source.slice(from, to).replace(/[^\n]/g, ' ');
			// A value stands here, whatever it was.
			return kind === 'comment' || blank.length < 2 ? blank : `_${blank.slice(1, -1)}_`;
		})
		.join('');
}

function lastCode(
	source: string,
	pieces: readonly Piece[],
	{codeFrom, at}: {codeFrom: number; at: number},
): string {
	const code = source.slice(codeFrom, at);
	if (code.trim() !== '') return code.slice(-20);
	const last = pieces.findLast(piece => piece.kind !== 'comment');
	// After a template's value has begun anything may come; after a string or a pattern only a division.
	if (last?.kind === 'code') return last.text.slice(-20);
	return last && !source.slice(0, last.to).endsWith('${') ? ')' : '';
}

function matchAt(pattern: RegExp, source: string, at: number): string | undefined {
	pattern.lastIndex = at;
	return pattern.exec(source)?.[0];
}
