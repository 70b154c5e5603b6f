import {join} from 'node:path';
import {expect, test} from 'vitest';
import {z} from 'zod';
import {rank} from '../../src/key/evidence.ts';
import {readRegion} from '../../src/key/region.ts';
import {walkKey} from '../../src/key/specimen.ts';
import {run} from './project.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');

const answerSchema = z.strictObject({
	ranking: z.array(z.strictObject({taxon: z.string(), probability: z.number()})),
	leaves: z.array(z.string()),
	asked: z.array(z.string()),
	said: z.string(),
});
const refusalSchema = z.strictObject({error: z.string(), line: z.number()});

const thornback = {length: 75, characters: {outline: 'broad', net: 'lines', keel: 'blade', taper: 'even'}};

async function named(specimen: unknown, ...options: readonly string[]) {
	const {said} = await run(['name', 'british-isles', '--json', ...options], {
		input: JSON.stringify(specimen),
	});
	return answerSchema.parse(JSON.parse(said));
}

async function refused(line: string): Promise<string> {
	const {said, exitCode} = await run(['name', 'british-isles', '--json'], {input: line});
	expect(exitCode).toBe(1);
	return refusalSchema.parse(JSON.parse(said)).error;
}

test('each line is answered with one line of JSON, in order', async () => {
	const input = [thornback, {length: 60, outline: 'slim', corners: 'strings'}, {}].map(one =>
		JSON.stringify(one),
	);
	const {said, complained, exitCode} = await run(['name', 'british-isles', '--json'], {
		input: input.join('\n'),
	});
	const answers = said.split('\n').map(line => answerSchema.parse(JSON.parse(line)));
	expect(answers.map(({said: name}) => name)).toEqual([
		'very-likely: Raja clavata',
		'very-likely: Scyliorhinus canicula',
		expect.stringMatching(/^shortlist: Raja clavata, /),
	]);
	for (const {ranking} of answers) {
		expect(Math.abs(ranking.reduce((sum, {probability}) => sum + probability, 0) - 1)).toBeLessThan(1e-9);
		expect(ranking.map(({taxon}) => taxon)).toContain('something-else');
	}
	expect(complained).toBe('');
	expect(exitCode).toBe(0);
});

test('an answer says what the key asked for, in order, and where it led', async () => {
	const {asked, leaves} = await named(thornback);
	expect(asked).toEqual(['outline', 'keel', 'taper']);
	expect(leaves).toEqual(['raja-clavata']);
	expect(leaves).toEqual(walkKey(region.key, {seen: thornback.characters, lengthMm: 75}).leaves);
});

test('a length that reaches over a border is asked for what both sides need, not for what would tell nothing', async () => {
	const {asked} = await named({...thornback, length: 66.5});
	expect(asked).toEqual(['outline', 'net', 'keel', 'width']);
});

test.each([67, 78, 80, 92, 105, 125])(
	'a length of exactly %s mm, a border of the key, leads on and is not taken for a width',
	async length => {
		const {asked, leaves} = await named({
			length,
			lengthUncertainty: 0,
			outline: 'broad',
			coat: 'bark',
			width: 75,
		});
		// Below 105 the key itself wants no width; one more question at the end may.
		expect((length >= 105 ? asked : asked.slice(0, -1)).includes('width')).toBe(length >= 105);
		expect(leaves.length).toBeGreaterThan(0);
	},
);

test('a width is asked for only where the key wants it', async () => {
	const large = {length: 140, width: 74, outline: 'broad', coat: 'bark'};
	const {asked, leaves} = await named(large);
	expect(asked).toEqual(['outline', 'coat', 'width']);
	expect(leaves).toEqual(['dipturus-batis']);
});

test('characters beside the sizes count as those under "characters"', async () => {
	const {characters, ...sizes} = thornback;
	expect(await named({...sizes, ...characters})).toEqual(await named(thornback));
});

