import {expect, test} from 'vitest';
import {countedAsOne, misfitOf, takenOut, trailAlike, trailOfNext} from '../../src/find/alike.ts';
import {standAt} from '../../src/find/stand.ts';
import type {Trail} from '../../src/find/trail.ts';
import {takeTurn} from '../../src/find/turn.ts';
import {talked} from '../support/walk.ts';
import {photoOf, toTheLength} from './trays.ts';
import {flow, upToTheBowl, upToTheResult, zone} from './turns.ts';

const now = 1_800_000_000_000;
const photo = {kind: 'photo' as const, photo: 5};
const [yes = '', empty = '', ...further] = upToTheResult;
const saved = talked(flow, yes, empty, photo, ...further, 'keep').turn.trail;

const at = (trail: Trail) => standAt(flow, trail).at.id;
const said = (trail: Trail, text: string) =>
	takeTurn(flow, {trail, turn: 1}, {event: {kind: 'text', text}, moment: {now, zone}});

test('a case like another takes over what was looked at, and is asked for its own length alone', () => {
	const trail = trailAlike(flow, {model: saved, find: 7, now});
	expect(at(trail)).toBe('length');
	const {facts} = standAt(flow, trail);
	expect(facts).toMatchObject({alike: 7, count: 1, photos: [], date: '2026-05-02', soak: 'soaked'});
	expect([facts.length, facts.width, facts.note]).toEqual([undefined, undefined, undefined]);
	// The width was measured at the other case, so it is measured at this one, too.
	const measured = said(trail, '66 mm');
	expect(measured.standing.at.id).toBe('width');
	const done = said(measured.trail, '51 mm');
	expect(done.standing.at.id).toBe('result');
	expect(done.standing.facts).toMatchObject({length: {mm: 66}, width: {mm: 51}});
});

/** A case like the saved one but of this length; what its length makes the key ask anew cannot be told. */
function likeAt(length: string) {
	let turn = said(trailAlike(flow, {model: saved, find: 7, now}), length);
	while (!turn.standing.found) {
		const moment = {now, zone};
		turn =
			turn.standing.at.id === 'width'
				? said(turn.trail, '50 mm')
				: takeTurn(flow, turn, {event: {kind: 'press', turn: turn.turn, option: 'cant-tell'}, moment});
	}
	return turn.standing;
}

test('a length that fails the name of the other case is told with its range, and the name is worked out anew', () => {
	const name = standAt(flow, saved).found?.conclusion.names[0]?.taxon ?? '';
	const [low, high] = flow.region.profiles.taxa[name]?.lengthMm?.range ?? [0, 0];
	expect(misfitOf(flow.region, likeAt('66 mm'), name)).toBeUndefined();
	for (const length of [`${Math.round(low) - 9} mm`, `${Math.round(high) + 9} mm`]) {
		const misfit = {kind: 'length', lowMm: Math.round(low), highMm: Math.round(high)};
		expect(misfitOf(flow.region, likeAt(length), name)).toEqual(misfit);
	}
	expect(misfitOf(flow.region, likeAt('66 mm'), 'another')).toEqual({kind: 'name'});
	expect(misfitOf(flow.region, standAt(flow, []), name)).toBeUndefined();
});

test('that a width cannot be measured holds for the next case, too', () => {
	const unmeasured = talked(flow, ...upToTheResult.slice(0, -1), 'cant-tell', 'keep').turn.trail;
	const trail = trailAlike(flow, {model: unmeasured, find: 7, now});
	expect(said(trail, '66 mm').standing.at.id).toBe('result');
});

test('Back from the length of a case like another asks about its aprons, and loses nothing else', () => {
	const trail = trailAlike(flow, {model: saved, find: 7, now});
	const back = takeTurn(
		flow,
		{trail, turn: 1},
		{event: {kind: 'press', turn: 1, option: 'back'}, moment: {now, zone}},
	);
	expect(back.standing.at.id).toBe('aprons');
	expect(back.trail).toHaveLength(trail.length - 1);
	expect(back.standing.facts.alike).toBe(7);
});

test('a case like those of a tray counts as one, and takes over neither their lengths nor what is left of them', () => {
	const tray = {kind: 'measured', outcome: photoOf([{mm: 65}, {mm: 66}, {mm: 54}])} as const;
	const set = talked(
		flow,
		...toTheLength,
		tray,
		'tick-1',
		'tick-2',
		'one-kind',
		'broad',
		'lines',
		'blade',
		'50 mm',
	);
	expect(set.turn.standing.facts.count).toBe(2);
	const trail = trailAlike(flow, {model: set.turn.trail, find: 7, now});
	expect(at(trail)).toBe('length');
	const {facts, trayed} = standAt(flow, trail);
	expect(facts).toMatchObject({count: 1, length: undefined, each: []});
	expect(trayed).toBeUndefined();
});

test('a case that lies in the bowl already keeps its own answers, and takes over only what it lacks', () => {
	const soaking = talked(flow, ...upToTheBowl.slice(0, 5), '3', 'horns', 'go-on', 'dry', 'two-hours').turn
		.trail;
	const out = takenOut(flow, soaking, now);
	expect(at(out)).toBe('aprons');
	expect(standAt(flow, out).facts).toMatchObject({soak: 'soaked', bowl: {endedAt: now}});
	const trail = trailAlike(flow, {model: saved, find: 7, own: out, now});
	expect(at(trail)).toBe('length');
	expect(standAt(flow, trail).facts).toMatchObject({count: 3, lost: ['horns'], aprons: 'both'});
	// What is out of the bowl is not taken out again.
	expect(takenOut(flow, out, now)).toBe(out);
});

test('a case that looks different keeps place and day and counts as one', () => {
	const trail = trailOfNext(flow, saved, now);
	expect(at(trail)).toBe('egg-case');
	const asked = ['yes', 'empty', 'go-on', 'go-on', 'soft'].reduce<{trail: Trail; asked: readonly string[]}>(
		(so, option) => {
			const moment = {now, zone};
			const turn = takeTurn(
				flow,
				{trail: so.trail, turn: 1},
				{event: {kind: 'press', turn: 1, option}, moment},
			);
			return {trail: turn.trail, asked: [...so.asked, at(so.trail)]};
		},
		{trail, asked: []},
	);
	expect(asked.asked).toEqual(['egg-case', 'alive', 'photo', 'broken', 'condition']);
	expect(standAt(flow, asked.trail).facts).toMatchObject({count: 1, date: '2026-05-02'});
	expect(countedAsOne(flow, now)).toEqual([{question: 'count', answer: {kind: 'count', count: 1}, at: now}]);
});
