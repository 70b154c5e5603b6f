/** Faults in a made-up region, one row for each kind; those that are seeded in real ones stand in seeded-mistakes.test.ts. */
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {checkFolder} from '../../src/key/check.ts';
import {readTexts} from '../../src/text/text.ts';
import {faultsOf, type Seed} from './testland.ts';

const inKey = (find: string, put: string): Seed => ({in: 'key.yaml', find, put});
const inProfiles = (find: string, put: string): Seed => ({in: 'profiles.yaml', find, put});
const inText = (find: string, put: string): Seed => ({in: 'en.ftl', find, put});

const minorSizes = 'range: [30, 45], mean: 40, source: made-up';
const bands = '- {belowMm: 50, leads: testa-minor}\n      - {fromMm: 50, leads: testa-major}';

/** What is seeded, and the fault that is expected beside any other. */
const seeded: readonly (readonly [name: string, seeds: readonly Seed[], fault: string])[] = [
	[
		'a beginning that is no question',
		[inKey('begins: spots', 'begins: dots')],
		'key.yaml:1: The key begins at "dots"',
	],
	[
		'a band that leads nowhere',
		[inKey('fromMm: 50, leads: testa-major', 'fromMm: 50, leads: nowhere')],
		'key.yaml:14: "size" leads to "nowhere"',
	],
	[
		'a first band with a lower end',
		[inKey('belowMm: 50', 'fromMm: 10, belowMm: 50')],
		'key.yaml:13: Question "size": The first band has a lower end',
	],
	[
		'a last band with an upper end',
		[inKey('fromMm: 50', 'fromMm: 50, belowMm: 90')],
		'key.yaml:14: Question "size": The last band has an upper end',
	],
	[
		'bands that do not say where they meet',
		[inKey('fromMm: 50, leads', 'leads')],
		'key.yaml:14: Question "size": Two bands that meet',
	],
	[
		'an empty band',
		[
			inKey(
				bands,
				'- {belowMm: 50, leads: testa-minor}\n      - {fromMm: 50, belowMm: 50, leads: testa-minor}\n      - {fromMm: 50, leads: testa-major}',
			),
		],
		'key.yaml:14: Question "size": The band from 50 below 50 mm holds nothing',
	],
	[
		'a look at an unknown character',
		[inKey('look: rim', 'look: brim')],
		'key.yaml:16: Question "rim" looks at "brim"',
	],
	[
		'a character nobody looks at',
		[
			inKey('look: rim', 'look: spots'),
			inKey('sharp: {leads: testa-minor}, dull', 'many: {leads: testa-minor}, few'),
		],
		'key.yaml:5: No question looks at "rim"',
	],
	[
		'a question with a reserved id',
		[inKey('leads: size', 'leads: length'), inKey('  size:', '  length:')],
		'key.yaml:10: "length" is the name of a step',
	],
	[
		'a character with a reserved id',
		[inKey('  rim: {', '  note: {')],
		'key.yaml:5: "note" is the name of a step',
	],
	[
		'an id that is both a question and a taxon',
		[inKey('leads: size', 'leads: testa-minor'), inKey('  size:', '  testa-minor:')],
		'key.yaml:10: "testa-minor" is both',
	],
	[
		'a moved id that went to an unknown one',
		[inKey('moved: []', 'moved: [{from: old, to: new}]')],
		'key.yaml:18: "old" is said to have moved to "new"',
	],
	[
		'a possible size that runs backwards',
		[inKey('width: [10, 180]', 'width: [180, 10]')],
		'key.yaml:2: The possible width',
	],
	[
		'a source that is not listed',
		[inProfiles('mean: 40, source: made-up', 'mean: 40, source: hearsay')],
		'profiles.yaml:10: The source "hearsay"',
	],
	[
		'a law that is not listed',
		[
			inProfiles(
				'    leaveIt: true\n',
				'    leaveIt: true\n    protected: {sideM: 10000, source: hearsay}\n',
			),
		],
		'The source "hearsay" is not listed.',
	],
	[
		'shares that do not sum to 1',
		[inProfiles('few: 0.1}', 'few: 0.2}')],
		'profiles.yaml:13: The shares of "spots" sum to 1.1',
	],
	[
		'shares of an unknown character',
		[inProfiles('rim: {sharp: 0.8', 'brim: {sharp: 0.8')],
		'profiles.yaml:14: "brim" is no character',
	],
	[
		'shares of an unknown state',
		[inProfiles('rim: {sharp: 0.8', 'rim: {blunt: 0.8')],
		'profiles.yaml:14: "rim" has no state "blunt"',
	],
	[
		'a taxon its typical specimen does not come to',
		[inProfiles(minorSizes, 'range: [60, 70], source: made-up')],
		'profiles.yaml:4: A typical specimen does not come to "testa-minor" but to "testa-major"',
	],
	[
		'a state that draws nothing',
		[inKey('few: {surface: {net: false}}', 'few: {}')],
		'key.yaml:4: The state "few" of "spots" draws nothing',
	],
	[
		'a character that draws nothing',
		[inKey(', draws: {sharp: {rim: {hairs: true}}, dull: {rim: {hairs: false}}}', '')],
		'key.yaml:5: The state "sharp" of "rim" draws nothing',
	],
	[
		'a drawing of no state',
		[inKey('dull: {rim: {hairs: false}}}}', 'dull: {rim: {hairs: false}}, blunt: {rim: {from: 0.5}}}}')],
		'key.yaml:5: "rim" draws "blunt", which is no state of it',
	],
	[
		'two states drawn alike',
		[inKey('few: {surface: {net: false}}', 'few: {surface: {net: true}}')],
		'key.yaml:4: The state "few" of "spots" is drawn like another one',
	],
	[
		'a taxon without a shape',
		[inProfiles('    shape: {basis: made up}\n', '')],
		'profiles.yaml:19: "testa-major" has no shape',
	],
	[
		'a shape without its source',
		[inProfiles('{basis: made up}', '{rim: {from: 0.5}}')],
		'The shape of "testa-major" does not say where it is from',
	],
	[
		'a shape of an unknown source',
		[inProfiles("{source: made-up, page: '1'}", "{source: elsewhere, page: '1'}")],
		'The source "elsewhere" is not listed',
	],
	[
		'a taxon without sizes to be drawn at',
		[inProfiles('    widthMm: {range: [25, 40], source: made-up}\n', '')],
		'"testa-major" has neither published sizes nor a stand-in',
	],
	[
		'a stand-in beside published sizes',
		[inProfiles('{basis: made up}', '{basis: made up, size: {lengthMm: 50, widthMm: 30}}')],
		'"testa-major" has a stand-in beside its published sizes',
	],
	[
		'a shape that contradicts the commonest state',
		[inProfiles('{basis: made up}', '{basis: made up, surface: {net: true}}')],
		'"testa-major" is mostly "few" in "spots", but its shape looks like "many"',
	],
	[
		'a missing sentence of a taxon',
		[inText('fact-testa-minor = It is small.\n', '')],
		'profiles.yaml:4: The sentence "fact-testa-minor" is missing',
	],
	[
		'a missing word about a taxon to be left',
		[inText('leave-testa-major = Leave it there.\n', '')],
		'profiles.yaml:19: The sentence "leave-testa-major" is missing',
	],
	[
		'a missing sentence of the region',
		[inText('region-tides = Look at the tables.\n', '')],
		'key.yaml:1: The sentence "region-tides" is missing',
	],
	[
		'a label of 23 characters, which its letter makes 25',
		[inText('= Sharp', `= ${'x'.repeat(23)}`)],
		'"option-rim-sharp" has 23 characters; 22 fit',
	],
	[
		'a question too long for a caption',
		[inText('Is the rim sharp?', 'x'.repeat(1025))],
		'en.ftl:11: "question-rim" has 1025 characters; 1024 fit',
	],
	['two options with one label', [inText('= Dull', '= Sharp')], 'en.ftl:13: "option-rim-dull" says "Sharp"'],
];

