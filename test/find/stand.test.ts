import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type Standing, standAt} from '../../src/find/stand.ts';
import type {Trail} from '../../src/find/trail.ts';
import {goingOn, talked} from '../support/walk.ts';
import {changedFlow} from './changed-region.ts';
import {flow, upToTheBowl, upToTheResult} from './turns.ts';

const key = 'british-isles/key.yaml';
const profiles = 'british-isles/profiles.yaml';
const upToTheKey = upToTheResult.slice(0, -4);

test('an empty trail stands at the first question with nothing behind it', () => {
	const standing = standAt(flow, []);
	expect(standing.at).toMatchObject({kind: 'step', id: flow.around.begins});
	expect(standing).toMatchObject({answered: [], found: undefined, hasPast: false, isReopened: false});
});

test('a trail tells its facts, whatever way it took', () => {
	const {facts} = talked(
		flow,
		'yes',
		'empty',
		{kind: 'photo', photo: 3},
		...upToTheBowl.slice(2, 5),
		'7',
		'horns',
		'go-on',
		'damp',
		'unsoaked',
		'one-gone',
		'66 mm',
	).turn.standing;
	expect(facts).toMatchObject({
		lives: false,
		doubt: false,
		photos: [3],
		place: {kind: 'named', name: 'Gwithian'},
		date: '2026-05-02',
		count: 7,
		lost: ['horns'],
		soak: 'damp',
		bowl: undefined,
		aprons: 'incomplete',
		length: {mm: 66},
	});
});

test('the soak is over when the case was found soft, and its hours are known', () => {
	const {facts} = talked(flow, ...upToTheBowl, 'two-hours', {kind: 'woke'}, 'softer').turn.standing;
	expect(facts.soak).toBe('soaked');
	expect(facts.bowl?.endedAt).toBeGreaterThan(facts.bowl?.startedAt ?? Number.POSITIVE_INFINITY);
});

test('a live case is never asked for a size, a soak or a name', () => {
	const {answered, facts, found} = talked(flow, 'yes', 'inside', 'go-on', 'go-on', 'Gwithian', 'today').turn
		.standing;
	expect(facts.lives).toBe(true);
	expect(found).toBeUndefined();
	expect(answered).toEqual(['egg-case', 'alive', 'leave', 'photo-live', 'where', 'when']);
});

test('events of different questions may be stored in any order', () => {
	const trails = [
		talked(
			flow,
			...upToTheBowl,
			'two-hours',
			{kind: 'woke'},
			'stiff',
			{kind: 'woke'},
			'softer',
			'both',
			'6',
			'cm',
			'broad',
			'cant-tell',
		).turn.trail,
		talked(
			flow,
			'yes',
			'empty',
			{kind: 'photo', photo: 1},
			{kind: 'photo', photo: 2},
			...upToTheResult.slice(2),
			'keep',
		).turn.trail,
	];
	for (const trail of trails) {
		const straight = standAt(flow, trail);
		fc.assert(
			fc.property(fc.array(fc.nat({max: 1_000_000}), {minLength: 40, maxLength: 40}), lots => {
				expect(standAt(flow, mixed(trail, lots))).toEqual(straight);
			}),
			{seed: 20_261_025, numRuns: 30},
		);
	}
});

test('answers to steps that are gone or were left aside are passed over, not lost', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const strange: Trail = [
		{question: 'colour-of-the-moon', answer: {kind: 'option', option: 'blue'}, at: 1},
		...trail,
	];
	expect(standAt(flow, strange)).toEqual(standAt(flow, trail));
});

test('a character renamed in the key keeps its answers by the moved list', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const rename = [
		{in: key, find: '  keel:\n    needs', put: '  brim:\n    needs'},
		{in: key, find: /look: keel/g, put: 'look: brim'},
		{in: profiles, find: /^ {6}keel:/gm, put: '      brim:'},
	];
	const forgetful = standAt(changedFlow(...rename), trail);
	expect(forgetful.at).toEqual({kind: 'look', id: 'brim'});
	const heedful = standAt(
		changedFlow(...rename, {in: key, find: 'moved: []', put: 'moved: [{from: keel, to: brim}]'}),
		trail,
	);
	expect(heedful.at).toMatchObject({kind: 'step', id: 'result'});
	expect(heedful.facts.seen).toEqual({outline: 'broad', net: 'lines', brim: 'blade'});
	expect(heedful.found?.leaves).toEqual(standAt(flow, trail).found?.leaves);
});

test('an answer given under the old name of a character can be changed under the new one', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const renamed = changedFlow(
		{in: key, find: '  keel:\n    needs', put: '  brim:\n    needs'},
		{in: key, find: /look: keel/g, put: 'look: brim'},
		{in: profiles, find: /^ {6}keel:/gm, put: '      brim:'},
		{in: key, find: 'moved: []', put: 'moved: [{from: keel, to: brim}]'},
	);
	const changed = goingOn(renamed, talkedFrom(trail, renamed), {kind: 'mend', question: 'brim'}, 'none');
	expect(changed.turn.standing.facts.seen).toMatchObject({brim: 'none'});
	expect(changed.turn.trail.filter(({question}) => ['keel', 'brim'].includes(question))).toHaveLength(1);
});

