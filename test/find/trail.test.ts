import {expect, test} from 'vitest';
import {
	type Answer,
	byQuestion,
	reopened,
	type Trail,
	type TrailEvent,
	trailSchema,
	withEvent,
	withoutLast,
} from '../../src/find/trail.ts';

const count = (number: number): Answer => ({kind: 'count', count: number});
const photo = (number: number): Answer => ({kind: 'photo', photo: number});
const option = (id: string): Answer => ({kind: 'option', option: id});

function event(question: string, answer: Answer, at = 0): TrailEvent {
	return {question, answer, at};
}

test('a new event goes to the end, and the trail before it stays as it was', () => {
	const before: Trail = [event('count', count(1))];
	const after = withEvent(before, event('where', option('x'), 5));
	expect(after).toEqual([event('count', count(1)), event('where', option('x'), 5)]);
	expect(before).toHaveLength(1);
});

test('taking back the last answer of nothing leaves nothing', () => {
	expect(withoutLast([])).toEqual([]);
});

test('a waking goes with the answer it followed', () => {
	const soak: Answer = {
		kind: 'soak',
		plan: 'two-hours',
		startedAt: 0,
		dueAt: 7_200_000,
		zone: 'Europe/London',
	};
	const trail = [event('count', count(1)), event('soak', soak), event('soaking', {kind: 'woke'})];
	expect(withoutLast(trail)).toEqual([event('count', count(1))]);
	expect(withoutLast([event('soaking', {kind: 'woke'})])).toEqual([]);
});

test('a question put again is open, keeping only its photos', () => {
	const trail = reopened(
		[event('photo', photo(1)), event('photo', option('go-on')), event('count', count(2))],
		'photo',
		9,
	);
	expect(byQuestion(trail).get('photo')).toEqual([event('photo', photo(1))]);
	expect(byQuestion(trail).get('count')).toEqual([event('count', count(2))]);
	expect(trail).toHaveLength(4);
});

test('the answer to a question put again takes the place of the old one', () => {
	const old: Trail = [event('count', count(2)), event('where', option('x'))];
	const trail = withEvent(reopened(old, 'count', 9), event('count', count(3), 10));
	expect(trail).toEqual([event('where', option('x')), event('count', count(3), 10)]);
});

test('photos stay when the photo question is answered again', () => {
	const old: Trail = [event('photo', photo(1)), event('photo', option('go-on'))];
	const more = withEvent(reopened(old, 'photo', 9), event('photo', photo(2), 10));
	expect(more).toHaveLength(4);
	const done = withEvent(more, event('photo', option('go-on'), 11));
	expect(done).toEqual([
		event('photo', photo(1)),
		event('photo', photo(2), 10),
		event('photo', option('go-on'), 11),
	]);
});

test('an unfinished answer to a question put again leaves the old one until it is finished', () => {
	const number: Answer = {kind: 'number', typed: '6', units: ['cm', 'in']};
	const open = withEvent(
		reopened([event('length', {kind: 'unmeasured'})], 'length', 9),
		event('length', number, 10),
	);
	expect(open).toHaveLength(3);
	expect(withoutLast(withoutLast(open))).toEqual([event('length', {kind: 'unmeasured'})]);
});

test('a stored trail is read back as it was, and a damaged one is refused', () => {
	const trail: Trail = [
		event('where', {kind: 'place', place: {kind: 'named', name: 'Gwithian'}}, 1),
		event('when', {kind: 'date', date: '2026-05-02'}, 2),
		event('length', {kind: 'sized', length: {mm: 62, uncertaintyMm: 1, typed: '62 mm', method: 'typed'}}, 3),
		event('broken', {kind: 'parts', parts: ['horns']}, 4),
		event('note', {kind: 'note', text: 'a “find” <b>'}, 5),
	];
	expect(trailSchema.parse(JSON.parse(JSON.stringify(trail)))).toEqual(trail);
	for (const damaged of [
		[{question: 'count', answer: {kind: 'count', count: 0}, at: 1}],
		[{question: 'when', answer: {kind: 'date', date: '2026-02-30'}, at: 1}],
		[{question: 'count', answer: {kind: 'wish'}, at: 1}],
		[{question: 'count', answer: {kind: 'count', count: 1}, at: 1.5}],
		[{answer: {kind: 'woke'}, at: 1}],
		{},
	]) {
		expect(trailSchema.safeParse(damaged).success, JSON.stringify(damaged)).toBe(false);
	}
});
