/** Telling many, measured on a host that enforces the published limits (`strict-host.ts` names their source). */
import {expect, test} from 'vitest';
import {crowdOf} from '../clockwork/crowd.ts';

/** Chance that comes out alike every time. */
function madeUpChance(): () => number {
	let seed = 42;
	return () => {
		seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
		return seed / 2 ** 31;
	};
}

test('nothing is refused for coming too fast, and at least 95 in 100 of the allowed messages go', async () => {
	const chance = madeUpChance();
	const crowd = await crowdOf({people: 600, wayMs: () => Math.floor(chance() * 9)});
	await crowd.tell('announced');
	await crowd.run();
	const {host} = crowd;
	expect(host.refusals()).toEqual([]);
	expect(host.taken()).toHaveLength(600);
	const times = host.taken().map(({at}) => at);
	const first = times[0] ?? 0;
	// After the first second, in which the windows are still empty.
	const later = times.filter(at => at >= first + 1000);
	const perSecond = later.length / ((Math.max(...later) - first - 1000) / 1000);
	expect(perSecond).toBeGreaterThanOrEqual(0.95 * 30);
	expect(perSecond).toBeLessThanOrEqual(30);
}, 60_000);

test('two broadcasts at once keep a second between two messages to one person', async () => {
	const crowd = await crowdOf({people: 40, wayMs: () => 2});
	await crowd.tell('announced');
	await crowd.tell('announced');
	await crowd.run();
	expect(crowd.host.refusals()).toEqual([]);
	expect(crowd.host.taken()).toHaveLength(80);
}, 60_000);

test('a group is told at most twenty times a minute', async () => {
	const crowd = await crowdOf({people: 1, groups: 1, wayMs: () => 2});
	for (let index = 0; index < 25; index += 1) await crowd.tell('announced');
	await crowd.run();
	expect(crowd.host.refusals()).toEqual([]);
	expect(crowd.host.taken()).toHaveLength(50);
}, 60_000);

test('a host that refuses at random makes nobody told twice and nobody missed', async () => {
	const chance = madeUpChance();
	let refused = 0;
	const crowd = await crowdOf({
		people: 250,
		wayMs: () => 3,
		trouble: () => {
			if (chance() > 0.2) return undefined;
			refused += 1;
			return {kind: 'limit', retryAfterS: 1 + Math.floor(chance() * 4)};
		},
	});
	const broadcast = await crowd.tell('announced');
	await crowd.run();
	expect(refused).toBeGreaterThan(30);
	expect(new Set(crowd.host.taken().map(({chat}) => chat)).size).toBe(250);
	expect(crowd.host.taken()).toHaveLength(250);
	expect(await crowd.ledger(broadcast)).toMatchObject({sent: 250, waiting: 0, unknown: 0, failed: 0});
}, 60_000);

test('after a refusal nothing is sent to that chat before its time, and to nobody while two are refused', async () => {
	const until = new Map<number, number>();
	const early: number[] = [];
	const chance = madeUpChance();
	const crowd = await crowdOf({
		people: 120,
		wayMs: () => 3,
		trouble: chat => {
			const now = crowd.time.now;
			const open = [...until].filter(([, at]) => at > now);
			if (open.some(([one]) => one === chat)) early.push(chat);
			// Three may have been under way when the second was refused.
			if (open.length > 4) early.push(chat);
			if (chance() > 0.1) return undefined;
			until.set(chat, now + 3000);
			return {kind: 'limit', retryAfterS: 3};
		},
	});
	await crowd.tell('announced');
	await crowd.run();
	expect(until.size).toBeGreaterThan(5);
	expect(early).toEqual([]);
	expect(crowd.host.taken()).toHaveLength(120);
}, 60_000);