test('the British Isles have no fault', () => {
	const flows = join(import.meta.dirname, '../../flows');
	expect(checkFolder(flows, 'british-isles', readTexts([join(flows, 'british-isles')]))).toEqual([]);
});

test('a made-up region without a fault passes', () => {
	expect(faultsOf([])).toEqual([]);
});

test.each(seeded)('the check finds %s and says on which line', (_, seeds, fault) => {
	expect(faultsOf(seeds)).toContainEqual(expect.stringContaining(fault));
});

test('a label of 22 characters and a caption of 1024 pass', () => {
	const seeds = [inText('= Sharp', `= ${'x'.repeat(22)}`), inText('Is the rim sharp?', 'x'.repeat(1024))];
	expect(faultsOf(seeds)).toEqual([]);
});

test('a file that does not fit its schema is reported by line and nothing else is', () => {
	const faults = faultsOf([inProfiles('mean: 40, source: made-up', 'mean: 40')]);
	expect(faults).toHaveLength(1);
	expect(faults[0]).toMatch(/^profiles\.yaml:10: "taxa\.testa-minor\.lengthMm" lacks "source"/);
});

test('one published size passes with a judged spread', () => {
	const one = "range: [40, 40], sd: 3, source: made-up, basis: 'a single case; spread judged'";
	expect(faultsOf([inProfiles(minorSizes, one)])).toEqual([]);
});

test('a flagged figure may be kept without its mean', () => {
	const flagged = "notUsed: [{what: length, range: [4, 5], why: 'a slip of print', source: made-up}]";
	const seed = inProfiles('    lookalikes: [testa-major]', `    ${flagged}\n    lookalikes: [testa-major]`);
	expect(faultsOf([seed])).toEqual([]);
});
