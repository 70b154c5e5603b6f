/** Each verb once as a process of its own, on files built for this test. */
import {spawnSync} from 'node:child_process';
import {mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, beforeAll, expect, test} from 'vitest';

const root = join(import.meta.dirname, '../..');
let built = '';

beforeAll(() => {
	// Inside the project, so that packages are found from there; only `src`, which is quick.
	mkdirSync(join(root, 'dist'), {recursive: true});
	built = mkdtempSync(join(root, 'dist', 'cli-test-'));
	const compilerOptions = {rootDir: '../..', outDir: '.', tsBuildInfoFile: './.tsbuildinfo'};
	const config = {
		extends: '../../tsconfig.json',
		compilerOptions,
		include: ['../../src/cli', '../../src/**/*.d.ts'],
	};
	writeFileSync(join(built, 'tsconfig.json'), JSON.stringify(config));
	const {stdout, status} = spawnSync(
		process.execPath,
		[join(root, 'node_modules/typescript/bin/tsc'), '-p', built],
		{
			encoding: 'utf8',
		},
	);
	if (status !== 0) throw new Error(`Expected the commands to build; got ${stdout}`);
}, 60_000);

afterAll(() => rmSync(built, {recursive: true, force: true}));

/** Calls the built command from another folder, as anyone may. */
function call(args: readonly string[], {cwd = tmpdir(), input = ''} = {}) {
	const key = join(built, 'src/cli/key.js');
	return spawnSync(process.execPath, [key, ...args], {cwd, input, encoding: 'utf8'});
}

test('check runs from any folder and leaves with 0', () => {
	const {stdout, stderr, status} = call(['check']);
	expect(stderr).toBe('');
	expect(stdout).toMatch(/^british-isles: \d+ taxa, \d+ questions, nothing wrong$/m);
	expect(status).toBe(0);
});

test('draw writes its two files into the folder it is called in', () => {
	const cwd = mkdtempSync(join(tmpdir(), 'draw-'));
	const {stdout, status} = call(['draw', 'british-isles'], {cwd});
	expect(stdout).toBe('british-isles.svg\nbritish-isles.mmd\n');
	expect(readdirSync(cwd).sort()).toEqual(['british-isles.mmd', 'british-isles.svg']);
	expect(status).toBe(0);
});

test('vocabulary with --json leaves JSON alone on standard output', () => {
	const {stdout, stderr, status} = call(['vocabulary', 'british-isles', '--json']);
	expect(JSON.parse(stdout)).toMatchObject({region: 'british-isles'});
	expect(stderr).toBe('');
	expect(status).toBe(0);
});

test('name reads standard input to its end and leaves with 1 when a line was refused', () => {
	const {stdout, status} = call(['name', 'british-isles', '--json'], {input: '{"length": 66}\r\nnonsense\n'});
	const lines = stdout
		.trimEnd()
		.split('\n')
		.map(line => JSON.parse(line));
	expect(lines).toMatchObject([{asked: expect.arrayContaining(['outline'])}, {line: 2}]);
	expect(status).toBe(1);
});

test('a mistake in calling is one line on standard error', () => {
	const {stdout, stderr, status} = call(['paint']);
	expect(stdout).toBe('');
	expect(stderr).toBe('Expected one of check, draw, vocabulary, name, prove; got "paint"\n');
	expect(status).toBe(2);
});
