import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {readTexts} from '../../src/text/text.ts';

/** Folders with these files, read in this order. */
function textsFrom(...folders: readonly Readonly<Record<string, string>>[]) {
	const root = mkdtempSync(join(tmpdir(), 'texts-'));
	onTestFinished(() => rmSync(root, {recursive: true, force: true}));
	const paths = folders.map((files, index) => {
		const folder = join(root, String(index));
		mkdirSync(folder);
		for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
		return folder;
	});
	return readTexts([...paths, join(root, 'not-there')]);
}

test('sentences of one language may lie in files of several topics', () => {
	const {say} = textsFrom({'en.ftl': 'a = A\n', 'en.topic.ftl': 'b = B\n'}).in('en');
	expect([say('a'), say('b')]).toEqual(['A', 'B']);
	expect(() => textsFrom({'en.ftl': 'a = A\n', 'en.topic.ftl': 'a = B\n'})).toThrow('"a"');
});

test('a sentence is said with its values filled in, and nothing strange around them', () => {
	const {say} = textsFrom({'en.ftl': 'hello = Hello { $name }, you have { $count } finds.\n'}).in('en');
	expect(say('hello', {name: 'Ada', count: 2})).toBe('Hello Ada, you have 2 finds.');
});

test('one and many are told apart', () => {
	const ftl = 'photos = { $count ->\n    [one] one photo\n   *[other] { $count } photos\n}\n';
	const {say} = textsFrom({'en.ftl': ftl}).in('en');
	expect([1, 2].map(count => say('photos', {count}))).toEqual(['one photo', '2 photos']);
});

test('what a person wrote is said as written, whatever it looks like', () => {
	const {say} = textsFrom({'en.ftl': 'heard = I heard “{ $text }”.\n'}).in('en');
	expect(say('heard', {text: '{ $name } <b>'})).toBe('I heard “{ $name } <b>”.');
});

test('folders are read one after the other, and one that is not there is passed over', () => {
	const texts = textsFrom({'en.ftl': 'a = A\n'}, {'en.ftl': 'b = B\n'});
	expect([texts.in('en').say('a'), texts.in('en').say('b')]).toEqual(['A', 'B']);
});

test('a sentence written again in a later folder stops the start', () => {
	expect(() => textsFrom({'en.ftl': 'a = A\n'}, {'en.ftl': 'a = Another\n'})).toThrow(/1.en\.ftl.*"a"/);
});

test('the language asked for is spoken, a dialect of it as well, and else English', () => {
	const texts = textsFrom({'en.ftl': 'a = yes\n', 'fr.ftl': 'a = oui\n'});
	expect(texts.languages.toSorted()).toEqual(['en', 'fr']);
	expect(['fr', 'fr-CA', 'en-GB', 'de', '', undefined].map(language => texts.in(language).say('a'))).toEqual([
		'oui',
		'oui',
		'yes',
		'yes',
		'yes',
		'yes',
	]);
	expect(texts.in('fr-CA').language).toBe('fr');
	expect(texts.in('de').language).toBe('en');
});

test('there is no start without English', () => {
	expect(() => textsFrom({'fr.ftl': 'a = oui\n'})).toThrow(/Expected en\.ftl/);
});

test('a missing sentence and a missing value are mistakes, named', () => {
	const {say, has} = textsFrom({'en.ftl': 'a = Hello { $name }\n'}).in('en');
	expect([has('a'), has('b')]).toEqual([true, false]);
	expect(() => say('b')).toThrow('Expected a sentence "b" in en; there is none');
	expect(() => say('a')).toThrow(/Sentence "a" in en: .*name/);
});

test('all sentences of a language are listed with their values left open', () => {
	const texts = textsFrom(
		{'en.ftl': 'a = Hello { $name }\n'},
		{'en.ftl': 'b = Bye\n', 'fr.ftl': 'b = Salut\n'},
	);
	const written = (language: string) => {
		const {ids, has, get} = texts.written(language);
		return ids.map(id => [id, has(id), get(id)]);
	};
	expect(written('en')).toEqual([
		['a', true, 'Hello {$name}'],
		['b', true, 'Bye'],
	]);
	expect(written('fr')).toEqual([['b', true, 'Salut']]);
	expect(texts.written('fr').has('a')).toBe(false);
	expect(texts.written('fr').get('a')).toBeUndefined();
	expect(written('xx')).toEqual([]);
});
