import {expect, test} from 'vitest';
import {z} from 'zod';
import {run} from './project.ts';

const vocabularySchema = z.object({
	region: z.string(),
	parts: z.array(z.string()),
	characters: z.array(
		z.object({
			id: z.string(),
			needs: z.array(z.string()),
			question: z.string(),
			askedBy: z.array(z.string()).min(1),
			states: z.array(z.object({id: z.string(), option: z.string()})).min(2),
		}),
	),
	measured: z.array(
		z.object({
			id: z.string(),
			measure: z.enum(['length', 'width']),
			question: z.string(),
			bands: z.array(
				z.object({fromMm: z.number().optional(), belowMm: z.number().optional(), leads: z.string()}),
			),
		}),
	),
	taxa: z.array(z.object({id: z.string(), scientificName: z.string(), commonName: z.string()})),
});

test('the words of a region are one JSON object and nothing else', async () => {
	const {said, complained, exitCode} = await run(['vocabulary', 'british-isles', '--json']);
	const vocabulary = vocabularySchema.parse(JSON.parse(said));
	expect(vocabulary.region).toBe('british-isles');
	expect(vocabulary.characters).toContainEqual({
		id: 'keel',
		needs: ['sides'],
		question: expect.stringMatching(/Is there one along the sides\?$/),
		askedBy: ['small-keel', 'keel'],
		states: [
			{id: 'blade', option: 'Yes, a thin blade'},
			{id: 'none', option: 'No blade at all'},
		],
	});
	expect(vocabulary.measured).toContainEqual({
		id: 'bark-width',
		measure: 'width',
		question: expect.stringContaining('How wide is the capsule'),
		bands: [
			{belowMm: 88, leads: 'dipturus-batis'},
			{fromMm: 88, leads: 'dipturus-intermedius'},
		],
	});
	expect(vocabulary.taxa).toContainEqual({
		id: 'raja-clavata',
		scientificName: 'Raja clavata',
		commonName: 'Thornback ray',
	});
	expect(vocabulary.parts).toEqual(['horns', 'sides', 'surface', 'aprons']);
	expect(complained).toBe('');
	expect(exitCode).toBe(0);
});

test('the words of a region can be read by people', async () => {
	const {said} = await run(['vocabulary', 'british-isles']);
	expect(said).toContain('keel (needs sides)');
	expect(said).toContain('  blade: Yes, a thin blade');
	expect(said).toContain('raja-clavata: Raja clavata, Thornback ray');
	expect(said).toContain('Parts that can be lost: horns, sides, surface, aprons');
});
