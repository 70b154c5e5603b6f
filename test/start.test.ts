import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {beforeAll, expect, onTestFinished, test} from 'vitest';
import {z} from 'zod';
import {startRoom} from '../src/room/server.ts';
import {projectRoot} from '../src/settings.ts';
import {watchImports} from './support/imports.ts';
import {buildProgram, copyProgram, runProgram} from './support/process.ts';

let built = '';

beforeAll(async () => {
	built = await buildProgram();
}, 180_000);

const patience = 120_000;

function newFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), 'start-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

test(
	'without a token the start prints the address of a chat room on this machine alone',
	async () => {
		const running = runProgram(built, {DATA_DIR: newFolder(), ROOM_PORT: '0'});
		await running.ready;
		const [, address] = /in a browser: (http:\/\/127\.0\.0\.1:\d+)\n/.exec(running.stdout()) ?? [];
		expect(address).toBeDefined();
		const page = await fetch(address ?? '');
		expect(page.status).toBe(200);
		expect(await page.text()).toContain('<main');
		expect(await running.end('SIGTERM')).toEqual({code: 0, signal: null});
	},
	patience,
);

test(
	'until somebody owns the program each start prints a code for it, and only the newest one works',
	async () => {
		const folder = newFolder();
		const clock = {now: Date.now, forward: () => undefined};
		const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
		onTestFinished(room.stop);
		const begin = async () => {
			const running = runProgram(built, {BOT_TOKEN: room.token, BOT_API_ROOT: room.url, DATA_DIR: folder});
			await running.ready;
			return running;
		};
		const codeOf = (stdout: string) => /To become its owner, .*: \/start ([\w-]{24})\n/.exec(stdout)?.[1];
		const first = await begin();
		const [old, link] = [codeOf(first.stdout()), `https://t.me/pursekey_bot?start=${codeOf(first.stdout())}`];
		expect(first.stdout()).toContain(link);
		await first.end('SIGTERM');
		const second = await begin();
		const code = codeOf(second.stdout());
		expect(code).toBeDefined();
		expect(code).not.toBe(old);
		const ada = room.person('Ada');
		for (const brought of [old, code]) ada.sends(`/start ${brought}`);
		const answers = () => room.messages(ada.id).filter(({from}) => from === 'bot');
		while (answers().length < 2) await room.nextChange();
		expect(answers()[0]?.text).toContain('This link does not work.');
		expect(answers()[1]?.text).toContain('You are the owner of this survey now.');
		await second.end('SIGTERM');
		const third = await begin();
		expect(third.stdout()).not.toContain('owner');
		expect(await third.end('SIGTERM')).toEqual({code: 0, signal: null});
	},
	patience,
);

test('npm start builds and then runs the very file that these tests run', () => {
	const file = readFileSync(join(projectRoot(), 'package.json'), 'utf8');
	const {scripts} = z.object({scripts: z.object({start: z.string()})}).parse(JSON.parse(file));
	expect(scripts.start).toMatch(/ && node dist\/src\/main\.js$/);
});

test.each(['SIGTERM', 'SIGINT'] as const)(
	'%s ends the program cleanly, and nothing is left half done',
	async signal => {
		const folder = newFolder();
		const clock = {now: Date.now, forward: () => undefined};
		const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
		onTestFinished(room.stop);
		const running = runProgram(built, {BOT_TOKEN: room.token, BOT_API_ROOT: room.url, DATA_DIR: folder});
		await running.ready;
		const ada = room.person('Ada');
		ada.sends('/start');
		await room.idle();
		expect(await running.end(signal)).toEqual({code: 0, signal: null});
		expect(room.messages(ada.id).filter(({from}) => from === 'bot')).toHaveLength(1);
	},
	patience,
);

