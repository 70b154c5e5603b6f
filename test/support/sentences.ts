/** The sentences that code asks for by their ids, whole or in part. */
import {lineAt, piecesOf, type Source} from './source.ts';

/** An id in code: a pattern for what may be asked for, and where. */
export type Asked = {readonly pattern: RegExp; readonly written: string; readonly where: string};

/** Code before a string that makes it the id of a sentence, on either side of a choice as well. */
const asksBefore = /(?:\bmessage:|\b(?:say|has|help)\(|\b(?:plain|labels)\()(?:[^;,(){}]*[?:])?\s*$/;
/** From this many on, ids with the same first word are a family. */
const leastFamily = 3;

/** Every id that a file asks for, and every string that looks like one of a family of ids. */
export function asksIn({path, text}: Source, families: ReadonlySet<string>): readonly Asked[] {
	return literalsIn(text)
		.filter(({parts}) => parts.every(part => /^[a-z0-9-]*$/.test(part)))
		.filter(({parts, before}) => asksBefore.test(before) || families.has(firstWord(parts[0] ?? '')))
		.map(({parts, from}) => ({
			pattern: new RegExp(`^${parts.map(part => part).join('[a-z0-9-]+')}$`),
			written: parts.join('…'),
			where: `${path}:${lineAt(text, from)}`,
		}));
}

/** The first words that several ids share: `option`, `help`, `draft`. */
export function familiesOf(ids: readonly string[]): ReadonlySet<string> {
	const words = ids.map(firstWord);
	return new Set(
		words.filter(word => word !== '' && words.filter(other => other === word).length >= leastFamily),
	);
}

function firstWord(id: string): string {
	return /^[a-z]+(?=-)/.exec(id)?.[0] ?? '';
}

type Literal = {readonly parts: readonly string[]; readonly from: number; readonly before: string};

/** Strings, and templates with the words between their values, each with the code before it. */
function literalsIn(text: string): readonly Literal[] {
	const literals: Literal[] = [];
	const open: {parts: string[]; from: number; before: string}[] = [];
	for (const {kind, from, to, text: words} of piecesOf(text)) {
		const before = text.slice(Math.max(0, from - 60), from);
		if (kind === 'string') literals.push({parts: [words], from, before});
		if (kind !== 'template') continue;
		if (text[from] === '`') open.push({parts: [], from, before});
		const template = open.at(-1);
		template?.parts.push(words);
		if (template && text[to - 1] === '`') {
			literals.push(template);
			open.pop();
		}
	}
	return literals;
}
