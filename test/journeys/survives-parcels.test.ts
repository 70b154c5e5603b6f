/** What is made for somebody while the program is killed. */
import {readdirSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, expect, test} from 'vitest';
import {killIn, lurk, mortalWorld} from '../support/mortal.ts';
import {buildProgram} from '../support/process.ts';
import {begin} from '../support/steps.ts';

let built = '';

beforeAll(async () => {
	built = await buildProgram();
}, 180_000);

// A file that had left and was not marked comes again, as every message does (at least once).
test.each([
	{when: 'before', copies: 1},
	{when: 'after', copies: 2},
] as const)(
	'a copy of what is held arrives though the program is killed $when it is sent, and no file stays',
	async ({when, copies}) => {
		const world = await mortalWorld(built);
		const running = await world.start();
		const ada = world.person(world.quiet);
		await begin(ada);
		const held = lurk(world.gate, {method: 'sendDocument', when});
		ada.room.sends('/mydata');
		expect(await killIn(world, running, held)).toMatchObject({sending: 1});
		expect(readdirSync(join(world.folder, 'parcels'))).toEqual(['1']);
		await world.start();
		await world.quiet();
		const files = ada.all.filter(({document}) => document !== undefined);
		expect(files).toHaveLength(copies);
		expect(new Set(files.map(({document}) => document?.sizeBytes)).size).toBe(1);
		await expect.poll(() => readdirSync(join(world.folder, 'parcels')), {timeout: 10_000}).toEqual([]);
	},
	600_000,
);
