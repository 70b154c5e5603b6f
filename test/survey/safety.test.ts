import {expect, test} from 'vitest';
import type {Day} from '../../src/survey/day.ts';
import {safetyWords} from '../../src/survey/safety.ts';
import {exampleDay} from './days.ts';

const hourMs = 3_600_000;
const said = (day: Day) => safetyWords(day).map(({message}) => message);
const low = exampleDay.lowWater?.at ?? 0;
const at = (from: number, to: number): Day => ({...exampleDay, startsAt: from, endsAt: to});

test.each([
	['before low water', at(low - 3 * hourMs, low - hourMs), 'day-safe-falling'],
	['round low water', at(low - hourMs, low + hourMs), 'day-safe-turn'],
	['after low water', at(low + hourMs, low + 2 * hourMs), 'day-safe-rising'],
])('a day %s is told what the sea does then', (_, day, message) => {
	expect(safetyWords(day)[0]).toEqual({message, times: {low}});
});

test('a day without a tide is told to look at the sea all the same', () => {
	const {lowWater: _, ...day} = exampleDay;
	expect(said(day)[0]).toBe('day-safe-small-tide');
});

// Sunset at Newlyn on 21 December 2026: 16:21:58 UTC, sunrise 08:18:33 (astronomy-engine 2.1.19).
const winter = (from: string, to: string): Day => ({
	...at(Date.parse(`2026-12-21T${from}Z`), Date.parse(`2026-12-21T${to}Z`)),
	date: '2026-12-21',
});

test.each([
	['10:00', '12:00', 'day-safe-light'],
	['12:00', '15:30', 'day-safe-near-dark'],
	['14:00', '16:30', 'day-safe-dark'],
	['07:00', '09:30', 'day-safe-before-sunrise'],
])('in the short days of winter, from %s to %s, people hear of the dark that fits', (from, to, message) => {
	expect(said(winter(from, to))).toContain(message);
});

test('a day into the next morning is a night', () => {
	const night = {...winter('22:00', '23:00'), endsAt: Date.UTC(2026, 11, 22, 9)};
	expect(said(night)).toContain('day-safe-night');
});

test('beyond the polar circle nobody is sent into the dark unwarned', () => {
	const spot = {latitude: 70, longitude: 25, zone: 'Europe/Oslo'};
	expect(said({...winter('10:00', '12:00'), spot})).toContain('day-safe-no-sun');
	const june = at(Date.UTC(2026, 5, 21, 20), Date.UTC(2026, 5, 21, 23));
	expect(said({...june, spot, date: '2026-06-21'})).toEqual(['day-safe-rising', 'day-safe-weather']);
});

test('every day says to look at the weather', () => {
	for (const day of [exampleDay, winter('10:00', '12:00'), winter('22:00', '23:00')]) {
		expect(said(day).at(-1)).toBe('day-safe-weather');
	}
});
