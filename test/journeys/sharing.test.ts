import {expect} from 'vitest';
import {sharingOf} from '../../src/store/sharing.ts';
import {journeyTest} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';
import {idOf} from '../support/team.ts';

journeyTest(
	'a person chooses the name and the squares of their published records, and sees how one would read',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'kept');
		const id = await idOf(db, ada);
		await ada.sends('/sharing');
		expect(ada.sees.text).toContain("Found by: nobody's name");
		expect(ada.sees.text).toContain('reads: SW 465 304, found by nobody named');
		expect(ada.labels()).toEqual(['In a square of 1 km', 'In a square of 10 km']);
		await ada.presses('In a square of 1 km');
		expect(ada.sees.text).toContain('Place: a square of 1 km');
		expect(ada.sees.text).toContain('reads: SW 46 30, found by nobody named');
		await ada.sends('/sharing  Sea   Glass\tAnnie ');
		expect(ada.sees.text).toContain('Found by: Sea Glass Annie');
		expect(ada.labels()).toEqual(['Places as I told them', 'In a square of 10 km', "Nobody's name"]);
		await ada.presses('In a square of 10 km');
		expect(ada.sees.text).toContain('reads: SW 4 3, found by Sea Glass Annie');
		expect(await sharingOf(db, id)).toEqual({publicName: 'Sea Glass Annie', coarseM: 10_000});
		for (const reachable of ['annie@example.org', 'Annie 01736 000 000', 'https://example.org']) {
			await ada.sends(`/sharing ${reachable}`);
			expect(ada.sees.text).toContain('Others could reach you by that');
		}
		await ada.sends(`/sharing ${'n'.repeat(61)}`);
		expect(ada.sees.text).toContain('That name is too long');
		await ada.makesUp('m.sharing.places.huge');
		expect(await sharingOf(db, id)).toEqual({publicName: 'Sea Glass Annie', coarseM: 10_000});
		await ada.presses("Nobody's name");
		await ada.presses('Places as I told them');
		expect(await sharingOf(db, id)).toEqual({publicName: undefined, coarseM: undefined});
	},
	['plain', 'restarted after each update'],
);

journeyTest(
	'/privacy says what is held and for how long, and leads to all that can be done about it',
	async ({ada}) => {
		await begin(ada);
		await ada.sends('/help');
		expect(ada.sees.text).toContain('/privacy');
		await ada.sends('/privacy');
		for (const words of ['30 days', '7 days before', '/mydata', '/drafts', '/sharing', '/forget'])
			expect(ada.sees.text).toContain(words);
	},
	['plain'],
);
