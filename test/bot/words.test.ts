import {join} from 'node:path';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {dayText, escaped, lineText, type Reader, timeText} from '../../src/bot/words.ts';
import {projectRoot} from '../../src/settings.ts';
import {readTexts} from '../../src/text/text.ts';

const root = projectRoot();
const {say} = {say: readTexts([join(root, 'src', 'text'), join(root, 'flows')]).in('en')};
// 2 May 2026, 09:30 UTC: half past ten in London, half past eleven in Paris.
const now = Date.UTC(2026, 4, 2, 9, 30);
const reader = (zone: string): Reader => ({say, zone, now});

test('an instant of today is a clock time in the zone of the reader', () => {
	expect(timeText(now, reader('Europe/London'))).toBe('10:30');
	expect(timeText(now, reader('Europe/Paris'))).toBe('11:30');
	expect(timeText(now, reader('America/Vancouver'))).toBe('02:30');
});

test('an instant of another day says which, and it is the day of the reader that counts', () => {
	const evening = Date.UTC(2026, 4, 2, 22, 30);
	expect(timeText(evening, reader('Europe/London'))).toBe('23:30');
	expect(timeText(evening, reader('Europe/Paris'))).toBe('00:30, Sunday 3 May');
});

test('clock changes are heeded', () => {
	// Clocks go forward on 29 March 2026 at 01:00 UTC.
	const before = Date.UTC(2026, 2, 29, 0, 30);
	const london: Reader = {say, zone: 'Europe/London', now: before};
	expect(timeText(before, london)).toBe('00:30');
	expect(timeText(Date.UTC(2026, 2, 29, 1, 30), london)).toBe('02:30');
});

test('a day is said as people say it', () => {
	expect(dayText('2026-05-02', {say})).toBe('2 May 2026');
});

test('a sentence takes its values, days and times in words', () => {
	const line = {message: 'chosen-date', values: {date: '2026-05-02'}};
	expect(lineText(line, reader('Europe/London'))).toBe('2 May 2026');
	const times = {since: now, due: Date.UTC(2026, 4, 3, 6)};
	const soaking = lineText({message: 'question-soaking'}, reader('Europe/London'), times);
	expect(soaking).toContain('since 10:30');
	expect(soaking).toContain('at 07:00, Sunday 3 May');
});

test('what people wrote stays what it is: markup in it is shown, never obeyed', () => {
	expect(escaped('<b>Sandy & Cove</b> &lt;')).toBe('&lt;b&gt;Sandy &amp; Cove&lt;/b&gt; &amp;lt;');
	fc.assert(
		fc.property(fc.string(), text => {
			const html = escaped(text);
			expect(html).not.toMatch(/[<>]/);
			const back = html.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
			expect(back).toBe(text);
		}),
	);
});
