/** Rules of style that a file either keeps or breaks, by file and line. */
import {codeOf, lineAt, piecesOf, type Source} from './source.ts';

const mostLines = 250;

/** Words of the language that the house does without, as they look in bare code. */
const banned: readonly {readonly what: string; readonly found: RegExp}[] = [
	{what: 'any', found: /(?<!\.)\bany\b|\bz\.any\b/g},
	{what: 'as', found: /(?<!\.)\bas\b(?!\s+const\b)/g},
	{what: '!', found: /(?<=[\w$)\]}])!(?!=)/g},
	{what: 'enum', found: /(?<!\.)\benum\b/g},
	{what: 'namespace', found: /(?<!\.)\bnamespace\b/g},
];

/** A file too long that does not say why in its first line. */
export function lengthFaults({path, text}: Source): readonly string[] {
	const lines = text.replace(/\n$/, '').split('\n');
	if (lines.length <= mostLines) return [];
	const isExcused = /^(?:\/\*|\/\/|#|<!--).*\blong(?:er)?\b/.test(lines[0] ?? '');
	return isExcused ? [] : [`${path}:1: ${lines.length} lines, and the first does not say why`];
}

/** Escapes from the type checker. */
export function escapeFaults({path, text}: Source): readonly string[] {
	// Renaming is not casting.
	const code = codeOf(text).replace(
		/^[ \t]*(?:import|export)\b[^;()=]*?\bfrom\s*_|^export\s*\{[^}]*\}/gm,
		head => head.replace(/[^\n]/g, ' '),
	);
	return banned.flatMap(({what, found}) =>
		[...code.matchAll(found)].map(({index}) => `${path}:${lineAt(text, index)}: "${what}"`),
	);
}

/** Names of a region standing in words of the program. */
export function nameFaults({path, text}: Source, names: ReadonlySet<string>): readonly string[] {
	return piecesOf(text)
		.filter(({kind}) => kind === 'string' || kind === 'template')
		.flatMap(piece =>
			wordsOf(piece.text)
				.filter(word => names.has(word))
				.map(word => `${path}:${lineAt(text, piece.from)}: "${word}" is a name of a region`),
		);
}

/** Ids and plain words of a text, and each pair of neighbours, so that a Latin name is met as well. */
function wordsOf(text: string): readonly string[] {
	const words = text.toLowerCase().match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? [];
	return words.flatMap((word, index) => (index === 0 ? [word] : [word, `${words[index - 1]} ${word}`]));
}
