import {expect, test} from 'vitest';
import {trailForAnother} from '../../src/find/another.ts';
import type {FindEvent} from '../../src/find/events.ts';
import {standAt} from '../../src/find/stand.ts';
import {goingOn, talked} from '../support/walk.ts';
import {after, asked, flow, upToTheResult} from './turns.ts';

const photo: FindEvent = {kind: 'photo', photo: 7};
const fix = {latitude: 50.2185, longitude: -5.3936, accuracyM: 6};
const told: FindEvent = {kind: 'photo-told', photo: 7, told: {fix, date: '2026-04-30'}};
const spot = {kind: 'spot', latitude: 50.2185, longitude: -5.3936, uncertaintyM: 12, how: 'photo'};
const toThePhoto = ['yes', 'empty', photo] as const;

test('what a file tells is offered when place and day are asked for, and taken only by a yes', () => {
	const where = talked(flow, ...toThePhoto, told, 'go-on');
	expect(where.ask).toMatchObject({
		question: 'where',
		text: {message: 'question-where-photo', values: {at: '50.2185, -5.3936', uncertainty: 12}},
		options: [{id: 'photo'}, {id: 'here'}],
	});
	expect(where.turn.standing.facts.place).toBeUndefined();
	const when = goingOn(flow, where, 'photo');
	expect(when.turn.standing.facts.place).toMatchObject({...spot, zone: 'Europe/London'});
	expect(when.ask.options.map(({id}) => id)).toEqual(['photo', 'today', 'yesterday']);
	expect(when.turn.standing.facts.date).toBeUndefined();
	expect(goingOn(flow, when, 'photo').turn.standing.facts.date).toBe('2026-04-30');
});

test('whoever answers otherwise can come back to the offer, and a kept find has nothing left of it', () => {
	const count = talked(flow, ...toThePhoto, told, 'go-on', 'Gwithian', 'today');
	expect(count.turn.standing.facts).toMatchObject({place: {kind: 'named'}, date: '2026-05-02'});
	expect(goingOn(flow, count, 'back', 'back').ask.options.map(({id}) => id)).toEqual(['photo', 'here']);
	const [, , , , , ...rest] = upToTheResult;
	const result = goingOn(flow, count, ...rest);
	const corrected = after(result, {kind: 'press', turn: result.turn.turn, option: 'fix-where'});
	expect(asked(corrected.effects).options.map(({id}) => id)).toEqual(['photo', 'here']);
	const kept = goingOn(flow, result, 'keep');
	expect(kept.turn.standing.facts.place).toMatchObject({kind: 'named'});
	expect(JSON.stringify(kept.turn.trail)).not.toMatch(/photo-place|photo-date|50\.2185|2026-04-30/);
});

test('a file that is read after its question was asked has it asked anew, on the same turn', () => {
	const where = talked(flow, ...toThePhoto, 'go-on');
	const late = after(where, told);
	expect(late.turn).toBe(where.turn.turn);
	expect(asked(late.effects)).toMatchObject({
		lead: {message: 'said-photo-told'},
		options: [{id: 'photo'}, {id: 'here'}],
	});
});

test('what a file tells changes no answer that was given, and is not stored then', () => {
	const answered = talked(flow, ...toThePhoto, 'go-on', 'Gwithian', 'today');
	const late = after(answered, told);
	expect(late.effects).toEqual([]);
	expect(late.trail).toEqual(answered.turn.trail);
});

test('only the first file that tells a place is heard', () => {
	const other: FindEvent = {kind: 'photo-told', photo: 8, told: {fix: {latitude: 51, longitude: -4}}};
	const {turn} = talked(flow, ...toThePhoto, {kind: 'photo', photo: 8}, told, other);
	expect(JSON.stringify(turn.trail)).toContain('50.2185');
	expect(JSON.stringify(turn.trail)).not.toContain('"latitude":51');
});

test('a photo that was taken back tells nothing, and takes what it told with it', () => {
	const gone = talked(flow, ...toThePhoto, 'back', told);
	expect(gone.turn.trail.map(({answer}) => answer.kind)).toEqual(['option', 'option']);
	const where = talked(flow, ...toThePhoto, 'go-on', told);
	const back = goingOn(flow, where, 'back');
	expect(back.ask.question).toBe('photo');
	expect(goingOn(flow, back, 'go-on').ask.options.map(({id}) => id)).toEqual(['photo', 'here']);
	expect(JSON.stringify(goingOn(flow, back, 'back').turn.trail)).not.toContain('50.2185');
});

test('a day to come is no day of a find', () => {
	const ahead: FindEvent = {kind: 'photo-told', photo: 7, told: {date: '2031-01-01'}};
	expect(talked(flow, ...toThePhoto, ahead).turn.trail.map(({answer}) => answer.kind)).not.toContain(
		'photo-date',
	);
});

test('an old button for a position that is no longer offered moves nothing', () => {
	const where = talked(flow, ...toThePhoto, 'go-on');
	const pressed = after(where, {kind: 'press', turn: where.turn.turn, option: 'photo'});
	expect(asked(pressed.effects).lead).toEqual({message: 'said-moved-on'});
	expect(standAt(flow, pressed.trail).facts.place).toBeUndefined();
});

test('another case of the walk begins without what a photo offered', () => {
	const shown = talked(flow, ...toThePhoto, told);
	const next = trailForAnother(flow, shown.turn, 'walk');
	expect(JSON.stringify(shown.turn.trail)).toContain('50.2185');
	expect(next).toEqual([]);
});