test('answers to a character dropped from the key go out of the ranking', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const dropped = changedFlow(
		{in: key, find: /^ {2}net:\n(?: {4}.*\n)+/m, put: ''},
		{in: key, find: '{belowMm: 67, leads: net}', put: '{belowMm: 67, leads: small-keel}'},
		{in: key, find: /^ {2}net:\n.*\n.*\n/m, put: ''},
		{in: profiles, find: /^ {6}net:.*\n/gm, put: ''},
		{in: key, find: 'moved: []', put: 'moved: [{from: net}]'},
	);
	const standing = standAt(dropped, trail);
	expect(standing.at).toMatchObject({kind: 'step', id: 'result'});
	expect(standing.facts.seen).toEqual({outline: 'broad', keel: 'blade'});
	expect(standing.answered).not.toContain('net');
});

test('when a state is gone from the key only its own question is asked anew', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const renamed = changedFlow(
		{in: key, find: 'states: [net, lines]', put: 'states: [net, stripes]'},
		{in: key, find: 'lines: {leads: small-keel}', put: 'stripes: {leads: small-keel}'},
		{in: profiles, find: /lines:/g, put: 'stripes:'},
	);
	const standing = standAt(renamed, trail);
	expect(standing.at).toEqual({kind: 'look', id: 'net'});
	expect(standing.facts.seen).toEqual({outline: 'broad'});
	const answered = goingOn(renamed, talkedFrom(trail, renamed), 'stripes');
	expect(answered.ask.question).toBe('result');
	expect(answered.turn.standing.facts.seen).toEqual({outline: 'broad', net: 'stripes', keel: 'blade'});
});

test('when the key changes under a trail what still fits is kept and only the new is asked', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const longer = changedFlow({
		in: key,
		find: 'blade: {leads: raja-clavata}, none: {leads: front-flap}',
		put: 'blade: {leads: taper}, none: {leads: front-flap}',
	});
	const standing = standAt(longer, trail);
	expect(standing.at).toEqual({kind: 'look', id: 'taper'});
	// The width waits for its turn.
	expect([...standing.answered, 'width']).toEqual(standAt(flow, trail).answered);
	expect(standing.facts).toEqual({...standAt(flow, trail).facts, width: undefined});
	expect(goingOn(longer, talkedFrom(trail, longer), 'even').ask.question).toBe('result');
});

test('a step put before the others is asked, and the rest of the trail counts after it', () => {
	const {trail} = talked(flow, ...upToTheKey).turn;
	const asking = changedFlow({
		in: 'around.yaml',
		find: '  photo: {kind: photos, picture: photo, leads: where}',
		put: '  photo: {kind: photos, picture: photo, leads: weather}\n  weather: {kind: choice, options: {fair: {leads: where}, foul: {leads: where}}}',
	});
	const standing = standAt(asking, trail);
	expect(standing.at).toMatchObject({kind: 'step', id: 'weather'});
	expect(goingOn(asking, talkedFrom(trail, asking), 'fair').ask.question).toBe('outline');
});

test('an answer put again stands open until it is given, and Back from it is offered', () => {
	const {trail} = talked(flow, ...upToTheResult).turn;
	const open: Trail = [...trail, {question: 'egg-case', answer: {kind: 'reopen'}, at: 9}];
	expect(standAt(flow, open)).toMatchObject({
		at: {id: 'egg-case'},
		isReopened: true,
		hasPast: true,
		answered: [],
	});
});

test('an event with an answer of the wrong kind moves nothing', () => {
	const wrong: Trail = [
		{question: 'egg-case', answer: {kind: 'count', count: 3}, at: 1},
		{question: 'egg-case', answer: {kind: 'option', option: 'constructor'}, at: 2},
		{question: 'egg-case', answer: {kind: 'option', option: 'yes'}, at: 3},
	];
	expect(standAt(flow, wrong)).toMatchObject({at: {id: 'alive'}, answered: ['egg-case']});
});

/** A stored find as a turn of a changed region meets it. */
function talkedFrom(trail: Trail, changed: typeof flow) {
	return goingOn(
		changed,
		{...talked(changed), turn: {trail, turn: 20, standing: standAt(changed, trail), effects: []}},
		{kind: 'resume'},
	);
}

/** The events shuffled; those of one question stay in their order. */
function mixed(trail: Trail, lots: readonly number[]): Trail {
	const groups = new Map<string, Trail>();
	for (const event of trail) groups.set(event.question, [...(groups.get(event.question) ?? []), event]);
	const left = [...groups.values()].map(group => [...group]);
	const out: Standing['lastHere'][] = [];
	for (const lot of [...lots, ...trail.map((_, index) => index)]) {
		const open = left.filter(group => group.length > 0);
		out.push(open[lot % Math.max(1, open.length)]?.shift());
	}
	return out.flatMap(event => (event ? [event] : []));
}
