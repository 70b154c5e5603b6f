import {beforeAll, expect, test, vi} from 'vitest';
import type {Db} from '../../src/store/schema.ts';
import type {Death} from '../support/mortal.ts';
import {killIn, lurk, mortalWorld} from '../support/mortal.ts';
import {noonZone} from '../support/noon.ts';
import {buildProgram} from '../support/process.ts';
import {exampleDay} from '../survey/days.ts';

let built = '';

beforeAll(async () => {
	built = await buildProgram();
}, 180_000);

const people = 60;
/** About to be sent, or sent and not marked: twice each. */
const deaths = [
	{method: 'sendDocument', when: 'before'},
	{method: 'sendDocument', when: 'after'},
	{method: 'sendDocument', when: 'after'},
	{method: 'sendDocument', when: 'before'},
] as const satisfies readonly Death[];
/** The most that are under way at one time. */
const mostInFlight = 3;

/** Everybody asked to hear of the coast, and there is a day in three days to be told of. */
async function announceToAll(db: Db): Promise<number> {
	await db.updateTable('person').set({zone: noonZone(), isZoneChosen: 1}).execute();
	const startsAt = Date.now() + 3 * 24 * 3_600_000;
	const day = {...exampleDay, startsAt, endsAt: startsAt + 3_600_000};
	const at = Date.now();
	const chats = await db.selectFrom('chat').select('id').execute();
	await db.transaction().execute(async tx => {
		for (const {id} of chats) {
			const wish = {chat: id, person: id, kind: 'coast' as const, region: 'british-isles', createdAt: at};
			await tx
				.insertInto('audience')
				.values({...wish, coordinator: null, latitude: null, longitude: null})
				.execute();
		}
	});
	const stored = {
		uuid: 'day-1',
		code: 'code-1',
		person: 1,
		region: 'british-isles',
		state: 'published' as const,
	};
	const none = {plan: null, askedForResultAt: null};
	await db
		.insertInto('day')
		.values({
			...stored,
			...none,
			turn: 1,
			body: JSON.stringify(day),
			startsAt,
			endsAt: day.endsAt,
			createdAt: at,
			changedAt: at,
		})
		.execute();
	const news = {uuid: 'day-1', sequence: 1, region: 'british-isles', coordinator: 1, day};
	const {id} = await db
		.insertInto('broadcast')
		.values({
			day: 1,
			kind: 'announced',
			urgency: 4,
			state: 'waiting',
			dueAt: at,
			uselessAt: startsAt,
			body: JSON.stringify(news),
			progressRow: null,
			progressAt: null,
			createdAt: at,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}

test('a program killed in the midst of telling many tells nobody twice and misses nobody', async () => {
	const world = await mortalWorld(built);
	const {db, room, gate} = world;
	const names = Array.from({length: people}, (_, index) => `Person ${index + 1}`);
	let running = await world.start();
	for (const name of names) room.person(name).sends('/start');
	await world.quiet();
	await running.end('SIGKILL');
	const broadcast = await announceToAll(db);
	for (const death of deaths) {
		const held = lurk(gate, death);
		running = await world.start();
		await killIn(world, running, held);
	}
	await world.start();
	await vi.waitFor(
		async () => {
			const {state} = await db
				.selectFrom('broadcast')
				.select('state')
				.where('id', '=', broadcast)
				.executeTakeFirstOrThrow();
			expect(state).toBe('done');
		},
		{timeout: 90_000, interval: 100},
	);
	const rows = await db
		.selectFrom('delivery')
		.innerJoin('chatAddress', 'chatAddress.chat', 'delivery.chat')
		.select(['delivery.state', 'chatAddress.platformId'])
		.execute();
	expect(rows).toHaveLength(people);
	const heard = ({platformId}: {readonly platformId: number}) =>
		room.messages(platformId).filter(({text}) => text.includes('There is a survey day.')).length;
	const [sent, unknown] = (['sent', 'unknown'] as const).map(state =>
		rows.filter(row => row.state === state),
	);
	expect(sent?.map(heard)).toEqual(Array.from({length: sent?.length ?? 0}, () => 1));
	// Of those in flight at a death the ledger says that nobody knows; each was told once or not at all.
	expect(unknown?.length).toBeGreaterThanOrEqual(deaths.length);
	expect(unknown?.length).toBeLessThanOrEqual(deaths.length * mostInFlight);
	expect(Math.max(...(unknown ?? []).map(heard))).toBeLessThanOrEqual(1);
	expect((sent?.length ?? 0) + (unknown?.length ?? 0)).toBe(people);
}, 600_000);