test(
	'a platform that cannot be reached any more does not keep the program from ending cleanly',
	async () => {
		const folder = newFolder();
		const clock = {now: Date.now, forward: () => undefined};
		const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
		const running = runProgram(built, {BOT_TOKEN: room.token, BOT_API_ROOT: room.url, DATA_DIR: folder});
		await running.ready;
		await room.stop();
		expect(await running.end('SIGTERM')).toEqual({code: 0, signal: null});
	},
	patience,
);

test(
	'a second program that fetches updates with the same token makes the first end with code 1',
	async () => {
		const folder = newFolder();
		const clock = {now: Date.now, forward: () => undefined};
		const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
		onTestFinished(room.stop);
		const running = runProgram(built, {BOT_TOKEN: room.token, BOT_API_ROOT: room.url, DATA_DIR: folder});
		await running.ready;
		while (!room.calls().some(({method}) => method === 'getUpdates')) await room.nextChange();
		await fetch(`${room.url}/bot${room.token}/getUpdates`);
		expect(await running.ended).toEqual({code: 1, signal: null});
		expect(running.stderr()).toContain('only one bot instance');
	},
	patience,
);

test(
	'settings that do not fit end the start with code 2 and one line each',
	async () => {
		const running = runProgram(built, {
			DATA_DIR: newFolder(),
			BOT_TOKEN: 'not-a-token',
			TZ_NAME: 'Europe/Atlantis',
			ROOM_PORT: '70000',
		});
		expect(await running.ended).toEqual({code: 2, signal: null});
		expect(running.stdout()).toBe('');
		const lines = running.stderr().trimEnd().split('\n');
		expect(lines.map(line => line.split(':')[0])).toEqual(['BOT_TOKEN', 'TZ_NAME', 'ROOM_PORT']);
		expect(running.stderr()).not.toContain('not-a-token');
	},
	patience,
);

test(
	'a region that does not exist ends the start and names those that do',
	async () => {
		const running = runProgram(built, {DATA_DIR: newFolder(), REGION: 'atlantis'});
		expect(await running.ended).toEqual({code: 2, signal: null});
		expect(running.stderr()).toMatch(/^REGION: expected one of .*british-isles.*; got "atlantis"\n$/);
	},
	patience,
);

test(
	'a fault in a region folder ends the start with its file and line',
	async () => {
		const copy = copyProgram(built);
		const key = join(copy, 'flows', 'british-isles', 'key.yaml');
		const lines = readFileSync(key, 'utf8').split('\n');
		const at = lines.findIndex(line => /leads: [a-z-]+/.test(line));
		writeFileSync(
			key,
			lines
				.map((line, index) => (index === at ? line.replace(/leads: [a-z-]+/, 'leads: nowhere-at-all') : line))
				.join('\n'),
		);
		const running = runProgram(copy, {DATA_DIR: newFolder()});
		expect(await running.ended).toEqual({code: 2, signal: null});
		expect(running.stdout()).toBe('');
		expect(running.stderr()).toContain(`british-isles/key.yaml:${at + 1}: `);
		expect(running.stderr()).toContain('nowhere-at-all');
	},
	patience,
);

test.each([
	{check: 'off', how: 'as it is', asks: false, warns: false},
	{check: 'on', how: 'as it is', asks: true, warns: false},
	{check: 'on', how: 'missing', asks: true, warns: true},
] as const)(
	'with TIDE_CHECK $check and the package of tides $how, the program starts; asked for: $asks, told missing: $warns',
	async ({check, how, asks, warns}) => {
		const running = runProgram(built, {
			DATA_DIR: newFolder(),
			ROOM_PORT: '0',
			...(check === 'off' ? {} : {TIDE_CHECK: check}),
			...watchImports('neaps', how),
		});
		await running.ready;
		expect(await running.end('SIGTERM')).toEqual({code: 0, signal: null});
		expect(running.stderr().includes('asks for neaps')).toBe(asks);
		expect(running.stderr().includes('"what":"tide check off"')).toBe(warns);
	},
	patience,
);
