import {expect, test} from 'vitest';
import {clockAt, dateAfter, instantsOf, readClockTime} from '../../src/survey/clock-time.ts';

test.each([
	['9:30', '09:30'],
	['09.30', '09:30'],
	['0930', '09:30'],
	['930', '09:30'],
	['at 9', '09:00'],
	['9 am', '09:00'],
	['9:30 p.m.', '21:30'],
	['12 am', '00:00'],
	['12pm', '12:00'],
	['14h05', '14:05'],
	["7 o'clock", '07:00'],
	['00:00', '00:00'],
])('“%s” is %s', (text, time) => {
	expect(readClockTime(text)).toBe(time);
});

test.each(['24:00', '9:60', '13 pm', '0 am', 'soon', '', '9:3', '99'])('“%s” is no time', text => {
	expect(readClockTime(text)).toBeUndefined();
});

test('a day later is a day of the calendar, over months and clock changes', () => {
	expect(dateAfter('2026-03-28', 1)).toBe('2026-03-29');
	expect(dateAfter('2026-12-31', 1)).toBe('2027-01-01');
	expect(dateAfter('2026-03-01', -1)).toBe('2026-02-28');
});

test('what the clocks show at an instant is what leads back to it', () => {
	const at = Date.UTC(2026, 4, 2, 8, 30);
	expect(clockAt(at, 'Europe/London')).toEqual({date: '2026-05-02', time: '09:30'});
	expect(instantsOf({...clockAt(at, 'Europe/London'), zone: 'Europe/London'})).toEqual([at]);
});
