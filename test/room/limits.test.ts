import {expect, test} from 'vitest';
import {call, scene} from './scene.ts';

// Each row stands at a limit of the platform: `fits` is the most it takes, `breaks` the least it refuses.
// `id` is the limit's name in platform-limits.json, whose values come from @grammyjs/types 5.0.0.

type Row = {
	readonly id: string;
	readonly method: string;
	readonly fits: object;
	readonly breaks: object;
	readonly says: string;
};

function button(text: string, data: string): object {
	return {text: 'Which?', reply_markup: {inline_keyboard: [[{text, callback_data: data}]]}};
}

function buttons(count: number): object {
	const row = Array.from({length: count}, (_, at) => [{text: 'x', callback_data: String(at)}]);
	return {text: 'Which?', reply_markup: {inline_keyboard: row}};
}

function command(name: string, description = 'x'): object {
	return {commands: [{command: name, description}]};
}

const rows: readonly Row[] = [
	{
		id: 'message_text, most',
		method: 'sendMessage',
		fits: {text: `<b>${'x'.repeat(4096)}</b>`, parse_mode: 'HTML'},
		breaks: {text: 'x'.repeat(4097)},
		says: 'Bad Request: message is too long',
	},
	{
		id: 'message_text, least',
		method: 'sendMessage',
		fits: {text: 'x'},
		breaks: {text: ' \n '},
		says: 'Bad Request: message text is empty',
	},
	{
		id: 'callback_data, most bytes',
		method: 'sendMessage',
		fits: button('x', 'é'.repeat(32)),
		breaks: button('x', `${'é'.repeat(32)}x`),
		says: 'Bad Request: BUTTON_DATA_INVALID',
	},
	{
		id: 'callback_data, least',
		method: 'sendMessage',
		fits: button('x', '1'),
		breaks: button('x', ''),
		says: 'Bad Request: BUTTON_DATA_INVALID',
	},
	{
		id: 'inline_buttons_total',
		method: 'sendMessage',
		fits: buttons(100),
		breaks: buttons(101),
		says: 'Bad Request: reply markup is too long',
	},
	{
		id: 'input_placeholder',
		method: 'sendMessage',
		fits: {text: 'x', reply_markup: {force_reply: true, input_field_placeholder: 'x'.repeat(64)}},
		breaks: {text: 'x', reply_markup: {force_reply: true, input_field_placeholder: 'x'.repeat(65)}},
		says: 'Bad Request: input field placeholder is too long',
	},
	{
		id: 'start_payload, in a button',
		method: 'sendMessage',
		fits: {
			text: 'x',
			reply_markup: {inline_keyboard: [[{text: 'x', url: `https://t.me/b?start=${'a'.repeat(64)}`}]]},
		},
		breaks: {text: 'x', reply_markup: {inline_keyboard: [[{text: 'x', url: 'https://t.me/b?start=a%20b'}]]}},
		says: 'Bad Request: BUTTON_URL_INVALID',
	},
	{
		id: 'command, name',
		method: 'setMyCommands',
		fits: command('a_1'.padEnd(32, 'x')),
		breaks: command('Start'),
		says: 'Bad Request: BOT_COMMAND_INVALID',
	},
	{
		id: 'command, description',
		method: 'setMyCommands',
		fits: command('start', 'x'.repeat(256)),
		breaks: command('start', 'x'.repeat(257)),
		says: 'Bad Request: BOT_COMMAND_DESCRIPTION_INVALID',
	},
	{
		id: 'horizontal_accuracy',
		method: 'sendLocation',
		fits: {latitude: 56.3, longitude: -2.8, horizontal_accuracy: 1500},
		breaks: {latitude: 56.3, longitude: -2.8, horizontal_accuracy: 1501},
		says: 'Bad Request: parameter "horizontal_accuracy" is wrong or missing',
	},
];

for (const {id, method, fits, breaks, says} of rows) {
	test(`the room takes and refuses what the platform does (${id})`, async () => {
		const {room} = await scene();
		const ada = room.person('Ada');
		ada.sends('/start');
		expect(await call(room, method, {chat_id: ada.id, ...fits})).toMatchObject({ok: true});
		const refused = await call(room, method, {chat_id: ada.id, ...breaks});
		expect(refused).toMatchObject({ok: false, error_code: 400});
		expect(refused.description).toContain(says);
	});
}

test('an answer to a press has at most 200 characters (callback_answer_text)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	ada.sends('/start');
	const {queryId} = ada.presses('x', {messageId: 1});
	const long = await call(room, 'answerCallbackQuery', {callback_query_id: queryId, text: 'x'.repeat(201)});
	expect(long).toMatchObject({ok: false, error_code: 400});
	const short = await call(room, 'answerCallbackQuery', {callback_query_id: queryId, text: 'x'.repeat(200)});
	expect(short).toMatchObject({ok: true, result: true});
	expect(room.callbackAnswers().map(answer => answer.text)).toEqual(['x'.repeat(200)]);
});

test('people type at most 4096 characters and follow links of at most 64 (message_text, start_payload)', async () => {
	const {room} = await scene();
	const ada = room.person('Ada');
	expect(() => ada.sends('x'.repeat(4097))).toThrow('1 to 4096');
	expect(() => ada.opens('x'.repeat(65))).toThrow('1 to 64');
	expect(ada.opens('x'.repeat(64)).updateId).toBeDefined();
});
