import {expect} from 'vitest';
import type {Db} from '../../src/store/schema.ts';
import {journeyTest} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';

const zoneOf = async (db: Db, platformId: number) =>
	(
		await db
			.selectFrom('person')
			.select(['zone', 'isZoneChosen'])
			.where('platformId', '=', platformId)
			.executeTakeFirstOrThrow()
	).zone;

journeyTest(
	'the zone is shown, chosen by a button, and every time is said in it from then on',
	async ({ada, db}) => {
		await begin(ada);
		await ada.sends('/settings');
		expect(ada.sees.text).toContain('Times are shown for Europe/London');
		await ada.presses('Europe/Paris');
		expect(ada.sees.text).toContain('times are shown for Europe/Paris');
		expect(await zoneOf(db, ada.id)).toBe('Europe/Paris');
		await ada.sends('/settings');
		expect(ada.sees.text).toContain('Times are shown for Europe/Paris');
		await ada.sends('/find');
		await walkTo({db, person: ada}, 'soaking', {condition: person => person.presses('Dry and stiff')});
		// 09:30 UTC on 2 May.
		expect(ada.sees.text).toContain('since 11:30');
		expect(ada.sees.text).toContain('at 13:30');
	},
	['plain', 'delivered twice'],
);

journeyTest(
	'a zone can be written after the command, and one that nobody knows is answered with how to write it',
	async ({ada, db}) => {
		await begin(ada);
		await ada.sends('/settings America/Vancouver');
		expect(await zoneOf(db, ada.id)).toBe('America/Vancouver');
		await ada.sends('/settings Atlantis <b>');
		expect(ada.sees.text).toContain('I do not know the time zone “Atlantis <b>”');
		expect(ada.sees.text).toContain('Europe/London');
		expect(await zoneOf(db, ada.id)).toBe('America/Vancouver');
	},
	['plain'],
);

journeyTest(
	'the zone of a place is taken over, unless the person chose one',
	async ({ada, db, person}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'when', {where: person => person.sends('48.65, -2.02')});
		expect(await zoneOf(db, ada.id)).toBe('Europe/Paris');
		const ben = person('Ben');
		await begin(ben);
		await ben.sends('/settings Europe/Dublin');
		await ben.sends('/find');
		await walkTo({db, person: ben}, 'when', {where: person => person.sends('48.65, -2.02')});
		expect(await zoneOf(db, ben.id)).toBe('Europe/Dublin');
	},
	['plain'],
);

journeyTest(
	'made-up data of a zone button sets nothing',
	async ({ada, db}) => {
		await begin(ada);
		await ada.makesUp('z.Nowhere/At_All');
		expect(ada.sees.text).toContain('I do not know the time zone “Nowhere/At_All”');
		expect(await zoneOf(db, ada.id)).toBeNull();
	},
	['plain'],
);
