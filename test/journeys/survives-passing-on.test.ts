/** Records on their way out while the program is killed again and again. */
import {mkdtempSync, readdirSync, readFileSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, expect, onTestFinished, test} from 'vitest';
import {z} from 'zod';
import {queueForward} from '../../src/store/forwards.ts';
import type {Db} from '../../src/store/schema.ts';
import {startReceiver} from '../clockwork/receiver.ts';
import {quickFolder} from '../support/folder.ts';
import {mortalWorld} from '../support/mortal.ts';
import {buildProgram} from '../support/process.ts';

let built = '';

beforeAll(async () => {
	built = await buildProgram();
}, 180_000);

const patience = 600_000;
// Bytes 00 to 1f in base64.
const secret = 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=';
const versions = [1, 2, 3] as const;
const types = ['record.submitted', 'record.changed', 'record.withdrawn'] as const;
const messageSchema = z.object({type: z.string(), data: z.object({record: z.string(), version: z.number()})});

/** Three messages about each of so many records, all due. */
async function queueAbout(db: Db, records: number): Promise<void> {
	for (const version of versions) {
		for (let number = 0; number < records; number++) {
			const record = `r${number}`;
			const body = JSON.stringify({type: types[version - 1], data: {record, version}});
			await queueForward(db, {record, version, webhookId: `${record}_${version}`, body, now: 0});
		}
	}
}

/** What a killed program held is held no longer; nobody waits for the minute. */
async function letGo(db: Db): Promise<void> {
	await db.updateTable('forward').set({notBefore: 0}).where('state', '=', 'waiting').execute();
}

async function allSent(db: Db): Promise<void> {
	const waiting = () => db.selectFrom('forward').select('id').where('state', '!=', 'sent').execute();
	await expect.poll(waiting, {timeout: 90_000, interval: 100}).toEqual([]);
}

test(
	'an address hears every message in order, though the program is killed while it waits for the answer',
	async () => {
		const receiver = await startReceiver(secret);
		onTestFinished(receiver.close);
		const world = await mortalWorld(built, {FORWARD_URL: receiver.url, FORWARD_SECRET: secret});
		await queueAbout(world.db, 10);
		const kills = 4;
		for (let kill = 1; kill <= kills; kill++) {
			const starting = world.start();
			await new Promise<void>(resolve => {
				// Heard, and before the answer is there the program is gone.
				receiver.answer(async () => {
					if (receiver.heard.length < kill * 7) return;
					await (await starting).end('SIGKILL');
					resolve();
				});
			});
			receiver.answer({status: 204});
			await letGo(world.db);
		}
		await world.start();
		await allSent(world.db);
		expect(receiver.heard.every(({valid}) => valid)).toBe(true);
		const ids = receiver.heard.map(({webhookId}) => webhookId);
		expect(new Set(ids).size).toBe(30);
		// Once more for each death, under the id that it had.
		expect(ids.length).toBe(30 + kills);
		for (let number = 0; number < 10; number++) {
			const own = [...new Set(ids.filter(id => id.startsWith(`r${number}_`)))];
			expect(own).toEqual(versions.map(version => `r${number}_${version}`));
		}
	},
	patience,
);

test(
	'a folder holds whole records at every death, and in the end the newest of each',
	async () => {
		const folder = mkdtempSync(join(quickFolder(), 'records-'));
		onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
		const world = await mortalWorld(built, {FORWARD_FOLDER: folder});
		const records = 150;
		await queueAbout(world.db, records);
		const files = () => readdirSync(folder).filter(name => name.endsWith('.json'));
		const read = () =>
			files().map(name => messageSchema.parse(JSON.parse(readFileSync(join(folder, name), 'utf8'))));
		for (const enough of [20, 70, 120]) {
			const running = await world.start();
			await expect.poll(() => files().length, {timeout: 90_000, interval: 5}).toBeGreaterThan(enough);
			await running.end('SIGKILL');
			const sent = await world.db.selectFrom('forward').select('id').where('state', '=', 'sent').execute();
			expect(sent.length).toBeLessThan(3 * records);
			// Whatever is marked is there, and whatever is there is whole.
			expect(read().length).toBeGreaterThanOrEqual(Math.min(sent.length, records));
			await letGo(world.db);
		}
		await world.start();
		await allSent(world.db);
		const last = read();
		expect(last).toHaveLength(records);
		expect(last.every(({type, data}) => type === 'record.withdrawn' && data.version === 3)).toBe(true);
		expect(readdirSync(folder)).toHaveLength(records);
	},
	patience,
);
