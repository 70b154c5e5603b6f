import {expect, test, vi} from 'vitest';
import {draftSchema} from '../../src/record/draft.ts';
import {emulated} from '../support/emulated.ts';

// Source: telegram-test-api 4.2.1 (npm, MIT), an emulator of the platform's Bot API that nobody here wrote. It knows
// getMe, getUpdates, sendMessage, editMessageText, answerCallbackQuery, deleteWebhook; to all else it answers 500.

vi.setConfig({testTimeout: 120_000});

test('the program starts at an emulator that knows neither command lists nor descriptions, and says so in its log', async () => {
	const {lines, commands} = await emulated();
	expect((await commands('/help')).message.text).toContain('What I can do');
	await vi.waitFor(() => expect(lines.some(({what}) => what === 'profile not set')).toBe(true), 20_000);
});

test('a find goes from the greeting to a kept draft at an emulator that nobody here wrote', async () => {
	const {db, lines, said, commands, writes, presses} = await emulated();
	let sees = await commands('/start');
	expect(sees.message.text).toContain('Tide');
	const answers = [
		'I have read this, begin',
		'Yes, like that',
		'No, empty and light',
		'No photo, go on',
		{text: 'SW 465 304'},
		'Today',
		'2',
		'All there, go on',
		'Soaked and soft',
		'Both are there',
		{text: '66 mm'},
		'Two widths or less',
		'Long lines or smooth',
		'Yes, a thin blade',
		{text: '50 mm'},
		'Save this find',
	];
	for (const answer of answers) {
		sees = typeof answer === 'string' ? await presses(sees, answer) : await writes(answer.text);
	}
	expect(sees.message.text).toContain('Saved as a draft');
	const [row] = await db.selectFrom('draft').select(['status', 'version', 'body']).execute();
	expect(row).toMatchObject({status: 'draft', version: 1});
	expect(draftSchema.parse(JSON.parse(row?.body ?? ''))).toMatchObject({
		count: 2,
		length: {mm: 66},
		place: {verbatim: 'SW 465 304'},
		said: ['raja-clavata'],
	});
	// An answered question shows the choice and has no buttons left.
	await vi.waitFor(() => {
		const [, first] = said();
		expect(first?.message.text).toContain('→ Yes, like that');
		expect(first?.message.reply_markup?.inline_keyboard).toEqual([]);
	}, 20_000);
	expect(await db.selectFrom('outbox').select('id').where('state', '=', 'failed').execute()).toEqual([]);
	expect(lines.filter(({level}) => level === 'error')).toEqual([]);
});
