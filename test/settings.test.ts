import {existsSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {projectRoot, readSettings} from '../src/settings.ts';

const linesOf = (environment: Readonly<Record<string, string>>): readonly string[] => {
	try {
		readSettings(environment);
		return [];
	} catch (error) {
		return String(error)
			.replace(/^Error: /, '')
			.split('\n');
	}
};

test('without any setting the program runs in its own chat room, for the British Isles', () => {
	expect(readSettings({})).toEqual({
		botToken: undefined,
		botApiRoot: undefined,
		webhook: undefined,
		databaseFile: join('data', 'pursekey.db'),
		dataDir: './data',
		datasetFile: join('data', 'dataset.yaml'),
		region: 'british-isles',
		zone: 'Europe/London',
		roomPort: 8100,
		forward: undefined,
		verifiersChat: undefined,
		isCheckingTides: false,
		logLevel: 'info',
	});
});

test('every setting is read, and numbers are numbers', () => {
	const secret = `whsec_${Buffer.alloc(24, 1).toString('base64')}`;
	const settings = readSettings({
		BOT_TOKEN: '123456:ABC-def_1',
		BOT_API_ROOT: 'http://127.0.0.1:8081',
		PUBLIC_URL: 'https://example.org/hook',
		WEBHOOK_SECRET: 'se-cret_1',
		WEBHOOK_PORT: '8443',
		DATABASE_URL: 'file:/var/lib/pursekey/kept.db',
		DATA_DIR: '/var/lib/pursekey',
		DATASET_FILE: '/etc/pursekey/dataset.yaml',
		REGION: 'testland',
		TZ_NAME: 'Europe/Paris',
		ROOM_PORT: '0',
		FORWARD_URL: 'https://example.org/records',
		FORWARD_SECRET: secret,
		VERIFIERS_CHAT: '-1001000000002',
		TIDE_CHECK: 'on',
		LOG_LEVEL: 'warn',
	});
	expect(settings).toEqual({
		botToken: '123456:ABC-def_1',
		botApiRoot: 'http://127.0.0.1:8081',
		webhook: {url: 'https://example.org/hook', secret: 'se-cret_1', port: 8443},
		databaseFile: '/var/lib/pursekey/kept.db',
		dataDir: '/var/lib/pursekey',
		datasetFile: '/etc/pursekey/dataset.yaml',
		region: 'testland',
		zone: 'Europe/Paris',
		roomPort: 0,
		forward: {kind: 'address', url: 'https://example.org/records', secret},
		verifiersChat: -1001000000002,
		isCheckingTides: true,
		logLevel: 'warn',
	});
});

test('an empty value is as good as none, and settings of other programs are left alone', () => {
	expect(readSettings({BOT_TOKEN: '', REGION: '', PATH: '/bin', HOME: '/root'})).toEqual(readSettings({}));
});

test.each([
	{name: 'BOT_TOKEN', value: 'secret without a colon'},
	{name: 'BOT_API_ROOT', value: 'not an address'},
	{name: 'DATABASE_URL', value: 'postgres://host/pursekey'},
	{name: 'REGION', value: '../elsewhere'},
	{name: 'TZ_NAME', value: 'Europe/Atlantis'},
	{name: 'ROOM_PORT', value: '70000'},
	{name: 'ROOM_PORT', value: 'eighty'},
	{name: 'WEBHOOK_PORT', value: '-1'},
	{name: 'FORWARD_FOLDER', value: 'records'},
	{name: 'VERIFIERS_CHAT', value: 'the table'},
	{name: 'TIDE_CHECK', value: 'yes'},
	{name: 'LOG_LEVEL', value: 'loud'},
])('$name may not be $value: one line says what is expected', ({name, value}) => {
	const lines = linesOf({[name]: value});
	expect(lines).toHaveLength(1);
	expect(lines[0]).toMatch(new RegExp(`^${name}: .{10}`));
});

test('a secret that does not fit is never repeated in the message', () => {
	const lines = linesOf({
		PUBLIC_URL: 'https://example.org/hook',
		BOT_TOKEN: 'hush-token',
		WEBHOOK_SECRET: 'hush hook',
		FORWARD_SECRET: 'hush-forward',
	});
	expect(lines.map(line => line.split(':')[0])).toEqual(['BOT_TOKEN', 'WEBHOOK_SECRET', 'FORWARD_SECRET']);
	expect(lines.join('\n')).not.toContain('hush');
	expect(linesOf({REGION: 'No Such'})[0]).toContain('got "No Such"');
});

test('settings that need each other are asked for together', () => {
	expect(linesOf({PUBLIC_URL: 'https://example.org/hook'})[0]).toMatch(/^PUBLIC_URL: .*WEBHOOK_SECRET/);
	expect(linesOf({WEBHOOK_SECRET: 'abc'})[0]).toMatch(/^PUBLIC_URL: .*together/);
	expect(linesOf({FORWARD_URL: 'https://example.org/records'})[0]).toMatch(/^FORWARD_SECRET: /);
});

test('records go to an address or to a folder, never to both', () => {
	expect(readSettings({FORWARD_FOLDER: '/srv/records'}).forward).toEqual({
		kind: 'folder',
		folder: '/srv/records',
	});
	const secret = `whsec_${Buffer.alloc(24, 1).toString('base64')}`;
	const both = {
		FORWARD_URL: 'https://example.org/records',
		FORWARD_SECRET: secret,
		FORWARD_FOLDER: '/srv/records',
	};
	expect(linesOf(both)).toEqual([expect.stringMatching(/^FORWARD_FOLDER: .*not both/)]);
});

test('several faults are told at once, a line each', () => {
	expect(linesOf({TZ_NAME: 'x', LOG_LEVEL: 'y', REGION: 'Z'})).toHaveLength(3);
});

test('the root of the project is where package.json lies', () => {
	expect(existsSync(join(projectRoot(), 'package.json'))).toBe(true);
});
