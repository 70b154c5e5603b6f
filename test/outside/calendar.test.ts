/**
 * Calendar files held to a reader that we did not write: ical.js 2.2.1, and to the rules of RFC 5545 by their numbers.
 */
import {createHash} from 'node:crypto';
import ICAL from 'ical.js';
import {expect, test} from 'vitest';
import {type CalendarEvent, calendarFile} from '../../src/survey/calendar.ts';

const whole: CalendarEvent = {
	uid: '7a4f6f5e-0f7b-4c0e-8a53-5ef0c9d6b201@example.org',
	sequence: 0,
	writtenAt: Date.UTC(2026, 3, 20, 12),
	startsAt: Date.UTC(2026, 4, 2, 8, 30),
	endsAt: Date.UTC(2026, 4, 2, 10, 30),
	summary: 'Relevé de la plage de l’Écluse, côté est; rendez-vous près de la cale à 9 h 30',
	isCancelled: false,
};

function read(file: string) {
	const calendar = new ICAL.Component(ICAL.parse(file));
	const part = calendar.getFirstSubcomponent('vevent');
	if (!part) throw new Error('Expected an event in the calendar; there is none');
	return {calendar, part, event: new ICAL.Event(part)};
}

test('a file of French words, folded in the middle of them, is byte for byte the one worked out before', () => {
	// Folded by hand after RFC 5545, 3.1, and read back unchanged by ical.js 2.2.1 before this writer was written.
	const file = calendarFile(whole, '-//Example//Survey day//EN');
	expect(Buffer.byteLength(file)).toBe(383);
	expect(createHash('sha256').update(file).digest('hex')).toBe(
		'9f7855e1d63ccc7e5f570a0796490456e240086425e8b4f362ba50a8ec3aba03',
	);
});

test('a reader finds every field as it was given', () => {
	const {calendar, part, event} = read(
		calendarFile({
			...whole,
			sequence: 4,
			location: 'The slip; Example Cove, east end',
			position: {latitude: 50.103, longitude: -5.543},
			description: 'Low water 09:12, 0.8 m\nBring: boots, a bowl\\bag',
		}),
	);
	expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
	expect(calendar.getFirstPropertyValue('method')).toBe('PUBLISH');
	expect(event.uid).toBe(whole.uid);
	expect(event.sequence).toBe(4);
	expect(event.summary).toBe(whole.summary);
	expect(event.location).toBe('The slip; Example Cove, east end');
	expect(event.description).toBe('Low water 09:12, 0.8 m\nBring: boots, a bowl\\bag');
	expect(event.startDate.toJSDate().getTime()).toBe(whole.startsAt);
	expect(event.endDate.toJSDate().getTime()).toBe(whole.endsAt);
	expect(part.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-04-20T12:00:00Z');
	expect(part.getFirstPropertyValue('geo')).toEqual([50.103, -5.543]);
	expect(part.getFirstPropertyValue('status')).toBe('CONFIRMED');
});

test.each([
	['the four of RFC 5545, 3.3.11', 'a\\b;c,d\ne'],
	['a backslash before an n', 'C:\\new'],
	['a line of 200 letters of four octets', '🦈'.repeat(200)],
	['lines of exactly 75 octets', 'x'.repeat(67)],
	['lines of 76 octets', 'x'.repeat(68)],
	['spaces at a fold', `${'x'.repeat(65)}      y`],
	['letters with marks put after them', 'e\u0301'.repeat(60)],
])('%s come back as they were', (_, summary) => {
	expect(read(calendarFile({...whole, summary})).event.summary).toBe(summary);
});

test('a day in the hour that comes twice keeps its own instant', () => {
	// Europe/London, 25 October 2026: 01:30 comes at 00:30 and at 01:30 UTC (zone database 2025c).
	for (const startsAt of [Date.UTC(2026, 9, 25, 0, 30), Date.UTC(2026, 9, 25, 1, 30)]) {
		const {event} = read(calendarFile({...whole, startsAt, endsAt: startsAt + 3_600_000}));
		expect(event.startDate.toJSDate().getTime()).toBe(startsAt);
		expect(event.duration.toSeconds()).toBe(3600);
	}
});

test('a day that is off is read as cancelled', () => {
	const {calendar, part} = read(calendarFile({...whole, sequence: 1, isCancelled: true}));
	expect(calendar.getFirstPropertyValue('method')).toBe('CANCEL');
	expect(part.getFirstPropertyValue('status')).toBe('CANCELLED');
});
