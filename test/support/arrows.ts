/** The rooms of the house and their import lines, held to the table in the design. */
import {posix} from 'node:path';
import {codeOf, lineAt, piecesOf, type Source} from './source.ts';

type Room = {readonly floor: number; readonly mayImport: readonly string[]};

const one = ['settings', 'store', 'text'];
const two = [...one, 'key', 'capsule', 'place', 'draw'];
const three = [...two, 'find', 'survey', 'record'];
const all = [...three, 'bot', 'room', 'clockwork', 'cli', 'main', 'program'];

/** The table of the design: the floor of each room, and what it may import beside its own files. */
export const rooms: Readonly<Record<string, Room>> = {
	main: {floor: 5, mayImport: all},
	program: {floor: 5, mayImport: all},
	bot: {floor: 4, mayImport: three},
	room: {floor: 4, mayImport: ['text']},
	clockwork: {floor: 4, mayImport: three},
	cli: {floor: 4, mayImport: three},
	find: {floor: 3, mayImport: two},
	survey: {floor: 3, mayImport: two},
	record: {floor: 3, mayImport: two},
	key: {floor: 2, mayImport: one},
	capsule: {floor: 2, mayImport: one},
	place: {floor: 2, mayImport: one},
	draw: {floor: 2, mayImport: [...one, 'key']},
	store: {floor: 1, mayImport: ['settings']},
	text: {floor: 1, mayImport: []},
	settings: {floor: 1, mayImport: []},
};

/** One import or re-export of another file or package. */
export type Import = {readonly file: string; readonly line: number; readonly from: string};

/** Every import line of a file, type imports and `export … from` among them. */
export function importsOf({path, text}: Source): readonly Import[] {
	const code = codeOf(text);
	const words = piecesOf(text).filter(({kind}) => kind === 'string' || kind === 'template');
	const after = (at: number) => words.find(({from}) => from >= at);
	const isHead = /^[ \t]*(?:import|export)\b[^;'"`]*?\bfrom\s*_|^[ \t]*import\s*_|\bimport\s*\(\s*_/gm;
	return [...code.matchAll(isHead)].flatMap(match => {
		const piece = after(match.index + match[0].length - 1);
		return piece ? [{file: path, line: lineAt(text, piece.from), from: piece.text}] : [];
	});
}

/** What is wrong with the import and export lines of these files, as `file:line: what`. */
export function arrowFaults(sources: readonly Source[]): readonly string[] {
	const imports = sources.flatMap(importsOf);
	return [
		...sources.flatMap(strangerFaults),
		...imports.flatMap(importFaults),
		...sources.flatMap(defaultFaults),
		...cycleFaults(imports),
	];
}

/** The room a file stands in: a folder of `src`, or a file directly under it. */
export function roomOf(path: string): string {
	return (path.split('/')[1] ?? '').replace(/\.ts$/, '');
}

function strangerFaults({path}: Source): readonly string[] {
	return rooms[roomOf(path)] ? [] : [`${path}:1: "${roomOf(path)}" is no room of the design`];
}

function importFaults({file, line, from}: Import): readonly string[] {
	const fault = (what: string) => [`${file}:${line}: ${what}`];
	if (!/^\.{0,2}\//.test(from)) return [];
	if (!from.startsWith('.')) return fault(`imports "${from}", which is no relative path`);
	if (!from.endsWith('.ts')) return fault(`imports "${from}" without its extension .ts`);
	const target = targetOf({file, from});
	const [mine, theirs] = [roomOf(file), roomOf(target)];
	if (!target.startsWith('src/')) return fault(`imports "${target}", which stands outside src`);
	if (mine === theirs) return [];
	if (!rooms[mine]?.mayImport.includes(theirs))
		return fault(`"${mine}" may not import "${theirs}" (${target})`);
	return target.split('/').length > 3
		? fault(`imports "${target}", a file two levels down in another room`)
		: [];
}

function targetOf({file, from}: Pick<Import, 'file' | 'from'>): string {
	return posix.normalize(posix.join(posix.dirname(file), from));
}

function defaultFaults({path, text}: Source): readonly string[] {
	const found = [...codeOf(text).matchAll(/\bexport\s+default\b|\bas\s+default\b/g)];
	return found.map(({index}) => `${path}:${lineAt(text, index)}: exports a default`);
}

/** Each cycle once, at the import that closes it. */
function cycleFaults(imports: readonly Import[]): readonly string[] {
	const byFile = new Map<string, readonly Import[]>();
	for (const one of imports.filter(({from}) => from.startsWith('.'))) {
		byFile.set(one.file, [...(byFile.get(one.file) ?? []), one]);
	}
	const done = new Set<string>();
	const faults: string[] = [];
	const visit = (file: string, trail: readonly string[]) => {
		if (done.has(file)) return;
		for (const {line, from} of byFile.get(file) ?? []) {
			const target = targetOf({file, from});
			const met = [...trail, file].indexOf(target);
			if (met >= 0)
				faults.push(`${file}:${line}: closes a cycle: ${[...trail, file, target].slice(met).join(' > ')}`);
			else visit(target, [...trail, file]);
		}
		done.add(file);
	};
	for (const file of byFile.keys()) visit(file, []);
	return faults;
}

/** Exported functions and types without a doc comment directly above, as `file:line: what`. */
export function docFaults({path, text}: Source): readonly string[] {
	const code = codeOf(text);
	const declared =
		/^export\s+(?:declare\s+)?(?:async\s+)?(function\*?|type|interface|class)\s+(?!\{)([\w$]+)/gm;
	return [...code.matchAll(declared)]
		.filter(({index}) => !/\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*\n$/.test(text.slice(0, index)))
		.map(
			({index, 1: kind, 2: name}) =>
				`${path}:${lineAt(text, index)}: the exported ${kind} "${name}" has no doc comment`,
		);
}
