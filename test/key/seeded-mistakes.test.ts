/** Longer than other tests: mistakes that key authors make, each in a copy of a real region, and what the check says. */
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {projectWith, run} from '../cli/project.ts';

const root = join(import.meta.dirname, '../..');

/** What an author does to a file, what the check says of it, and where, if not on the line of the edit. */
type Mistake = {
	readonly name: string;
	readonly in: string;
	readonly find: string;
	readonly put: string;
	readonly says: string;
	/** The start of the line that is named, once in the changed file `on`. */
	readonly at?: string;
	readonly on?: string;
};

const mistakes: readonly Mistake[] = [
	{
		name: 'a lead misspelt by one letter',
		in: 'british-isles/key.yaml',
		find: 'options: {strings: {leads: scyliorhinus-canicula}',
		put: 'options: {strings: {leads: scyliorhinus-canicola}',
		says: '"corners" leads to "scyliorhinus-canicola", which is neither a question nor a taxon with a profile. Write question "scyliorhinus-canicola", or give the taxon "scyliorhinus-canicola" an entry in profiles.yaml.',
	},
	{
		name: 'a question begun and left without options',
		in: 'british-isles/key.yaml',
		find: 'options: {deep: {leads: raja-brachyura}, narrow: {leads: raja-clavata}}',
		put: 'options: {}',
		at: '  flaps:\n    look:',
		says: 'Question "flaps" has no way on. Give each state of its character an option.',
	},
	{
		name: 'a question that nothing leads to any more',
		in: 'western-mediterranean/key.yaml',
		find: 'strings: {leads: scyliorhinus-canicula}, hooks: {leads: hooked-length}',
		put: 'strings: {leads: scyliorhinus-canicula}, hooks: {leads: galeus-melastomus}',
		at: '  hooked-length:',
		says: 'No way leads to "hooked-length". Lead an option or a band to "hooked-length", or take it out.',
	},
	{
		name: 'a way that comes round to where it began',
		in: 'british-isles/key.yaml',
		find: 'hooks: {leads: broad-length}}',
		put: 'hooks: {leads: slim-length}}',
		at: '  slim-length:',
		says: 'The key runs in a loop: slim-length → long-corners → slim-length. Lead one of these ways elsewhere.',
	},
	{
		name: 'two bands that overlap after one end was moved',
		in: 'british-isles/key.yaml',
		find: '{fromMm: 67, belowMm: 105, leads: keel}',
		put: '{fromMm: 60, belowMm: 105, leads: keel}',
		says: 'Question "broad-length": Two bands overlap between 60 and 67 mm. Let the bands run from small to large, each beginning where the one before it ends.',
	},
	{
		name: 'bands that leave a gap after one end was moved',
		in: 'north-east-pacific/key.yaml',
		find: '{fromMm: 61, belowMm: 85, leads: horn-length}',
		put: '{fromMm: 63, belowMm: 85, leads: horn-length}',
		says: 'Question "broad-length": There is a gap between 61 and 63 mm. Let the bands run from small to large, each beginning where the one before it ends.',
	},
	{
		name: 'an option for a state that its character lacks',
		in: 'british-isles/key.yaml',
		find: '{upturned: {leads: raja-microocellata}, level:',
		put: '{curved: {leads: raja-microocellata}, level:',
		says: 'Question "back-horns" has an option "curved", a state that "back-horns" lacks. Use one of "upturned", "level", or add the state to the character.',
	},
	{
		name: 'a state added to a character and to one of its questions only',
		in: 'british-isles/key.yaml',
		find: 'states: [even, narrowing]',
		put: 'states: [even, narrowing, bent]',
		at: '    options: {even: {leads: straight-length}',
		says: 'Question "taper" has no option for the state "bent" of "taper". Say where "bent" leads.',
	},
	{
		name: 'a taxon with a profile to which no way leads',
		in: 'british-isles/key.yaml',
		find: '{belowMm: 88, leads: dipturus-batis}',
		put: '{belowMm: 88, leads: dipturus-intermedius}',
		on: 'british-isles/profiles.yaml',
		at: '  dipturus-batis:',
		says: 'No way leads to "dipturus-batis". Lead an option or a band to "dipturus-batis", or take it out.',
	},
	{
		name: 'a size without its source',
		in: 'british-isles/profiles.yaml',
		find: 'widthMm: {range: [17.8, 31], mean: 21.8, sd: 2.3, source: gordon2016',
		put: 'widthMm: {range: [17.8, 31], mean: 21.8, sd: 2.3',
		says: '"taxa.scyliorhinus-canicula.widthMm" lacks "source". Write it as the entries beside it have it.',
	},
	{
		name: 'a source without its page',
		in: 'british-isles/profiles.yaml',
		find: 'mean: 106.4, sd: 7.2, source: gordon2016, page: 272-273}',
		put: 'mean: 106.4, sd: 7.2, source: gordon2016}',
		says: 'No page of "gordon2016" is given. Write where it stands there: pages, "abstract", "table 1".',
	},
	{
		name: 'a source that is not in the list',
		in: 'western-mediterranean/profiles.yaml',
		find: 'range: [16, 20], mean: 18.3, sd: 1.2, source: capape2008a',
		put: 'range: [16, 20], mean: 18.3, sd: 1.2, source: capape2008',
		says: 'The source "capape2008" is not listed. Add it under "sources" with its citation.',
	},
	{
		name: 'the ends of a range the wrong way round',
		in: 'british-isles/profiles.yaml',
		find: 'widthMm: {range: [17.8, 31]',
		put: 'widthMm: {range: [31, 17.8]',
		says: 'The range 31 to 17.8 mm runs backwards. Write the smaller end first.',
	},
	{
		name: 'two figures of a mean in the wrong order',
		in: 'british-isles/profiles.yaml',
		find: 'mean: 106.4, sd: 7.2',
		put: 'mean: 160.4, sd: 7.2',
		says: 'The mean of 160.4 mm lies outside 89 to 125.1 mm. Compare both with their source.',
	},
	{
		name: 'a spread without its decimal point',
		in: 'british-isles/profiles.yaml',
		find: 'mean: 21.8, sd: 2.3',
		put: 'mean: 21.8, sd: 23',
		says: 'A spread of 23 mm is too wide for 17.8 to 31 mm. Compare "sd" with its source, and mind the decimal point.',
	},
	{
		name: 'one published size that says nothing of the spread',
		in: 'north-east-pacific/profiles.yaml',
		find: 'lengthMm: {range: [91.6, 92.4], sd: 4.6',
		put: 'lengthMm: {range: [92, 92]',
		says: 'One size of 92 mm does not tell how much cases differ. Judge "sd", and say under "basis" how.',
	},
	{
		name: 'a decimal comma in a range',
		in: 'british-isles/profiles.yaml',
		find: 'widthMm: {range: [17.8, 31]',
		put: 'widthMm: {range: [17,8, 31]',
		says: '"taxa.scyliorhinus-canicula.widthMm.range" has a comma inside a number. Write decimals with a point: 17.8.',
	},
	{
		name: 'a decimal comma in a mean',
		in: 'british-isles/profiles.yaml',
		find: 'mean: 21.8, sd: 2.3',
		put: 'mean: 21,8, sd: 2.3',
		says: '"taxa.scyliorhinus-canicula.widthMm" has a comma inside a number. Write decimals with a point: 17.8.',
	},
	{
		name: 'shares of which only one was changed',
		in: 'north-east-pacific/profiles.yaml',
		find: 'feel: {rough: 0.92, smooth: 0.08}\n      groove: {groove: 0.88, none: 0.12}',
		put: 'feel: {rough: 0.92, smooth: 0.18}\n      groove: {groove: 0.88, none: 0.12}',
		says: 'The shares of "feel" sum to 1.1. Make them sum to 1.',
	},
	{
		name: 'a character forgotten in one taxon',
		in: 'british-isles/profiles.yaml',
		find: '      coat: {bark: 0.02, bare: 0.98}\n      flaps: {deep: 0.03, narrow: 0.97}\n    described: {source: gordon2016, page: 272-274}',
		put: '      coat: {bark: 0.02, bare: 0.98}\n    described: {source: gordon2016, page: 272-274}',
		at: '    states:\n      outline: {slim: 0.96, broad: 0.04}\n      corners: {strings: 0.96, hooks: 0.04}\n      net: {net: 0.06',
		says: 'The shares of "flaps" are missing. Write them, or put "flaps" under "silent" where no description tells.',
	},
	{
		name: 'a character that was read at last and is still called silent',
		in: 'north-east-pacific/profiles.yaml',
		find: '    silent: [rim-fibres, underside]',
		put: '    silent: [groove, rim-fibres, underside]',
		says: '"groove" is said to be silent and has shares. Take it out of one of the two.',
	},
	{
		name: 'a word of how common a kind is that the key does not weigh',
		in: 'british-isles/profiles.yaml',
		find: 'howCommon: common-everywhere\n    lengthMm: {range: [50, 74]',
		put: 'howCommon: everywhere-common\n    lengthMm: {range: [50, 74]',
		says: 'The key gives no weight to "everywhere-common". Use one of "common-everywhere", "common", "common-in-part", "fairly-common", "one-coast", "local", "occasional", "rare-but-local", "very-rare", or add the word to "howCommon" in key.yaml.',
	},
	{
		name: 'a lookalike under an old name',
		in: 'british-isles/profiles.yaml',
		find: 'lookalikes: [galeus-melastomus, scyliorhinus-stellaris]',
		put: 'lookalikes: [galeus-melastomus, scyliorhinus-catulus]',
		says: 'The lookalike "scyliorhinus-catulus" has no profile. Name a taxon of this file.',
	},
	{
		name: 'a taxon written twice',
		in: 'british-isles/profiles.yaml',
		find: '  galeus-melastomus:\n',
		put: '  scyliorhinus-stellaris:\n',
		at: '  scyliorhinus-stellaris:\n    scientificName: Galeus',
		says: 'Map keys must be unique. Take one of the two out, or give it another id.',
	},
	{
		name: 'a line with one space too many',
		in: 'british-isles/profiles.yaml',
		find: '    family: Pentanchidae',
		put: '     family: Pentanchidae',
		at: '    authorship: Rafinesque, 1810',
		says: 'Nested mappings are not allowed in compact mappings. Begin this line and those around it with as many spaces as their neighbours have.',
	},
	{
		name: 'a line begun with a tab',
		in: 'british-isles/key.yaml',
		find: '    look: net\n    options: {net: {leads: amblyraja-radiata}',
		put: '\tlook: net\n    options: {net: {leads: amblyraja-radiata}',
		says: 'Tabs are not allowed as indentation. Put spaces in place of the tab.',
	},
	{
		name: 'a word of the key misspelt in one question',
		in: 'british-isles/key.yaml',
		find: '    look: net\n    options: {net: {leads: amblyraja-radiata}',
		put: '    loook: net\n    options: {net: {leads: amblyraja-radiata}',
		says: '"questions.net" has no place for "loook". Look for a slip of the pen or of the indent.',
	},
	{
		name: 'a part that cannot be lost',
		in: 'british-isles/key.yaml',
		find: 'corners:\n    needs: [horns]',
		put: 'corners:\n    needs: [tendrils]',
		at: '    needs: [tendrils]',
		says: 'Character "corners" needs "tendrils", which is no part that can be lost. Use "horns", "sides", "surface", "aprons".',
	},
	{
		name: 'an id said to have moved while it is still used',
		in: 'british-isles/key.yaml',
		find: 'moved: []',
		put: 'moved: [{from: edge, to: taper}]',
		says: '"edge" is said to have moved and is still in use. Take this line out, or rename what still bears the id.',
	},
	{
		name: 'a coast that names an area by another word',
		in: 'british-isles/profiles.yaml',
		find: 'coast: {usual: [west-scotland, west-ireland], source: gordon2016',
		put: 'coast: {usual: [west-scotland, ireland], source: gordon2016',
		says: 'The area "ireland" is not in key.yaml. Write one of south-west, channel, irish-sea, west-ireland, west-scotland, northern-isles, north-sea, or draw the area.',
	},
	{
		name: 'an outline whose corners are out of order',
		in: 'british-isles/key.yaml',
		find: '[1.8, 49.8], [2.2, 51.0], [1.6, 51.4], [-2.8, 51.0]',
		put: '[1.6, 51.4], [2.2, 51.0], [1.8, 49.8], [-2.8, 51.0]',
		says: 'The border of the area "channel" crosses itself: the side from point 1 to 2 and the side from point 4 to 5. Walk round the area one way and write the points in that order.',
	},
	{
		name: 'an outline closed by writing its first corner again',
		in: 'british-isles/key.yaml',
		find: '[1.6, 51.4], [-2.8, 51.0]]',
		put: '[1.6, 51.4], [-2.8, 51.0], [-2.8, 48.8]]',
		says: 'Point 6 of the area "channel" is point 1 again. Write each point once, at least three; the border closes by itself.',
	},
	{
		name: 'one corner with its latitude first',
		in: 'north-east-pacific/key.yaml',
		find: '      - [-117.5, 34]',
		put: '      - [34, -117.5]',
		says: '"areas.southern-california.ring.6.1": expected longitude (-180 to 180), then latitude (-90 to 90). Compare it with the same entry of another region.',
	},
	{
		name: 'one corner with its latitude first where both could be either',
		in: 'western-mediterranean/key.yaml',
		find: '[16.3, 39.8], [15.4, 40.7]',
		put: '[39.8, 16.3], [15.4, 40.7]',
		says: 'Point 9 of the area "sardinia-tyrrhenian", [39.8, 16.3], lies far from the others. Write longitude first: [16.3, 39.8].',
	},
	{
		name: 'a whole outline with latitudes first',
		in: 'british-isles/key.yaml',
		find: '[[-2.8, 48.8], [1.8, 49.8], [2.2, 51.0], [1.6, 51.4], [-2.8, 51.0]]',
		put: '[[48.8, -2.8], [49.8, 1.8], [51.0, 2.2], [51.4, 1.6], [51.0, -2.8]]',
		says: 'The area "channel" lies over 10 degrees from every other area. Write longitude first in each point, then latitude: turned round, it lies beside the others.',
	},
	{
		name: 'a western outline without its minus signs',
		in: 'north-east-pacific/key.yaml',
		find: '[-120.47, 34.44]\n      - [-121.2, 34.2]\n      - [-121.4, 33.2]\n      - [-119, 32.2]\n      - [-117.15, 32.5]\n      - [-116.9, 33.3]\n      - [-117.5, 34]\n      - [-119, 34.7]\n      - [-120.2, 34.8]',
		put: '[120.47, 34.44]\n      - [121.2, 34.2]\n      - [121.4, 33.2]\n      - [119, 32.2]\n      - [117.15, 32.5]\n      - [116.9, 33.3]\n      - [117.5, 34]\n      - [119, 34.7]\n      - [120.2, 34.8]',
		at: '    ring:\n      - [120.47, 34.44]',
		says: 'The area "southern-california" lies over 10 degrees from every other area. Compare its points with a map: longitude first, west and south with a minus.',
	},
	{
		name: 'an outline of two corners',
		in: 'british-isles/key.yaml',
		find: '[[-2.8, 48.8], [1.8, 49.8], [2.2, 51.0], [1.6, 51.4], [-2.8, 51.0]]',
		put: '[[-2.8, 48.8], [2.2, 51.0]]',
		says: '"areas.channel.ring": expected three points or more. Compare it with the same entry of another region.',
	},
	{
		name: 'an outline whose corners lie on one line',
		in: 'british-isles/key.yaml',
		find: '[[-2.8, 48.8], [1.8, 49.8], [2.2, 51.0], [1.6, 51.4], [-2.8, 51.0]]',
		put: '[[-2, 50], [0, 50], [2, 50]]',
		says: 'The points of the area "channel" lie on one line. Write at least three that hold something between them.',
	},
	{
		name: 'a sentence forgotten with a new state',
		in: 'british-isles/en.ftl',
		find: 'seen-keel-blade =',
		put: 'seen-keel-blades =',
		on: 'british-isles/key.yaml',
		at: '  keel:\n    needs: [sides]',
		says: 'The sentence "seen-keel-blade" is missing in "en". Add it to en.ftl.',
	},
	{
		name: 'a state of which nothing is drawn',
		in: 'british-isles/key.yaml',
		find: '      net: {surface: {net: true}}\n',
		put: '',
		at: '    draws:\n      lines: {surface: {net',
		says: 'The state "net" of "net" draws nothing.',
	},
	{
		name: 'a label too long for a button',
		in: 'british-isles/en.ftl',
		find: 'option-keel-blade = Yes, a thin blade',
		put: 'option-keel-blade = Yes, an edge like a blade',
		says: '"option-keel-blade" has 25 characters; 22 fit. Say it shorter or in other words.',
	},
];

