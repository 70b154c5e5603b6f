/** /forwarding: what became of the records that are passed on, and another round for those given up. */
import {
	deadForwards,
	forwardCounts,
	latestTrouble,
	reviveForwards,
	type StuckForward,
} from '../../store/forwards.ts';
import type {Say} from '../../text/text.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';

/** So many fit a phone. */
const mostListed = 6;

/** Shows how many wait, were heard and were given up, and why. */
export async function showForwarding({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	if (!desk.house.isForwarding) return sayHere(desk, say.say('forwarding-off'));
	const counts = await forwardCounts(desk.tx);
	const trouble = await latestTrouble(desk.tx);
	const dead = await deadForwards(desk.tx, mostListed);
	const lines = [
		say.say('forwarding', counts),
		...(trouble ? [say.say('forwarding-trouble', {error: errorIn(trouble, say)})] : []),
		...(dead.length > 0 ? [say.say('forwarding-dead', {count: counts.dead})] : []),
		...dead.map(one => `• ${say.say('forwarding-line', valuesOf(one, say))}`),
	];
	const retries = dead.map(one => [
		{
			text: say.say('forwarding-retry', {number: String(one.id)}),
			data: menuButton('forwarding', String(one.id)),
		},
	]);
	const all = {text: say.say('forwarding-retry-all'), data: menuButton('forwarding', 'all')};
	return sayHere(desk, lines.join('\n'), dead.length > 0 ? [[all], ...retries] : []);
}

/** Gives one message or all that were given up another round. */
export async function retryForwarding(desk: Desk, [which]: readonly string[]): Promise<void> {
	const {say} = readerAt(desk);
	const id = which === 'all' ? undefined : Number(which);
	const count = await reviveForwards(desk.tx, {id, now: desk.now});
	return sayHere(desk, say.say('forwarding-revived', {count}));
}

function valuesOf(stuck: StuckForward, say: Say) {
	return {
		number: String(stuck.id),
		record: stuck.record.slice(0, 8),
		version: String(stuck.version),
		tries: stuck.attempts,
		error: errorIn(stuck, say),
	};
}

function errorIn({lastError}: StuckForward, say: Say): string {
	return lastError ?? say.say('forwarding-no-error');
}
