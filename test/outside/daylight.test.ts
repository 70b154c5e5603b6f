/** Sunrise and sunset held to times worked out by another library, astronomy-engine 2.1.19, on a level horizon. */
import {expect, test} from 'vitest';
import {clockAt} from '../../src/survey/clock-time.ts';
import {daylightOn} from '../../src/survey/daylight.ts';

const newlyn = {latitude: 50.103, longitude: -5.543, zone: 'Europe/London'};

test.each([
	['2026-03-21', '06:22:58', '18:36:40'],
	['2026-06-21', '04:12:19', '20:35:42'],
	['2026-12-21', '08:18:33', '16:21:58'],
])('on %s the sun rises and sets at Newlyn within 10 seconds of the table', (date, rise, set) => {
	const light = daylightOn({...newlyn, date});
	if (light.kind !== 'day') throw new Error('Expected a day with a night');
	expect(Math.abs(light.sunriseAt - Date.parse(`${date}T${rise}Z`))).toBeLessThan(10_000);
	expect(Math.abs(light.sunsetAt - Date.parse(`${date}T${set}Z`))).toBeLessThan(10_000);
});

test.each([
	['Pacific/Kiritimati', 1.87, -157.4],
	['Pacific/Pago_Pago', -14.28, -170.7],
	['Pacific/Chatham', -43.95, -176.55],
	['America/Los_Angeles', 34.0, -118.5],
	['Europe/Madrid', 43.37, -8.4],
])('in %s the sun rises and sets on the day that is asked for', (zone, latitude, longitude) => {
	for (const date of ['2026-03-29', '2026-06-21', '2026-09-27', '2026-12-21']) {
		const light = daylightOn({date, zone, latitude, longitude});
		if (light.kind !== 'day') throw new Error('Expected a day with a night');
		expect(clockAt(light.sunriseAt, zone).date).toBe(date);
		expect(clockAt(light.sunsetAt, zone).date).toBe(date);
		expect(light.sunriseAt).toBeLessThan(light.sunsetAt);
	}
});

test('beyond the polar circle there are days without a night and without a sun', () => {
	// The sun stays up at 70° N in June and down in December (common knowledge of the sky).
	const far = {latitude: 70, longitude: 25, zone: 'Europe/Oslo'};
	expect(daylightOn({...far, date: '2026-06-21'})).toEqual({kind: 'always-light'});
	expect(daylightOn({...far, date: '2026-12-21'})).toEqual({kind: 'always-dark'});
});
