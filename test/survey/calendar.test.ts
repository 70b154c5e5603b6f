import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type CalendarEvent, calendarFile} from '../../src/survey/calendar.ts';

const event: CalendarEvent = {
	uid: 'day-1@example.org',
	sequence: 0,
	writtenAt: Date.UTC(2026, 3, 20, 12),
	startsAt: Date.UTC(2026, 4, 2, 8, 30),
	endsAt: Date.UTC(2026, 4, 2, 10, 30),
	summary: 'A walk',
	isCancelled: false,
};

test('no line is longer than 75 octets, no character is cut, and every line ends in CR LF', () => {
	fc.assert(
		fc.property(fc.string({unit: 'binary', maxLength: 200}), summary => {
			const file = calendarFile({...event, summary});
			expect(file.endsWith('\r\n')).toBe(true);
			const lines = file.slice(0, -2).split('\r\n');
			expect(Math.max(...lines.map(line => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
			expect(lines.join('')).not.toMatch(/[\r\n]/);
			// A character cut in two would not come back.
			expect(Buffer.from(file).toString()).toBe(file);
		}),
		{numRuns: 50},
	);
});

test('a cancelled day takes itself back under the same name and a higher number', () => {
	const file = calendarFile({...event, sequence: 3, isCancelled: true});
	expect(file).toContain('\r\nMETHOD:CANCEL\r\n');
	expect(file).toContain('\r\nSTATUS:CANCELLED\r\n');
	expect(file).toContain('\r\nUID:day-1@example.org\r\n');
	expect(file).toContain('\r\nSEQUENCE:3\r\n');
});
