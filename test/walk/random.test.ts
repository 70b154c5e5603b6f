/** People do anything at any time: seeded random walks through every region. */
import {join} from 'node:path';
import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {isCorrectable} from '../../src/find/correct.ts';
import type {FindEvent} from '../../src/find/events.ts';
import {noteQuestion} from '../../src/find/stand.ts';
import {readShelves} from '../../src/program.ts';
import {screenFaults} from '../support/screens.ts';
import {answersAt, beginning, type Place, step, storedStanding, type Try} from '../support/walk.ts';

const shelves = readShelves(join(import.meta.dirname, '../../flows'), 'british-isles');
const eventsInAWalk = 60;

/** What somebody does next: an answer chosen by lot, or one of a hundred other things. */
type Deed =
	| {readonly kind: 'answer'; readonly lot: number}
	| {readonly kind: 'event'; readonly event: FindEvent}
	| {readonly kind: 'press'; readonly turnsAgo: number; readonly option: string}
	| {readonly kind: 'stale'; readonly turnsAgo: number; readonly lot: number}
	| {readonly kind: 'mend'; readonly lot: number};

const lot = fc.nat({max: 999});
const event = (kind: 'resume' | 'woke' | 'begin') => fc.constant<Deed>({kind: 'event', event: {kind}});
const text = fc.oneof(
	fc.string({unit: 'grapheme', maxLength: 80}),
	fc.constantFrom(
		'62 mm',
		'6',
		'2 3/8 in',
		'0 mm',
		'-4',
		'yesterday',
		'31/2/2026',
		'2 May',
		'SW 465 304',
		'ZZ 1',
		'999',
		'50.1, -5.5',
		'',
	),
);
const option = fc.oneof(
	fc.constantFrom(
		'back',
		'why',
		'here',
		'another',
		'fresh',
		'correct',
		'go-on',
		'cant-tell',
		'fix-count',
		'constructor',
	),
	fc.stringMatching(/^[a-z0-9-]{1,24}$/),
);
const deed: fc.Arbitrary<Deed> = fc.oneof(
	{weight: 60, arbitrary: fc.record({kind: fc.constant('answer' as const), lot})},
	{
		weight: 6,
		arbitrary: fc.record({kind: fc.constant('stale' as const), turnsAgo: fc.integer({min: 1, max: 9}), lot}),
	},
	{weight: 10, arbitrary: fc.record({kind: fc.constant('press' as const), turnsAgo: fc.constant(0), option})},
	{weight: 6, arbitrary: fc.constant<Deed>({kind: 'press', turnsAgo: 0, option: 'back'})},
	{weight: 3, arbitrary: fc.constant<Deed>({kind: 'press', turnsAgo: 0, option: 'why'})},
	{weight: 8, arbitrary: text.map((said): Deed => ({kind: 'event', event: {kind: 'text', text: said}}))},
	{
		weight: 4,
		arbitrary: fc.nat({max: 99}).map((photo): Deed => ({kind: 'event', event: {kind: 'photo', photo}})),
	},
	{
		weight: 3,
		arbitrary: fc
			.tuple(fc.integer({min: -90, max: 90}), fc.integer({min: -180, max: 180}))
			.map(([latitude, longitude]): Deed => ({kind: 'event', event: {kind: 'pin', latitude, longitude}})),
	},
	{
		weight: 3,
		arbitrary: fc
			.record({
				photo: fc.nat({max: 99}),
				latitude: fc.integer({min: -90, max: 90}),
				date: fc.option(fc.constant('2026-05-01'), {nil: undefined}),
			})
			.map(
				({photo, latitude, date}): Deed => ({
					kind: 'event',
					event: {
						kind: 'photo-told',
						photo,
						told: {fix: {latitude, longitude: latitude}, ...(date ? {date} : {})},
					},
				}),
			),
	},
	{weight: 2, arbitrary: fc.constant<Deed>({kind: 'event', event: {kind: 'odd', what: 'sticker'}})},
	{weight: 2, arbitrary: event('woke')},
	{weight: 1, arbitrary: event('resume')},
	{weight: 3, arbitrary: fc.record({kind: fc.constant('mend' as const), lot})},
);

describe.each([...shelves])('%s', {timeout: 120_000}, (_, shelf) => {
	const {flow} = shelf;

	test('whatever people do, nothing breaks: turns never fall, trails replay, screens fit', () => {
		let ended = 0;
		fc.assert(
			fc.property(fc.array(deed, {minLength: eventsInAWalk, maxLength: eventsInAWalk}), deeds => {
				const walk = [beginning(flow)];
				for (const done of deeds) {
					const before = walk.at(-1);
					if (!before) throw new Error('Expected a place to go on from');
					const after = step(flow, before, attempt(walk, done));
					check(before, after);
					walk.push(after);
				}
				ended += walk.some(({ask}) => ask.kind === 'end') ? 1 : 0;
			}),
			{seed: 20_260_502, numRuns: 40},
		);
		// Else the walks would only stumble about at the beginning.
		expect(ended).toBeGreaterThan(4);
	});

	function check(before: Place, after: Place): void {
		expect(after.turn.turn).toBeGreaterThanOrEqual(before.turn.turn);
		if (after.turn.trail === before.turn.trail) expect(after.turn.turn).toBe(before.turn.turn);
		expect(storedStanding(flow, after.turn.trail)).toEqual(after.turn.standing);
		expect(screenFaults(shelf, after.turn, after.now)).toEqual([]);
	}

	function attempt(walk: readonly Place[], done: Deed): Try {
		const now = walk.at(-1) ?? beginning(flow);
		switch (done.kind) {
			case 'answer':
				return byLot(answersAt(flow, now), done.lot) ?? {name: 'resume', event: {kind: 'resume'}};
			case 'event':
				return {name: done.event.kind, event: done.event};
			case 'press':
				return press(now.turn.turn - done.turnsAgo, done.option);
			case 'stale': {
				const old = walk.at(-1 - done.turnsAgo) ?? now;
				return press(old.turn.turn, byLot(old.ask.options, done.lot)?.id ?? 'back');
			}
			case 'mend': {
				const open = now.turn.standing.answered.filter(id => isCorrectable(flow, now.turn.standing, id));
				return {
					name: 'mend',
					event: {kind: 'mend', question: byLot([...open, noteQuestion], done.lot) ?? noteQuestion},
				};
			}
		}
	}
});

function press(turn: number, pressed: string): Try {
	return {name: pressed, event: {kind: 'press', turn, option: pressed}};
}

function byLot<T>(list: readonly T[], drawn: number): T | undefined {
	return list[drawn % Math.max(1, list.length)];
}
