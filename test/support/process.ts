/** The compiled program as a process of its own, to be stopped and killed. */
import {execFile, spawn} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {setTimeout as sleep} from 'node:timers/promises';
import {promisify} from 'node:util';
import {onTestFinished} from 'vitest';
import {projectRoot} from '../../src/settings.ts';

/** Within the project, so that the program finds what it imports; not within `node_modules`, which copies may share. */
const cache = join(projectRoot(), 'dist', 'for-tests');
const built = join(cache, 'program');
const lock = join(cache, 'program.lock');
const longestStartMs = 90_000;

/** Compiles the program into a folder of the tests; two test files at once take turns. Gives the folder. */
export async function buildProgram(): Promise<string> {
	mkdirSync(built, {recursive: true});
	await takeLock();
	try {
		writeFileSync(join(built, 'tsconfig.json'), JSON.stringify(tsconfig));
		await promisify(execFile)(join(projectRoot(), 'node_modules', '.bin', 'tsc'), ['-p', built]);
		for (const file of ['package.json', join('src', 'text'), join('src', 'room', 'page')]) {
			cpSync(join(projectRoot(), file), join(built, file), {recursive: true});
		}
		const flows = join(built, 'flows');
		if (!existsSync(flows)) symlinkSync(join(projectRoot(), 'flows'), flows);
	} finally {
		rmSync(lock, {force: true});
	}
	return built;
}

const tsconfig = {
	extends: '../../../tsconfig.json',
	compilerOptions: {rootDir: '../../..', outDir: '.', tsBuildInfoFile: '.tsbuildinfo'},
	include: ['../../../src'],
};

/** A copy of the built program with flows of its own, to spoil; it goes with the test. */
export function copyProgram(from: string): string {
	const copy = join(cache, `copy-${process.pid}`);
	onTestFinished(() => rmSync(copy, {recursive: true, force: true}));
	cpSync(from, copy, {recursive: true, filter: path => !path.endsWith('flows')});
	cpSync(join(projectRoot(), 'flows'), join(copy, 'flows'), {recursive: true});
	return copy;
}

export type Running = {
	readonly stdout: () => string;
	readonly stderr: () => string;
	/** Resolves when the program says that it listens; rejects when it ends before. */
	readonly ready: Promise<void>;
	/** Sends a signal and waits for the end. */
	readonly end: (signal: 'SIGKILL' | 'SIGTERM' | 'SIGINT') => Promise<Ended>;
	readonly ended: Promise<Ended>;
};

export type Ended = {readonly code: number | null; readonly signal: string | null};

/** Starts the built program with these settings and no others; it is killed with the test. */
export function runProgram(folder: string, environment: Readonly<Record<string, string>>): Running {
	const {PATH = ''} = process.env;
	// A process of its own folder, so that a default DATA_DIR leaves nothing behind in the project.
	const child = spawn(process.execPath, [join(folder, 'src', 'main.js')], {
		cwd: tmpdir(),
		env: {PATH, ...environment},
	});
	let stdout = '';
	let stderr = '';
	child.stdout.on('data', data => {
		stdout += String(data);
	});
	child.stderr.on('data', data => {
		stderr += String(data);
	});
	const ended = new Promise<Ended>(resolve => {
		child.once('close', (code, signal) => resolve({code, signal}));
	});
	onTestFinished(async () => {
		child.kill('SIGKILL');
		await ended;
	});
	const ready = new Promise<void>((resolve, reject) => {
		const listening = () => stdout.includes('Stop it with Ctrl+C') && resolve();
		child.stdout.on('data', listening);
		const late = setTimeout(() => reject(new Error(`Not ready: ${stdout}${stderr}`)), longestStartMs);
		void ended.then(({code}) => {
			clearTimeout(late);
			reject(new Error(`Expected the program to listen; it ended with ${code}: ${stderr}`));
		});
	});
	// Who only waits for the end need not look at this.
	ready.catch(() => undefined);
	return {
		stdout: () => stdout,
		stderr: () => stderr,
		ready,
		ended,
		end: signal => {
			child.kill(signal);
			return ended;
		},
	};
}

async function takeLock(): Promise<void> {
	for (;;) {
		try {
			writeFileSync(lock, String(process.pid), {flag: 'wx'});
			return;
		} catch {
			if (!isAlive(lockHolder())) rmSync(lock, {force: true});
			await sleep(100);
		}
	}
}

function lockHolder(): number {
	try {
		return Number(readFileSync(lock, 'utf8'));
	} catch {
		return 0;
	}
}

function isAlive(pid: number): boolean {
	try {
		return pid > 0 && process.kill(pid, 0);
	} catch {
		return false;
	}
}
