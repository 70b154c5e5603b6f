import {expect, test, vi} from 'vitest';
import {groups} from '../../src/room/people.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {beginJourney, journeyTest} from '../support/journey.ts';
import {begin, press, walkTo, write} from '../support/steps.ts';

vi.setConfig({testTimeout: 60_000});

const group = groups[0].id;
/** Dried and torn: its length tells little, and no one name is sure. */
const doubtful = {
	condition: press('Dry and stiff'),
	soak: press('Go on without soaking'),
	aprons: press('Both are torn off'),
	length: write('50 mm'),
	keel: press("Can't tell"),
	net: press("Can't tell"),
	taper: press("Can't tell"),
	coat: press("Can't tell"),
};

journeyTest('the day of one person is counted by kind, with what is not sure apart', async ({ada, db}) => {
	await begin(ada);
	const person = {db, person: ada};
	await walkTo(person, 'kept', {count: press('3')});
	await ada.presses('One more of this walk');
	await walkTo(person, 'kept', {...doubtful, count: press('2')});
	await ada.presses('One more of this walk');
	await walkTo(person, 'kept', {alive: press('Tied to weed or rock')});
	await ada.sends('/find');
	await ada.sends('/tally');
	const {text, photo} = ada.sees;
	expect(text).toContain('Today, 2 May 2026\n');
	expect(text).toMatch(/\n6 cases in 3 finds\.\n/);
	expect(text).toContain('• Thornback ray: 3\n• One of several kinds: 2\n• Alive, left in the sea: 1\n');
	expect(text).toMatch(/more finds? (?:is|are) not finished/);
	expect(text).toContain('Shared by: someone\n');
	expect(photo).toBeDefined();
	await ada.presses('Yesterday');
	expect(ada.sees.text).toContain('Yesterday, 1 May 2026\nNothing found then is saved.');
	expect(ada.sees.photo).toBeUndefined();
	await ada.presses('This month');
	expect(ada.sees.text).toContain('May 2026\n6 cases in 3 finds.');
});

test('a group counts what was found there, by whomever, and names those who chose a name', async () => {
	const journey = await beginJourney();
	const {db, ada: alone} = journey;
	await begin(alone);
	await begin(journey.person('Ben'));
	await walkTo({db, person: alone}, 'kept', {count: press('5')});
	const [ada, ben] = [journey.person('Ada', group), journey.person('Ben', group)];
	for (const person of [ada, ben]) {
		await person.sends('/find');
		await walkTo({db, person}, 'kept');
	}
	const ids = await db.selectFrom('person').select(['id', 'platformId']).execute();
	const adas = ids.find(({platformId}) => platformId === ada.id)?.id ?? 0;
	await db.transaction().execute(tx => chooseSharing(tx, adas, {publicName: 'Tilda of the tide'}));
	await ben.sends('/tally');
	expect(ben.sees.text).toContain('2 cases in 2 finds.\n• Thornback ray: 2\n');
	expect(ben.sees.text).toContain('Shared by: Tilda of the tide and someone\n');
	expect(ben.sees.text).not.toMatch(/Ada|Ben/);
	// Alone, she has the day of all her chats.
	await alone.sends('/tally');
	expect(alone.sees.text).toContain('6 cases in 2 finds.');
	journey.check();
});

test('one record that cannot be read keeps no others from being counted', async () => {
	const journey = await beginJourney();
	const {db, ada} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	await ada.presses('One more of this walk');
	await walkTo({db, person: ada}, 'kept', {count: press('4')});
	await db.updateTable('draft').set({body: '{"id":'}).where('find', '=', 1).execute();
	await ada.sends('/tally');
	expect(ada.sees.text).toContain('4 cases, all alike.');
});

test('where nothing was found today, /tally tells the last day on which something was', async () => {
	const journey = await beginJourney();
	const {db, ada} = journey;
	await begin(ada);
	await walkTo({db, person: ada}, 'kept');
	await journey.forward(24 * 3_600_000);
	await ada.sends('/tally');
	expect(ada.sees.text).toContain('Yesterday, 2 May 2026\nOne case.');
	await journey.forward(3 * 24 * 3_600_000);
	await ada.sends('/tally');
	expect(ada.sees.text).toContain('Saturday 2 May 2026\nOne case.');
	await ada.presses('Today');
	expect(ada.sees.text).toContain('Today, 6 May 2026\nNothing found then is saved.');
});
