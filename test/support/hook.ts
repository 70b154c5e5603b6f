/** A journey by webhook, into which a test can also put updates that the room cannot make. */
import {createServer} from 'node:http';
import {beginJourney} from './journey.ts';

const secret = 'se-cret_1';
const firstUpdateId = 900_000_000;

/** The account that stands for a group's anonymous administrators (tdlib/telegram-bot-api#667). */
export const anonymousAdministrator = {
	id: 1_087_968_824,
	is_bot: true,
	first_name: 'Group',
	username: 'GroupAnonymousBot',
} as const;

/** Starts room and program, which listens under an address of its own. */
export async function hookedJourney(environment: Readonly<Record<string, string>> = {}) {
	const port = await freePort();
	const root = `http://127.0.0.1:${port}`;
	const url = `${root}/hook`;
	const journey = await beginJourney({
		environment: {PUBLIC_URL: url, WEBHOOK_SECRET: secret, WEBHOOK_PORT: String(port), ...environment},
	});
	let updateId = firstUpdateId;
	/** Hands an update over and does not wait for what it leads to; gives the HTTP status of the answer. */
	const hand = async (update: object, given = secret) => {
		const answer = await fetch(url, {
			method: 'POST',
			headers: {'content-type': 'application/json', 'x-telegram-bot-api-secret-token': given},
			body: JSON.stringify(update),
		});
		await answer.text();
		return answer.status;
	};
	/** Hands a message over under the next number of an update. */
	const handMessage = (message: object) => {
		updateId += 1;
		return hand({update_id: updateId, message: {date: 1, message_id: updateId, ...message}});
	};
	return {
		...journey,
		root,
		hand,
		handMessage,
		/** Hands a message over and waits for what it leads to. */
		deliver: async (message: object) => {
			await handMessage(message);
			await journey.settle();
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
