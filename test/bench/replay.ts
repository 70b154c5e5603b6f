/** What it costs that a trail is replayed at every turn instead of a snapshot being kept. */

import type {FindEvent} from '../../src/find/events.ts';
import type {Flow} from '../../src/find/flow.ts';
import {beginAround, stepAround} from '../../src/find/machine.ts';
import {standAt} from '../../src/find/stand.ts';
import type {Trail} from '../../src/find/trail.ts';
import {takeTurn} from '../../src/find/turn.ts';

const rounds = 2000;
const startedAt = Date.UTC(2026, 4, 2, 9, 30);
const zone = 'Europe/London';

const beginning: readonly (string | FindEvent)[] = [
	'yes',
	'empty',
	{kind: 'photo', photo: 1},
	{kind: 'photo', photo: 2},
	'go-on',
	{kind: 'pin', latitude: 50.1029, longitude: -5.5432},
	'today',
	'2',
	'go-on',
	'dry',
	'two-hours',
	{kind: 'woke'},
];
const oneHourMore: readonly (string | FindEvent)[] = ['stiff', {kind: 'woke'}];
const ending: readonly (string | FindEvent)[] = [
	'softer',
	'both',
	{kind: 'text', text: '66 mm'},
	'broad',
	'lines',
	'blade',
];

/** A trail of `length` events as a conversation leaves it; a long one soaked for many hours. */
export function trailOf(flow: Flow, length: number): Trail {
	const hours = Math.max(0, Math.ceil((length - beginning.length - ending.length) / oneHourMore.length));
	const events = [...beginning, ...Array.from({length: hours}, () => oneHourMore).flat(), ...ending];
	let find: {trail: Trail; turn: number} = {trail: [], turn: 1};
	let now = startedAt;
	for (const event of events) {
		if (find.trail.length === length) break;
		now += 60_000;
		const did = typeof event === 'string' ? {kind: 'press' as const, turn: find.turn, option: event} : event;
		const {trail, turn} = takeTurn(flow, find, {event: did, moment: {now, zone}});
		if (trail.length !== find.trail.length + 1)
			throw new Error(`Expected ${JSON.stringify(event)} to be an answer; the trail stays`);
		find = {trail, turn};
	}
	if (find.trail.length !== length)
		throw new Error(`Expected a trail of ${length} events; got ${find.trail.length}`);
	return find.trail;
}

/** Rows of the table: trails of 10, 20 and 40 events beside one transition of the machine. */
export function measureReplay(flow: Flow): readonly (readonly string[])[] {
	const begun = beginAround(flow.machine);
	const first = {question: 'egg-case', answer: {kind: 'option' as const, option: 'yes'}, at: startedAt};
	const oneUs = timedUs(() => stepAround(flow.machine, begun, first));
	const replays = [10, 20, 40].map(length => {
		const trail = trailOf(flow, length);
		return {length, us: timedUs(() => standAt(flow, trail))};
	});
	return [
		['one transition', `${oneUs.toFixed(0)} µs`, ''],
		...replays.map(({length, us}) => [
			`${length} events`,
			`${us.toFixed(0)} µs`,
			`${(us / oneUs).toFixed(0)} transitions`,
		]),
	];
}

function timedUs(work: () => unknown): number {
	for (let round = 0; round < rounds / 10; round += 1) work();
	const began = process.hrtime.bigint();
	for (let round = 0; round < rounds; round += 1) work();
	return Number(process.hrtime.bigint() - began) / 1000 / rounds;
}
