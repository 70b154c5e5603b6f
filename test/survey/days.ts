/** A made-up survey day for tests: Example Cove on 2 May 2026, low water a little before its middle. */
import type {Day} from '../../src/survey/day.ts';

export const exampleDay: Day = {
	title: 'Spring walk',
	spot: {latitude: 50.103, longitude: -5.543, zone: 'Europe/London'},
	place: 'Example Cove',
	date: '2026-05-02',
	startsAt: Date.UTC(2026, 4, 2, 10),
	endsAt: Date.UTC(2026, 4, 2, 13),
	lowWater: {at: Date.UTC(2026, 4, 2, 11, 28), heightM: 0.9, table: 'Official tables, Example Harbour'},
	meeting: 'At the slip below the car park',
	bring: 'Boots and a bag',
	contact: 'the beach hut, 01234 567890',
	risks: 'The far end is cut off by the tide.',
};
