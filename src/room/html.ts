import type {Entity} from './message.ts';
import {badRequest} from './refusal.ts';

const kinds: Readonly<Record<string, string>> = {
	b: 'bold',
	i: 'italic',
	u: 'underline',
	s: 'strikethrough',
	code: 'code',
	pre: 'pre',
	a: 'text_link',
	blockquote: 'blockquote',
};
const named: Readonly<Record<string, string>> = {lt: '<', gt: '>', amp: '&', quot: '"'};
const piece = /<(\/?)([^<>]*)>|&(#\d{1,7}|#x[0-9a-fA-F]{1,6}|[a-z]+);|</g;

type Open = {
	readonly tag: string;
	readonly type: string;
	readonly offset: number;
	readonly url: string | undefined;
};

/** Text with its markup taken out, and what the markup meant. */
export type Formatted = {readonly text: string; readonly entities: readonly Entity[]};

/** Reads the platform's small HTML; throws its refusal when tags are unknown, crossed or left open. */
export function readHtml(source: string): Formatted {
	const open: Open[] = [];
	const entities: Entity[] = [];
	let text = '';
	let from = 0;
	for (const match of source.matchAll(piece)) {
		text += source.slice(from, match.index);
		from = match.index + match[0].length;
		const [whole, slash, inside, character] = match;
		if (character !== undefined) text += readCharacter(character) ?? whole;
		else if (inside === undefined) throw cannotParse(`Unclosed start tag at byte offset ${match.index}`);
		else if (slash === '/') closeTag({tag: inside.trim(), at: match.index, text}, open, entities);
		else open.push(readTag(inside, match.index, text.length));
	}
	const left = open.at(-1);
	if (left !== undefined) throw cannotParse(`Can't find end tag corresponding to start tag "${left.tag}"`);
	entities.sort((a, b) => a.offset - b.offset || b.length - a.length);
	return {text: text + source.slice(from), entities};
}

function readCharacter(name: string): string | undefined {
	if (!name.startsWith('#')) return named[name];
	const code = name.startsWith('#x') ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
	return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
}

function readTag(inside: string, at: number, offset: number): Open {
	const tag = inside.split(/\s/, 1)[0]?.toLowerCase() ?? '';
	const type = kinds[tag];
	if (type === undefined) throw cannotParse(`Unsupported start tag "${tag}" at byte offset ${at}`);
	const href = /\shref\s*=\s*(?:"([^"]*)"|'([^']*)')/.exec(inside);
	const url = (href?.[1] ?? href?.[2])?.replace(
		/&(lt|gt|amp|quot);/g,
		(_, name: string) => named[name] ?? '',
	);
	return {tag, type, offset, url: tag === 'a' ? (url ?? '') : undefined};
}

type Close = {readonly tag: string; readonly at: number; readonly text: string};

function closeTag(close: Close, open: Open[], entities: Entity[]): void {
	const last = open.pop();
	if (last === undefined) throw cannotParse(`Unexpected end tag at byte offset ${close.at}`);
	if (close.tag !== '' && close.tag.toLowerCase() !== last.tag) {
		throw cannotParse(
			`Unmatched end tag at byte offset ${close.at}, expected "</${last.tag}>", found "</${close.tag}>"`,
		);
	}
	const length = close.text.length - last.offset;
	// As on the platform, a mark around nothing and a link to nowhere are dropped.
	if (length === 0 || last.url === '') return;
	const url = last.url === undefined ? {} : {url: last.url};
	entities.push({type: last.type, offset: last.offset, length, ...url});
}

function cannotParse(reason: string): Error {
	return badRequest(`can't parse entities: ${reason}`);
}
