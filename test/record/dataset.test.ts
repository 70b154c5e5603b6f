import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {readDataset} from '../../src/record/dataset.ts';
import {emlOf} from '../../src/record/eml.ts';
import {xmlText} from '../../src/record/xml.ts';
import {quickFolder} from '../support/folder.ts';

const example = join(import.meta.dirname, '../../deploy/dataset.example.yaml');

function changed(change: (text: string) => string): string {
	const folder = mkdtempSync(join(quickFolder(), 'dataset-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	const file = join(folder, 'dataset.yaml');
	writeFileSync(file, change(readFileSync(example, 'utf8')));
	return file;
}

test('the example can be used as it is', () => {
	expect(readDataset(example)).toMatchObject({
		contact: {email: 'records@samphire-bay.example'},
		licence: {link: 'http://creativecommons.org/licenses/by/4.0/legalcode'},
		occurrenceStatus: 'detected',
	});
});

test('a missing description says where it looked and what to do', () => {
	expect(() => readDataset('/nowhere/dataset.yaml')).toThrow(
		/title, contact, licence\) at \/nowhere\/dataset\.yaml; there is none\. Copy deploy\/dataset\.example\.yaml/,
	);
});

test.each([
	['a licence that is none', /cc-by-4\.0$/m, 'all-mine', 'expected cc0-1.0, cc-by-4.0 or cc-by-nc-4.0'],
	['an address that is none', /records@\S+/, 'the office', 'expected an e-mail address'],
	['no title', /^title: .*$/m, "title: ''", 'expected words, got none'],
	['a word of its own', /^licence/m, 'colour: blue\nlicence', 'colour'],
])('%s is told by file and line', (_, found, put, told) => {
	const file = changed(text => text.replace(found, put));
	expect(() => readDataset(file)).toThrow(/dataset\.yaml:\d+: /);
	expect(() => readDataset(file)).toThrow(told);
	expect(() => readDataset(file)).toThrow('Compare it with deploy/dataset.example.yaml');
});

test('what a keeper writes cannot break the description', () => {
	const title = 'Finds <b>&"quoted"</b> \u0007';
	const dataset = {...readDataset(example), title};
	const text = emlOf({dataset, extent: {records: 1}, packageId: 'ni:///x', isExact: false});
	expect(text).toContain('Finds &lt;b&gt;&amp;&quot;quoted&quot;&lt;/b&gt; </title>');
});

test('letters that XML does not allow are left out, all others stay', () => {
	expect(xmlText('a\u0000b\u001fc\ud800d\uffffe 🦈\tå\n')).toBe('abcde 🦈\tå\n');
});
