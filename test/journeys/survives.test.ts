import {beforeAll, expect, test} from 'vitest';
import {draftSchema} from '../../src/record/draft.ts';
import type {Db} from '../../src/store/schema.ts';
import {png} from '../room/picture.ts';
import {newestFind} from '../support/journey.ts';
import {type Death, type Found, killIn, lurk, mortalWorld} from '../support/mortal.ts';
import {noonZone} from '../support/noon.ts';
import {buildProgram, type Running} from '../support/process.ts';
import {begin, walkTo} from '../support/steps.ts';

let built = '';

beforeAll(async () => {
	built = await buildProgram();
}, 180_000);

const patience = 600_000;

/** The questions of a soft, whole thornback case, in the order in which they are asked. */
const asked = [
	'egg-case',
	'alive',
	'photo',
	'where',
	'when',
	'count',
	'broken',
	'condition',
	'aprons',
	'length',
	'outline',
	'net',
	'keel',
	'width',
	'result',
];

/** The questions of a case that is left in the sea. */
const askedOfLive = ['egg-case', 'alive', 'leave', 'photo-live', 'where', 'when', 'live-result'];

async function onlyDraft(db: Db) {
	const drafts = await db.selectFrom('draft').select(['find', 'version', 'status', 'body']).execute();
	expect(drafts).toHaveLength(1);
	expect(await db.selectFrom('aside').selectAll().execute()).toEqual([]);
	const [draft] = drafts;
	return {...draft, body: draftSchema.parse(JSON.parse(draft?.body ?? ''))};
}

test(
	'a find comes to its draft though the program is killed after every step and starts with the next one waiting',
	async () => {
		const world = await mortalWorld(built);
		let deaths = 0;
		const ada = world.person(async () => {
			// The program is dead while Ada acts; what she does waits for it.
			expect(world.room.pendingUpdates()).toBe(1);
			const running = await world.start();
			await world.quiet();
			await running.end('SIGKILL');
			deaths += 1;
		});
		await begin(ada);
		const steps = await walkTo({db: world.db, person: ada}, 'kept');
		expect(steps).toEqual(asked);
		expect(deaths).toBe(asked.length + 2);
		const find = await newestFind(world.db, ada.id);
		expect(find.trail.map(({question}) => question)).toEqual(asked);
		expect(await onlyDraft(world.db)).toMatchObject({
			find: find.id,
			version: 1,
			status: 'draft',
			body: {id: find.uuid, count: 1, length: {mm: 66}, said: ['raja-clavata']},
		});
		// Nothing was under way at any of these deaths, so nothing was said twice.
		const said = ada.all.map(({text}) => text);
		expect(new Set(said).size).toBe(said.length);
		expect(ada.sees.text).toContain('Saved as a draft');
	},
	patience,
);

/** Fetched and not handled; handled and not confirmed; about to be sent; sent and not marked. */
const deaths = [
	{method: 'getUpdates', when: 'after'},
	{method: 'getUpdates', when: 'before'},
	{method: 'sendMessage', when: 'before'},
	{method: 'sendMessage', when: 'after'},
] as const satisfies readonly Death[];

test(
	'a live case comes to its draft though the program is killed in the midst of every step',
	async () => {
		const world = await mortalWorld(built);
		const found: Found[] = [];
		let running = await world.start();
		let death: Death = deaths[0];
		let held = lurk(world.gate, death);
		const ada = world.person(async () => {
			found.push({...death, ...(await killIn(world, running, held))});
			running = await world.start();
			await world.quiet();
			death = deaths[found.length % deaths.length] ?? deaths[0];
			held = lurk(world.gate, death);
		});
		await begin(ada);
		const steps = await walkTo({db: world.db, person: ada}, 'kept', {
			alive: person => person.presses('Tied to weed or rock'),
		});
		expect(steps).toEqual(askedOfLive);
		const find = await newestFind(world.db, ada.id);
		expect(find.trail.map(({question}) => question)).toEqual(askedOfLive);
		expect(await onlyDraft(world.db)).toMatchObject({
			find: find.id,
			version: 1,
			status: 'draft',
			body: {kind: 'left-alive'},
		});
		expect(await world.db.selectFrom('find').select('id').execute()).toHaveLength(1);
		expect(found).toHaveLength(askedOfLive.length + 2);
		for (const {method, unconfirmed, sending} of found) {
			expect(method === 'getUpdates' ? unconfirmed : sending).toBeGreaterThan(0);
		}
		expect(ada.sees.text).toContain('Saved as a draft');
	},
	patience,
);

test(
	'a photo that was still wanted when the program was killed is fetched once, for the draft of its find',
	async () => {
		const world = await mortalWorld(built);
		let running = await world.start();
		const ada = world.person(world.quiet);
		await begin(ada);
		await walkTo({db: world.db, person: ada}, 'photo');
		for (const when of ['before', 'after'] as const) {
			const held = lurk(world.gate, {method: 'getFile', when});
			ada.room.photo(png(640, when === 'before' ? 480 : 320));
			expect(await killIn(world, running, held)).toMatchObject({wanted: 1});
			running = await world.start();
			await world.quiet();
		}
		await ada.presses('Go on');
		await walkTo({db: world.db, person: ada}, 'kept');
		const {body} = await onlyDraft(world.db);
		expect(body.photos).toEqual([
			{id: expect.any(Number), hash: expect.stringMatching(/^[0-9a-f]{64}$/)},
			{id: expect.any(Number), hash: expect.stringMatching(/^[0-9a-f]{64}$/)},
		]);
		expect(new Set(body.photos.map(({hash}) => hash)).size).toBe(2);
	},
	patience,
);

test(
	'a bowl that became due while the program was dead is told, also when it dies again in the telling',
	async () => {
		const world = await mortalWorld(built);
		let running: Running = await world.start();
		const ada = world.person(world.quiet);
		await begin(ada);
		await walkTo({db: world.db, person: ada}, 'soaking', {
			condition: person => person.presses('Dry and stiff'),
		});
		await running.end('SIGKILL');
		await world.db
			.updateTable('reminder')
			.set({dueAt: Date.now() - 1000, zone: noonZone()})
			.execute();
		const held = lurk(world.gate, {method: 'sendMessage', when: 'before'});
		running = await world.start();
		expect(await killIn(world, running, held)).toMatchObject({sending: 1});
		await world.start();
		await world.quiet();
		expect(ada.all.filter(({text}) => text.includes('Your bowl is ready'))).toHaveLength(1);
		await walkTo({db: world.db, person: ada}, 'kept');
		expect((await onlyDraft(world.db)).body.soak).toMatchObject({state: 'soaked'});
	},
	patience,
);
