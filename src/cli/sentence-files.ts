/** Sentence files looked over before they are read together: missing ones, and sentences said twice. */
import {existsSync, readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import type {Fault} from '../key/yaml.ts';

/** Messages of a file with the lines they stand on, in order. */
type Said = {readonly message: string; readonly file: string; readonly line: number};

/**
 * Every sentence of the last folder that stands there twice or in a folder before it, and the English
 * file where it is missing; reading the folders together would stop at the first of them.
 */
export function checkSentenceFiles(folders: readonly string[]): readonly Fault[] {
	const last = folders.at(-1);
	if (last === undefined) return [];
	const english = join(last, 'en.ftl');
	if (!existsSync(english)) {
		return [{file: english, line: 1, what: 'There is no such file.', todo: 'Write the English sentences.'}];
	}
	return filesIn(last).flatMap(name => {
		const before = folders.slice(0, -1).flatMap(folder => saidIn(join(folder, name)));
		const first = new Map(before.map(said => [said.message, said] as const));
		return saidIn(join(last, name)).flatMap(said => {
			const other = first.get(said.message);
			if (!other) {
				first.set(said.message, said);
				return [];
			}
			const where = other.file === said.file ? `on line ${other.line}` : `in ${other.file}:${other.line}`;
			const what = `The sentence "${said.message}" stands ${where} already.`;
			return [{file: said.file, line: said.line, what, todo: 'Take one of them out.'}];
		});
	});
}

function filesIn(folder: string): readonly string[] {
	return readdirSync(folder).filter(name => name.endsWith('.ftl'));
}

function saidIn(file: string): readonly Said[] {
	if (!existsSync(file)) return [];
	return readFileSync(file, 'utf8')
		.split('\n')
		.flatMap((text, index) => {
			const message = /^([a-zA-Z][\w-]*) *=/.exec(text)?.[1];
			return message === undefined ? [] : [{message, file, line: index + 1}];
		});
}