const named = mistakes.map(mistake => [mistake.name, mistake] as const);

test.each(named)('the check finds %s, by file and line, and says what to do', async (_, mistake) => {
	const {in: name, find, put, on = name, says} = mistake;
	const before = readFileSync(join(root, 'flows', name), 'utf8');
	const found = lineOf(before, find, name);
	const project = projectWith({in: name, find, put});
	const changed = readFileSync(join(project, 'flows', on), 'utf8');
	const line = mistake.at === undefined ? found : lineOf(changed, mistake.at, on);
	const {said, complained, exitCode} = await run(['check', regionOf(name)], {root: project});
	expect(said.split('\n')).toContainEqual(expect.stringContaining(`flows/${on}:${line}: ${says}`));
	expect(said).not.toContain('nothing wrong');
	expect(complained).toBe('');
	expect(exitCode).toBe(1);
});

test('every name of a mistake is its own', () => {
	expect(new Set(mistakes.map(({name}) => name)).size).toBe(mistakes.length);
});

/** The line on which a text begins; an Error unless it stands there once. */
function lineOf(whole: string, text: string, name: string): number {
	const [above, ...rest] = whole.split(text);
	if (above === undefined || rest.length !== 1) {
		throw new Error(`Expected ${JSON.stringify(text)} once in ${name}; it is there ${rest.length} times`);
	}
	return above.split('\n').length;
}

function regionOf(name: string): string {
	return name.split('/')[0] ?? name;
}
