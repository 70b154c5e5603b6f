/**
 * A host of the Bot API that enforces the published limits and nothing else, written apart from the room and the
 * program. Numbers: grammY documentation, advanced/flood (site repository, commit 04f7f78a), quoting the platform's FAQ:
 * one message a second to one chat, 30 a second to many, 20 a minute to a group.
 */
import {createServer, type IncomingMessage, type ServerResponse} from 'node:http';
import {onTestFinished} from 'vitest';
import {z} from 'zod';

const published = {chatPerSecond: 1, overallPerSecond: 30, groupPerMinute: 20} as const;

const bodySchema = z.object({chat_id: z.number(), text: z.string().default('')});

/** A message that the host took, with the instant of its arrival (UTC ms of the host's clock). */
export type Taken = {readonly chat: number; readonly text: string; readonly at: number};

/** What the host does with a call instead of taking it; nothing to take it. */
export type Trouble =
	| {readonly kind: 'limit'; readonly retryAfterS: number}
	| {readonly kind: 'refuse'; readonly code: number; readonly description: string}
	| {readonly kind: 'hang-up'; readonly isTaken: boolean}
	| undefined;

export type StrictHost = Awaited<ReturnType<typeof strictHost>>;

type Options = {
	readonly now: () => number;
	/** Called as a message comes in, before it is looked at: the way there takes time. */
	readonly onArrival?: () => void;
	readonly trouble?: (chat: number, text: string) => Trouble;
	/** How long the answer takes, in real milliseconds. */
	readonly answerMs?: number;
};

/** Opens the host; it closes with the test. */
export async function strictHost(options: Options) {
	const taken: Taken[] = [];
	const refusals: Taken[] = [];
	const load = {now: 0, most: 0};
	const take = (chat: number, text: string): Trouble => {
		const at = options.now();
		const trouble = options.trouble?.(chat, text);
		if (trouble && !(trouble.kind === 'hang-up' && trouble.isTaken)) return trouble;
		const waitMs = waitFor(taken, chat, at);
		if (waitMs > 0) {
			refusals.push({chat, text, at});
			return {kind: 'limit', retryAfterS: Math.ceil(waitMs / 1000)};
		}
		taken.push({chat, text, at});
		return trouble;
	};
	const server = createServer(async (incoming, outgoing) => {
		if (!incoming.url?.endsWith('/sendMessage')) return answer(outgoing, 200, {ok: true, result: true});
		const {chat_id: chat, text} = bodySchema.parse(JSON.parse(await bodyOf(incoming)));
		options.onArrival?.();
		load.now += 1;
		load.most = Math.max(load.most, load.now);
		const trouble = take(chat, text);
		await new Promise(resolve => setTimeout(resolve, options.answerMs ?? 0));
		load.now -= 1;
		if (trouble?.kind === 'hang-up') return void incoming.socket.destroy();
		reply(outgoing, {trouble, chat, id: taken.length});
	});
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
	const address = server.address();
	if (address === null || typeof address === 'string') throw new Error('Expected a port of our own');
	onTestFinished(() => {
		server.closeAllConnections();
		server.close();
	});
	return {
		url: `http://127.0.0.1:${address.port}`,
		/** Every message taken, in order of arrival. */
		taken: (): readonly Taken[] => taken,
		/** Messages refused for coming too fast. */
		refusals: (): readonly Taken[] => refusals,
		/** The most calls under way at one time. */
		mostAtOnce: () => load.most,
	};
}

function waitFor(taken: readonly Taken[], chat: number, at: number): number {
	const within = (ms: number) => taken.filter(one => one.at > at - ms);
	const toChat = (ms: number) => within(ms).filter(one => one.chat === chat);
	const until = (list: readonly Taken[], most: number, ms: number) => {
		const first = list.at(-most);
		return list.length < most || !first ? 0 : first.at + ms - at;
	};
	return Math.max(
		until(within(1000), published.overallPerSecond, 1000),
		until(toChat(1000), published.chatPerSecond, 1000),
		chat < 0 ? until(toChat(60_000), published.groupPerMinute, 60_000) : 0,
	);
}

function reply(
	outgoing: ServerResponse,
	{trouble, chat, id}: {readonly trouble: Trouble; readonly chat: number; readonly id: number},
): void {
	if (trouble?.kind === 'limit') {
		const description = `Too Many Requests: retry after ${trouble.retryAfterS}`;
		const parameters = {retry_after: trouble.retryAfterS};
		answer(outgoing, 429, {ok: false, error_code: 429, description, parameters});
	} else if (trouble?.kind === 'refuse') {
		const {code, description} = trouble;
		answer(outgoing, code, {ok: false, error_code: code, description});
	} else {
		const result = {message_id: id, date: 0, chat: {id: chat, type: 'private'}, text: ''};
		answer(outgoing, 200, {ok: true, result});
	}
}

function answer(outgoing: ServerResponse, status: number, body: object): void {
	outgoing.writeHead(status, {'content-type': 'application/json'}).end(JSON.stringify(body));
}

async function bodyOf(incoming: IncomingMessage): Promise<string> {
	const chunks: Buffer[] = [];
	for await (const chunk of incoming) chunks.push(Buffer.from(chunk));
	return Buffer.concat(chunks).toString();
}
