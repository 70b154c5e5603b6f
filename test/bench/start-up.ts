/** How long a keeper waits until the program listens. */
import {spawn} from 'node:child_process';
import {join} from 'node:path';
import {projectRoot} from '../../src/settings.ts';
import {inMs, median} from './table.ts';

const starts = 5;

/** Rows of the table: the program started on the database in `folder`, with a room of its own. */
export async function measureStart(folder: string): Promise<readonly (readonly string[])[]> {
	const times: number[] = [];
	for (let start = 0; start < starts; start += 1) times.push(await startOnce(folder));
	return [
		[`median of ${starts}`, inMs(median(times))],
		['slowest', inMs(Math.max(...times))],
	];
}

function startOnce(folder: string): Promise<number> {
	const began = performance.now();
	const program = spawn(process.execPath, [join(projectRoot(), 'dist', 'src', 'main.js')], {
		env: {DATA_DIR: folder, ROOM_PORT: '0', LOG_LEVEL: 'error'},
		stdio: ['ignore', 'pipe', 'inherit'],
	});
	return new Promise((resolve, reject) => {
		let readyMs: number | undefined;
		program.stdout.setEncoding('utf8').on('data', (text: string) => {
			if (readyMs !== undefined || !text.includes('ready')) return;
			readyMs = performance.now() - began;
			program.kill('SIGTERM');
		});
		program.once('error', reject);
		program.once('exit', code => {
			if (code === 0 && readyMs !== undefined) resolve(readyMs);
			else reject(new Error(`Expected the program to get ready and stop with 0; it left with ${code}`));
		});
	});
}
