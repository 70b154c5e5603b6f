import {expect, test} from 'vitest';
import {startRoom} from '../../src/room/server.ts';
import {png} from './picture.ts';
import {call, newFolder, stillClock} from './scene.ts';

test('a room that is closed and opened again is the same: people, messages, files, updates and time', async () => {
	const folder = newFolder();
	const clock = stillClock();
	const before = await startRoom({port: 0, folder, clock});
	const ada = before.person('Ada');
	ada.sends('/start');
	const {updateId} = ada.photo(png(30, 20));
	await call(before, 'setMyCommands', {commands: [{command: 'start', description: 'Begin'}]});
	before.forward(3_600_000);
	const messages = before.messages(ada.id);
	await before.stop();

	const freshClock = stillClock();
	const after = await startRoom({port: 0, folder, clock: freshClock});
	try {
		expect(freshClock.now()).toBe(clock.now());
		expect(after.person('Ada').id).toBe(ada.id);
		expect(after.messages(ada.id)).toEqual(messages);
		expect(after.fileBytes(messages[1]?.photo?.fileId ?? '')).toEqual(Buffer.from(png(30, 20)));
		const {result} = await call(after, 'getUpdates');
		expect(result).toMatchObject([{message: {text: '/start'}}, {update_id: updateId}]);
		expect((await call(after, 'getMyCommands')).result).toEqual([{command: 'start', description: 'Begin'}]);
		expect(after.person('Ada').sends('hello').updateId).toBe((updateId ?? 0) + 1);
	} finally {
		await after.stop();
	}
});

test('a port that is taken stops the start with a sentence', async () => {
	const first = await startRoom({port: 0, folder: newFolder(), clock: stillClock()});
	const port = Number(new URL(first.url).port);
	await expect(startRoom({port, folder: newFolder(), clock: stillClock()})).rejects.toThrow(`port ${port}`);
	await first.stop();
});
