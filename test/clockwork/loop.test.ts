import {setTimeout as sleep} from 'node:timers/promises';
import {expect, onTestFinished, test, vi} from 'vitest';
import {type LoopWork, startLoop} from '../../src/clockwork/loop.ts';

/** A pause that no test waits for. */
const longMs = 3_600_000;

function loopOf(work: LoopWork['work'], more: Partial<LoopWork> = {}) {
	const lines: unknown[] = [];
	const loop = startLoop({
		name: 'made up',
		work,
		pauseMs: longMs,
		log: line => void lines.push(line),
		...more,
	});
	onTestFinished(loop.stop);
	return {...loop, lines};
}

test('work is done while there is more of it, then only when woken', async () => {
	let left = 3;
	const work = vi.fn(async () => --left > 0);
	const loop = loopOf(work);
	await vi.waitFor(() => expect(work).toHaveBeenCalledTimes(3));
	await sleep(30);
	expect(work).toHaveBeenCalledTimes(3);
	loop.wake();
	await vi.waitFor(() => expect(work).toHaveBeenCalledTimes(4));
});

test('after its pause a loop looks again by itself', async () => {
	const work = vi.fn(async () => false);
	loopOf(work, {pauseMs: 5});
	await vi.waitFor(() => expect(work.mock.calls.length).toBeGreaterThan(2));
});

test('a wake-up in the midst of work is not lost', async () => {
	let finish: (() => void) | undefined;
	const work = vi.fn(
		() =>
			new Promise<boolean>(resolve => {
				finish = () => resolve(false);
			}),
	);
	const loop = loopOf(work);
	await vi.waitFor(() => expect(work).toHaveBeenCalledTimes(1));
	loop.wake();
	finish?.();
	await vi.waitFor(() => expect(work).toHaveBeenCalledTimes(2));
	finish?.();
});

test('one piece of work is done at a time, and stopping waits for it', async () => {
	let running = 0;
	let most = 0;
	const work = vi.fn(async () => {
		running += 1;
		most = Math.max(most, running);
		await sleep(20);
		running -= 1;
		return true;
	});
	const loop = loopOf(work);
	for (let times = 0; times < 5; times++) loop.wake();
	await vi.waitFor(() => expect(work.mock.calls.length).toBeGreaterThan(1));
	await loop.stop();
	expect(most).toBe(1);
	expect(running).toBe(0);
	const done = work.mock.calls.length;
	loop.wake();
	await sleep(30);
	expect(work).toHaveBeenCalledTimes(done);
});

test('an error is told to the keeper and does not end the loop', async () => {
	const work = vi.fn(async () => {
		if (work.mock.calls.length === 1) throw new Error('disk full');
		return false;
	});
	const loop = loopOf(work);
	await vi.waitFor(() => expect(loop.lines).toHaveLength(1));
	expect(loop.lines).toEqual([
		{level: 'error', what: 'clockwork', loop: 'made up', error: 'Error: disk full'},
	]);
	loop.wake();
	await vi.waitFor(() => expect(work).toHaveBeenCalledTimes(2));
});
