import {expect, test} from 'vitest';
import {goingOn, talked} from '../support/walk.ts';
import {after, asked, flow, hourMs, kinds, secondMs, upToTheBowl, upToTheResult, zone} from './turns.ts';

test('going into the bowl asks to be reminded, at the hour and in the zone of the person', () => {
	const place = talked(flow, ...upToTheBowl);
	const soaking = after(place, {kind: 'press', turn: place.turn.turn, option: 'two-hours'});
	const dueAt = place.now + 60 * secondMs + 2 * hourMs;
	expect(soaking.effects[0]).toEqual({kind: 'remind', dueAt, zone});
	expect(asked(soaking.effects).times).toEqual({due: dueAt, since: dueAt - 2 * hourMs});
});

test('a waking asks how soft the case is, and is heard only while it soaks', () => {
	const soaking = talked(flow, ...upToTheBowl, 'two-hours');
	const woken = after(soaking, {kind: 'woke'}, 2 * hourMs);
	expect(kinds(woken.effects)).toEqual(['forget-reminder', 'ask']);
	expect(asked(woken.effects).question).toBe('softness');
	for (const place of [
		{...soaking, turn: woken},
		talked(flow, 'yes'),
		talked(flow, ...upToTheResult, 'keep'),
	]) {
		const again = after(place, {kind: 'woke'});
		expect(again.effects).toEqual([]);
		expect(again.trail).toBe(place.turn.trail);
	}
});

test('a case soft before its time needs no reminder, and Back puts it into the bowl again', () => {
	const soaking = talked(flow, ...upToTheBowl, 'two-hours');
	const soft = after(soaking, {kind: 'press', turn: soaking.turn.turn, option: 'go-on'});
	expect(kinds(soft.effects)).toEqual(['forget-reminder', 'close', 'ask']);
	const back = after({...soaking, turn: soft}, {kind: 'press', turn: soft.turn, option: 'back'});
	expect(back.trail).toEqual(soaking.turn.trail);
	expect(back.effects[0]).toEqual({kind: 'remind', dueAt: soaking.turn.standing.facts.bowl?.dueAt, zone});
	expect(asked(back.effects).question).toBe('soaking');
});

test('Back out of the bowl forgets the reminder', () => {
	const soaking = talked(flow, ...upToTheBowl, 'two-hours');
	const back = after(soaking, {kind: 'press', turn: soaking.turn.turn, option: 'back'});
	expect(kinds(back.effects)).toEqual(['forget-reminder', 'close', 'ask']);
	expect(asked(back.effects).question).toBe('soak');
});

test('Back after a waking asks again how long the case shall soak', () => {
	const woken = talked(flow, ...upToTheBowl, 'two-hours', {kind: 'woke'});
	const back = after(woken, {kind: 'press', turn: woken.turn.turn, option: 'back'});
	expect(asked(back.effects).question).toBe('soak');
	expect(back.trail.at(-1)?.question).toBe('condition');
});

test('one more hour moves the reminder and keeps the beginning of the soak', () => {
	const soaking = talked(flow, ...upToTheBowl, 'two-hours');
	const softness = goingOn(flow, soaking, {kind: 'woke'});
	const stiff = after(softness, {kind: 'press', turn: softness.turn.turn, option: 'stiff'});
	const dueAt = softness.now + 60 * secondMs + hourMs;
	expect(stiff.effects[0]).toEqual({kind: 'remind', dueAt, zone});
	expect(stiff.standing.facts.bowl?.startedAt).toBe(soaking.turn.standing.facts.bowl?.startedAt);
});

test('the press of another or fresh begins a find and leaves this one', () => {
	// /bowl also offers another where its question does not.
	const softness = talked(flow, ...upToTheBowl, 'two-hours', {kind: 'woke'});
	for (const place of [talked(flow, ...upToTheResult, 'keep'), softness]) {
		for (const how of ['another', 'fresh'] as const) {
			const next = after(place, {kind: 'press', turn: place.turn.turn, option: how});
			expect(next.effects).toEqual([{kind: 'begin', how}]);
			expect(next.trail).toBe(place.turn.trail);
		}
	}
});
