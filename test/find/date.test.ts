import {expect, test} from 'vitest';
import {localDate, readDate} from '../../src/find/date.ts';

const today = '2026-05-02';

test.each([
	['today', '2026-05-02'],
	['Yesterday', '2026-05-01'],
	['2026-04-30', '2026-04-30'],
	['2/5/2026', '2026-05-02'],
	['30.4.2026', '2026-04-30'],
	['30-4-2026', '2026-04-30'],
	['2/5/26', '2026-05-02'],
	['2 May', '2026-05-02'],
	['2 May 2026', '2026-05-02'],
	['May 2', '2026-05-02'],
	['May 2, 2026', '2026-05-02'],
	['2nd May', '2026-05-02'],
	['the 1st May', '2026-05-01'],
	['on 30 April', '2026-04-30'],
	['on the 30th of April', '2026-04-30'],
	['Saturday, 2 May', '2026-05-02'],
	['Friday the 1st of May 2026', '2026-05-01'],
	['30 april', '2026-04-30'],
	['12 Sept 2025', '2025-09-12'],
	['  1   January   2026 ', '2026-01-01'],
	['28/2', '2026-02-28'],
	['1.5.', '2026-05-01'],
])('"%s" is %s', (text, date) => {
	expect(readDate(text, today)).toEqual({kind: 'date', date});
});

test('the day stands before the month', () => {
	expect(readDate('3/4/2026', today)).toEqual({kind: 'date', date: '2026-04-03'});
});

test('a day without its year is the last such day', () => {
	expect(readDate('3 May', today)).toEqual({kind: 'date', date: '2025-05-03'});
	expect(readDate('31/12', today)).toEqual({kind: 'date', date: '2025-12-31'});
});

test('29 February is a day in its own year only', () => {
	expect(readDate('29/2/2024', today)).toEqual({kind: 'date', date: '2024-02-29'});
	expect(readDate('29 Feb', '2024-03-01')).toEqual({kind: 'date', date: '2024-02-29'});
	expect(readDate('29 Feb', '2025-03-01')).toEqual({kind: 'date', date: '2024-02-29'});
	expect(readDate('29 Feb', '2026-03-01')).toMatchObject({kind: 'refused', why: 'not-a-date'});
	expect(readDate('29/2/2026', today)).toMatchObject({kind: 'refused', why: 'not-a-date'});
});

test('yesterday of the first of March is the last of February', () => {
	expect(readDate('yesterday', '2024-03-01')).toEqual({kind: 'date', date: '2024-02-29'});
});

test.each([
	['2026-05-03', 'future'],
	['3/5/2026', 'future'],
	['1 June 2026', 'future'],
	['1/1/1899', 'too-old'],
	['soon', 'not-a-date'],
	['Saturday', 'not-a-date'],
	['Sundayish 2 May', 'not-a-date'],
	['31/4/2026', 'not-a-date'],
	['2026-02-30', 'not-a-date'],
	['13/13/2025', 'not-a-date'],
	['tomorrow', 'future'],
	['', 'not-a-date'],
	['2', 'not-a-date'],
])('"%s" is refused: %s', (text, why) => {
	expect(readDate(text, today)).toEqual({kind: 'refused', why, heard: text.trim()});
});

test('what was not understood is shown back cut to 60 characters', () => {
	expect(readDate('x'.repeat(500), today)).toEqual({
		kind: 'refused',
		why: 'not-a-date',
		heard: 'x'.repeat(60),
	});
});

test('the local day changes at midnight of the place, also on the days when clocks change', () => {
	// Midnight in London is 23:00 UTC in summer and 00:00 in winter.
	expect(localDate(Date.parse('2026-05-01T22:59Z'), 'Europe/London')).toBe('2026-05-01');
	expect(localDate(Date.parse('2026-05-01T23:00Z'), 'Europe/London')).toBe('2026-05-02');
	expect(localDate(Date.parse('2026-03-29T22:59Z'), 'Europe/London')).toBe('2026-03-29');
	expect(localDate(Date.parse('2026-03-29T23:00Z'), 'Europe/London')).toBe('2026-03-30');
	expect(localDate(Date.parse('2026-10-25T23:59Z'), 'Europe/London')).toBe('2026-10-25');
	expect(localDate(Date.parse('2026-10-26T00:00Z'), 'Europe/London')).toBe('2026-10-26');
	expect(localDate(Date.parse('2026-05-02T06:59Z'), 'America/Vancouver')).toBe('2026-05-01');
});
