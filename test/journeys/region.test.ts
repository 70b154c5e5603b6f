import {expect} from 'vitest';
import {journeyTest} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';

journeyTest(
	'a pin on the shore of another region brings its key, and the next find begins with it',
	async ({ada, db}) => {
		const person = {db, person: ada};
		const regions = () =>
			db
				.selectFrom('find')
				.innerJoin('person', 'person.id', 'find.person')
				.select(['find.region', 'person.region as own'])
				.where('person.platformId', '=', ada.id)
				.orderBy('find.id')
				.execute();
		await begin(ada);
		await walkTo(person, 'where');
		expect(await regions()).toEqual([{region: 'british-isles', own: null}]);
		// Marseille, from an atlas.
		await ada.location(43.28, 5.35);
		expect(ada.sees.text).toContain('Which day');
		expect(await regions()).toEqual([{region: 'western-mediterranean', own: 'western-mediterranean'}]);
		await ada.sends('/find');
		expect((await regions()).map(({region}) => region)).toEqual([
			'western-mediterranean',
			'western-mediterranean',
		]);
	},
);

journeyTest(
	'/region shows whose egg cases are told apart, and lets another be chosen',
	async ({ada, db}) => {
		await begin(ada);
		await ada.sends('/region');
		expect(ada.sees.text).toContain('British Isles');
		await ada.presses('Eastern North Pacific');
		expect(ada.sees.text).toContain('From now on I tell apart the egg cases of: Eastern North Pacific');
		await ada.sends('/find');
		const {region} = await db
			.selectFrom('find')
			.select('region')
			.orderBy('id', 'desc')
			.executeTakeFirstOrThrow();
		expect(region).toBe('north-east-pacific');
		await ada.sends('/safety');
		expect(ada.sees.text).not.toContain('999');
	},
	['plain', 'delivered twice'],
);