test('a character that cannot be told is the same as one that is not given', async () => {
	const cannot = {...thornback, characters: {...thornback.characters, taper: 'cant-tell'}};
	const {taper: _, ...without} = thornback.characters;
	expect(await named(cannot)).toEqual(await named({...thornback, characters: without}));
});

test('a lost part is not asked about', async () => {
	const {asked, leaves} = await named({...thornback, lost: ['sides']});
	expect(asked).not.toContain('keel');
	expect(leaves.length).toBeGreaterThan(1);
});

test('an uncertainty that is not given is 1 mm', async () => {
	expect(await named({...thornback, lengthUncertainty: 1})).toEqual(await named(thornback));
	expect(await named({...thornback, lengthUncertainty: 9})).not.toEqual(await named(thornback));
});

test('a length without its aprons counts as a lower bound, unless the line says otherwise', async () => {
	const torn = {...thornback, lost: ['aprons']};
	expect(await named(torn)).toEqual(await named({...torn, bound: 'at-least'}));
	expect(await named(torn)).not.toEqual(await named({...torn, bound: 'exact'}));
});

test('what the key does not ask for counts only when everything is to count', async () => {
	const more = {...thornback, length: 60, characters: {...thornback.characters, flaps: 'deep'}};
	expect(await named(more)).toEqual(await named({...thornback, length: 60}));
	const {ranking} = await named(more, '--all');
	const length = {kind: 'exact', mm: 60, uncertaintyMm: 1} as const;
	expect(ranking).toEqual(rank(region, {seen: more.characters, length, width: {kind: 'unknown'}, lost: []}));
});

test.each([
	['{"length": 66, "keel": "fin"}', 'Expected "keel" to be "blade" or "none" or "cant-tell"; got "fin"'],
	['{"characters": {"keel": 1}}', /"characters.keel" to be "blade" .*; got 1$/],
	['{"hue": "red"}', /^Expected only sizes and characters, .*; got "hue"$/],
	['{"characters": {"hue": "red"}}', /^Expected only characters in "characters", .*; got "hue"$/],
	['{"length": "66"}', 'Expected "length" to be a number; got "66"'],
	['{"length": null}', 'Expected "length" to be a number; got null'],
	['{"length": 301}', 'Expected "length" to be at most 300 mm; got 301'],
	['{"width": -4}', 'Expected "width" to be at least 10 mm; got -4'],
	['{"length": 66, "lengthUncertainty": -1}', /"lengthUncertainty" to be at least 0 mm; got -1/],
	['{"widthUncertainty": 1}', 'Expected "width" beside "widthUncertainty"'],
	['{"bound": "about"}', 'Expected "bound" to be "exact" or "at-least"; got "about"'],
	['{"lost": ["fins"]}', /"lost.0" to be "horns" or .*; got "fins"/],
	['{"keel": "blade", "characters": {"keel": "none"}}', 'Expected "keel" once; got it twice'],
	['[1]', 'Expected one JSON object a line; got [1]'],
	['{"length": 66', 'Expected one JSON object a line; got {"length": 66'],
])('the line %s is refused with what was expected and what came', async (line, error) => {
	expect(await refused(line)).toMatch(error);
});

test('a line that is refused is counted as an editor counts, and the others are still answered', async () => {
	const input = [JSON.stringify(thornback), '', 'nonsense', JSON.stringify(thornback)].join('\n');
	const {said, exitCode} = await run(['name', 'british-isles', '--json'], {input});
	const [first, second, third, ...more] = said.split('\n').map(line => JSON.parse(line));
	expect(second).toEqual({error: 'Expected one JSON object a line; got nonsense', line: 3});
	expect(third).toEqual(first);
	expect(more).toEqual([]);
	expect(exitCode).toBe(1);
});

test('a specimen that fits no profile is said to be unknown', async () => {
	const {said} = await named({length: 300});
	expect(said).toBe('unknown');
});

test('without --json a specimen is named in words', async () => {
	const {said} = await run(['name', 'british-isles'], {input: JSON.stringify(thornback)});
	expect(said).toMatch(/^1: very-likely: Raja clavata \(raja-clavata \d+\.\d in 100, /);
});
