/** The program at an emulator of the platform that nobody here wrote: telegram-test-api 4.2.1. */
import {mkdtempSync, rmSync} from 'node:fs';
import {createServer} from 'node:http';
import {join} from 'node:path';
import {TelegramServer} from 'telegram-test-api/lib/telegramServer.js';
import {onTestFinished, vi} from 'vitest';
import {z} from 'zod';
import {startProgram} from '../../src/program.ts';
import {readSettings} from '../../src/settings.ts';
import {openStore} from '../../src/store/open.ts';
import {quickFolder} from './folder.ts';

const token = '666:emulated';
const chatId = 77;

const historySchema = z.array(
	z.object({
		messageId: z.number(),
		message: z.object({
			text: z.string(),
			chat_id: z.union([z.number(), z.string()]),
			reply_markup: z
				.object({inline_keyboard: z.array(z.array(z.object({text: z.string(), callback_data: z.string()})))})
				.optional(),
		}),
	}),
);

/** A message of the bot as it stands at the emulator. */
export type Emulated = z.infer<typeof historySchema>[number];

/** Starts emulator and program; both end with the test. */
export async function emulated() {
	const server = new TelegramServer({port: await freePort(), host: '127.0.0.1'});
	await server.start();
	const folder = mkdtempSync(join(quickFolder(), 'emulated-'));
	const settings = readSettings({BOT_TOKEN: token, BOT_API_ROOT: server.config.apiURL, DATA_DIR: folder});
	const lines: Readonly<Record<string, unknown>>[] = [];
	const clock = {now: Date.now, forward: () => undefined};
	const program = await startProgram(settings, {
		clock,
		log: line => void lines.push(line),
		// The emulator knows no photos, so every picture is still being drawn when its words go.
		drawer: {draw: () => new Promise(() => undefined), stop: async () => undefined},
	});
	const db = await openStore(settings.databaseFile);
	onTestFinished(async () => {
		await program.stop();
		await db.destroy();
		await server.stop();
		rmSync(folder, {recursive: true, force: true});
	});
	const client = server.getClient(token, {userId: chatId, chatId, firstName: 'Ada', timeout: 20_000});
	const said = (): readonly Emulated[] => historySchema.parse(server.storage.botMessages);
	const next = async (act: () => Promise<unknown>): Promise<Emulated> => {
		const before = said().length;
		await act();
		await vi.waitFor(() => {
			if (said().length <= before) throw new Error('Expected the bot to say something');
		}, 20_000);
		const last = said().at(-1);
		if (!last) throw new Error('Expected a message of the bot; there is none');
		return last;
	};
	return {
		db,
		lines,
		said,
		commands: (text: string) => next(() => client.sendCommand(client.makeCommand(text))),
		writes: (text: string) => next(() => client.sendMessage(client.makeMessage(text))),
		presses: (on: Emulated, label: string) => {
			const buttons = on.message.reply_markup?.inline_keyboard.flat();
			const button = buttons?.find(({text}) => text.replace(/^[A-D]\u2002/, '') === label);
			if (!button) throw new Error(`Expected a button "${label}" under "${on.message.text}"`);
			const message = {message_id: on.messageId, date: 1};
			return next(() => client.sendCallback(client.makeCallbackQuery(button.callback_data, {message})));
		},
	};
}

async function freePort(): Promise<number> {
	const server = createServer();
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
	const address = server.address();
	await new Promise<void>(resolve => server.close(() => resolve()));
	if (address === null || typeof address === 'string') throw new Error('Expected a port of our own');
	return address.port;
}
