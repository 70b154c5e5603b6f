import {expect} from 'vitest';
import {png} from '../room/picture.ts';
import {journeyTest, newestFind} from '../support/journey.ts';

const hourMs = 3_600_000;

journeyTest('a dry thornback case goes from the beach to a kept draft', async ({ada, forward, db}) => {
	await ada.sends('/start');
	expect(ada.sees.text).toContain('Tide');
	expect(ada.sees.text).toContain('999');
	await ada.presses('I have read this, begin');
	expect(ada.sees.text).toContain('four corners');
	await ada.presses('Yes, like that');
	await ada.presses('No, empty and light');
	await ada.photo(png(640, 480));
	expect(ada.sees.text).toContain('one photo');
	await ada.presses('Go on');
	await ada.sends('SW 465 304');
	await ada.presses('Today');
	await ada.presses('2');
	await ada.presses('All there, go on');
	await ada.presses('Dry and stiff');
	await ada.presses('Two hours');
	expect(ada.sees.text).toContain('in the bowl since');
	await forward(2 * hourMs + 1000);
	expect(ada.sees.text).toContain('Your bowl is ready');
	await ada.presses('Softer now');
	await ada.presses('Both are there');
	await ada.sends('66 mm');
	await ada.presses('Two widths or less');
	await ada.presses('Long lines or smooth');
	await ada.presses('Yes, a thin blade');
	await ada.sends('50 mm');
	expect(ada.sees.text).toContain('Thornback ray');
	expect(ada.sees.text).toContain('Raja clavata');
	await ada.presses('Save this find');
	expect(ada.sees.text).toContain('Saved as a draft');
	const find = await newestFind(db, ada.id);
	expect(find.state).toBe('kept');
	const draft = await db
		.selectFrom('draft')
		.select(['status', 'version', 'body'])
		.where('find', '=', find.id)
		.executeTakeFirstOrThrow();
	expect(draft.status).toBe('draft');
	expect(JSON.parse(draft.body)).toMatchObject({
		foundOn: '2026-05-02',
		count: 2,
		soak: {state: 'soaked', hours: 2},
		length: {mm: 66, countsAs: 'exact'},
		said: ['raja-clavata'],
	});
});
