/** Every sentence the program asks for is there, and every sentence file is sound. */
import {readdirSync} from 'node:fs';
import {join} from 'node:path';
import {parse, type Resource} from '@fluent/syntax';
import {expect, test, vi} from 'vitest';
import {readRegion} from '../../src/key/region.ts';
import {readTexts} from '../../src/text/text.ts';
import {asksIn, familiesOf} from '../support/sentences.ts';
import {lineAt, sourcesUnder} from '../support/source.ts';

vi.setConfig({testTimeout: 60_000});

const root = join(import.meta.dirname, '../..');
const flows = join(root, 'flows');
const regions = readdirSync(flows, {withFileTypes: true})
	.filter(entry => entry.isDirectory() && entry.name !== 'pictures')
	.map(({name}) => name);
const sentenceFiles = ['src', 'flows'].flatMap(folder =>
	sourcesUnder(join(root, folder), /\.ftl$/).map(({path, text}) => ({path: `${folder}/${path}`, text})),
);
/** Rooms that speak to people; the others have words of their own for key authors and keepers. */
const speaking = ['bot', 'clockwork', 'draw', 'find', 'survey'];
/** The one command whose sheets people read. */
const sheets = 'cli/sheets-command.ts';
const sources = sourcesUnder(join(root, 'src'), /\.ts$/).filter(
	({path}) => path === sheets || speaking.includes(path.split('/')[0] ?? ''),
);

test.each(regions)(
	'every sentence that the program asks for stands in the files of %s, in every language',
	region => {
		const texts = readTexts([join(root, 'src/text'), flows, join(flows, region)]);
		for (const language of texts.languages) {
			const {ids} = texts.written(language);
			const asked = sources.flatMap(source => asksIn(source, familiesOf(ids)));
			expect(asked.length).toBeGreaterThan(150);
			// A region without a kind to be left alone says no such thing.
			const asksLeave = Object.values(readRegion(flows, region).profiles.taxa).some(({leaveIt}) => leaveIt);
			const missing = asked.filter(
				({pattern}) => !ids.some(id => pattern.test(id)) && (asksLeave || !pattern.test('leave-x')),
			);
			expect(
				missing.map(({where, written}) => `${where}: ${written}`),
				language,
			).toEqual([]);
		}
	},
);

test('every sentence of the program and of all regions is asked for somewhere', () => {
	const own = sentenceFiles.filter(({path}) => path.split('/').length === 2 || path.startsWith('src/'));
	const ids = own.flatMap(({text}) => idsOf(text));
	const asked = sources.flatMap(source => asksIn(source, familiesOf(ids)));
	expect(ids.length).toBeGreaterThan(200);
	expect(ids.filter(id => !asked.some(({pattern}) => pattern.test(id)))).toEqual([]);
});

test('every sentence file can be read from its first line to its last', () => {
	expect(sentenceFiles.length).toBeGreaterThan(2);
	expect(sentenceFiles.flatMap(({path, text}) => junkIn(path, text))).toEqual([]);
});

test('no sentence is written twice in a file', () => {
	for (const {path, text} of sentenceFiles) {
		const ids = idsOf(text);
		expect(
			ids.filter((id, index) => ids.indexOf(id) !== index),
			path,
		).toEqual([]);
	}
});

test('a line that is no sentence is noticed by file and line', () => {
	expect(junkIn('a.ftl', 'good = Good.\n\nbad line here\nmore = More.\n')).toEqual([
		'a.ftl:3: bad line here',
	]);
	expect(junkIn('a.ftl', 'open = { $count\n')).toHaveLength(1);
});

test('a sentence that is asked for and not there is noticed, whole or by its beginning', () => {
	const text = [
		"say.say('trouble');",
		"say.say('trouble-gone');",
		"const line = {message: 'vanished'};",
		`help(\`help-nowhere-\${why}\`);`,
		`help(\`help-place-\${why}\`);`,
		"const id = 'draft-lost';",
		"const other = 'good morning', plain = 'shore-line';",
		`const end = \`option-\${how}-never\`;`,
		"say(isGroup ? 'trouble' : 'lonely');",
	].join('\n');
	const ids = [
		'trouble',
		'help-place-empty',
		'draft-card',
		'draft-none',
		'draft-gone',
		'option-back',
		'option-why',
		'option-hour',
	];
	const missing = asksIn({path: 'a.ts', text}, familiesOf(ids)).filter(
		({pattern}) => !ids.some(id => pattern.test(id)),
	);
	expect(missing.map(({where, written}) => `${where}: ${written}`)).toEqual([
		'a.ts:2: trouble-gone',
		'a.ts:3: vanished',
		'a.ts:4: help-nowhere-…',
		'a.ts:6: draft-lost',
		'a.ts:8: option-…-never',
		'a.ts:9: lonely',
	]);
});

function idsOf(text: string): readonly string[] {
	return entriesOf(text).flatMap(entry => (entry.type === 'Message' ? [entry.id.name] : []));
}

function entriesOf(text: string): Resource['body'] {
	return parse(text, {withSpans: true}).body;
}

function junkIn(path: string, text: string): readonly string[] {
	return entriesOf(text).flatMap(entry =>
		entry.type === 'Junk'
			? [`${path}:${lineAt(text, entry.span?.start ?? 0)}: ${entry.content.trim().split('\n')[0]}`]
			: [],
	);
}
