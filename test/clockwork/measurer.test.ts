import {expect, test, vi} from 'vitest';
import {measureInThread} from '../../src/clockwork/measurer.ts';

vi.setConfig({testTimeout: 60_000});

/** A thread's script written into its own address, so that no file is left behind. */
function scriptOf(code: string): URL {
	return new URL(`data:text/javascript,${encodeURIComponent(code)}`);
}

test('a file that is no photo is declined by the thread as it is without one', async () => {
	expect(await measureInThread(Buffer.from('not a photo'))).toEqual({kind: 'declined', why: 'no-photo'});
});

test.each([
	['dies', "throw new Error('dead')", 'dead'],
	['leaves without a word', 'process.exit(3)', 'left with 3'],
	[
		'answers with something else',
		"import {parentPort} from 'node:worker_threads'; parentPort.postMessage(7)",
		'no outcome',
	],
])('a thread that %s fails its photo and nothing else', async (_, code, words) => {
	const outcome = await measureInThread(new Uint8Array(1), {script: scriptOf(code)});
	expect(outcome.kind === 'failed' && outcome.error).toContain(words);
});

test('a thread that hangs is ended when its time is up', async () => {
	const outcome = await measureInThread(new Uint8Array(1), {
		script: scriptOf('while (true);'),
		longestMs: 300,
	});
	expect(outcome).toEqual({kind: 'failed', error: 'the measuring took too long'});
});
