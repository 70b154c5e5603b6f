import {expect, test, vi} from 'vitest';
import {hookedJourney} from '../support/hook.ts';
import {newestFind} from '../support/journey.ts';
import {begin, newestDraft, walkTo} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

test('a whole find is told by webhook, with nothing asked for by polling', async () => {
	const journey = await hookedJourney();
	const {room, db, ada} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	expect((await newestDraft(db, ada)).body.said).toEqual(['raja-clavata']);
	const methods = room.calls().map(({method}) => method);
	expect(methods).toContain('setWebhook');
	expect(methods).not.toContain('getUpdates');
	journey.check();
});

test('a call with the wrong secret, or with none, is refused and nothing of it is handled', async () => {
	const {hand, db, ada, room, settle, check} = await hookedJourney();
	const chat = {id: ada.id, type: 'private', first_name: 'Ada'};
	const from = {id: ada.id, is_bot: false, first_name: 'Ada'};
	const entities = [{type: 'bot_command', offset: 0, length: 6}];
	const message = {message_id: 1, date: 1, chat, from, text: '/start', entities};
	for (const given of ['another', '', 'se-cret_']) {
		expect(await hand({update_id: 1, message}, given)).toBe(401);
	}
	await settle();
	expect(await db.selectFrom('inbox').selectAll().execute()).toEqual([]);
	expect(await db.selectFrom('person').select('id').execute()).toEqual([]);
	expect(room.messages(ada.id)).toEqual([]);
	expect(await hand({update_id: 1, message})).toBe(200);
	check();
});

test('the keeper can ask whether the program is well, and nothing else is answered', async () => {
	const {root} = await hookedJourney();
	const status = async (path: string, init: RequestInit = {}) => (await fetch(`${root}${path}`, init)).status;
	const health = await fetch(`${root}/health`);
	expect([health.status, await health.text()]).toEqual([200, 'ok']);
	expect(await status('/')).toBe(404);
	expect(await status('/hook')).toBe(404);
	expect(await status('/other', {method: 'POST', body: '{}'})).toBe(404);
	expect(await status('/health', {method: 'POST', body: '{}'})).toBe(404);
});

test('an update that is no JSON is refused, and the next one is handled', async () => {
	const {root, db, ada, check} = await hookedJourney();
	const headers = {'content-type': 'application/json', 'x-telegram-bot-api-secret-token': 'se-cret_1'};
	const broken = await fetch(`${root}/hook`, {method: 'POST', headers, body: '{"update_id": 1,'});
	expect(broken.status).toBeGreaterThanOrEqual(400);
	await begin(ada);
	expect((await newestFind(db, ada.id)).standing.at.id).toBe('egg-case');
	check();
});

test('an update that makes us fail is answered with success, so that it does not come again and again', async () => {
	const {db, ada, errors, room, settle} = await hookedJourney();
	await begin(ada);
	await db.updateTable('find').set({trail: 'broken'}).execute();
	await ada.presses('Yes, like that');
	await settle();
	expect(room.pendingUpdates()).toBe(0);
	expect(errors).toHaveLength(1);
	expect(ada.sees.text).toContain('Something went wrong on my side');
});

test('after a restart the platform goes on calling, and nothing that waited is lost', async () => {
	const {db, ada, restart, check} = await hookedJourney();
	await begin(ada);
	await restart();
	await ada.presses('Yes, like that');
	expect((await newestFind(db, ada.id)).standing.at.id).toBe('alive');
	check();
});
