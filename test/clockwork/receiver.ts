/** A real server on loopback that checks signatures and answers as a test tells it to. */
import {createServer, type IncomingMessage, type ServerResponse} from 'node:http';
import {Webhook} from 'standardwebhooks';

export type Heard = {readonly webhookId: string; readonly body: string; readonly valid: boolean};

export type Receiver = {
	readonly url: string;
	readonly heard: readonly Heard[];
	/** What is answered from now on; `hang` never answers. */
	answer: (next: Answer) => void;
	readonly close: () => Promise<void>;
};

export type Answer =
	| {readonly status: number; readonly headers?: Readonly<Record<string, string>>}
	| 'hang'
	| (() => Promise<void>);

/** Starts a receiver that knows `secret` and answers 204 until told otherwise; `now` is the time by its own clock. */
export async function startReceiver(secret: string, now?: () => number): Promise<Receiver> {
	const heard: Heard[] = [];
	let next: Answer = {status: 204};
	const server = createServer((request, response) => {
		void take(request, (body, headers) => isValid({secret, now}, body, headers)).then(one => {
			heard.push(one);
			return reply(response, next);
		});
	});
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
	const address = server.address();
	if (address === null || typeof address === 'string') throw new Error('Expected a port of our own');
	return {
		url: `http://127.0.0.1:${address.port}/records`,
		heard,
		answer: given => {
			next = given;
		},
		close: () =>
			new Promise(resolve => {
				server.close(() => resolve());
				server.closeAllConnections();
			}),
	};
}

type Check = (body: string, headers: Record<string, string>) => boolean;

async function take(request: IncomingMessage, check: Check): Promise<Heard> {
	const chunks: Buffer[] = [];
	for await (const chunk of request) chunks.push(Buffer.from(chunk));
	const body = Buffer.concat(chunks).toString('utf8');
	const headers = Object.fromEntries(
		Object.entries(request.headers).map(([name, value]) => [name, String(value)]),
	);
	return {webhookId: headers['webhook-id'] ?? '', body, valid: check(body, headers)};
}

type Known = {readonly secret: string; readonly now: (() => number) | undefined};

function isValid({secret, now}: Known, body: string, headers: Record<string, string>): boolean {
	const webhook = new Webhook(secret);
	if (now !== undefined) {
		// `verify` knows only the machine's own clock.
		const signedAt = Number(headers['webhook-timestamp']) * 1000;
		const signature = webhook.sign(headers['webhook-id'] ?? '', new Date(signedAt), body);
		return Math.abs(now() - signedAt) < 300_000 && headers['webhook-signature'] === signature;
	}
	try {
		webhook.verify(body, headers);
		return true;
	} catch {
		return false;
	}
}

async function reply(response: ServerResponse, answer: Answer): Promise<void> {
	if (answer === 'hang') return;
	if (typeof answer === 'function') {
		await answer();
		response.writeHead(204).end();
		return;
	}
	response.writeHead(answer.status, answer.headers).end('thanks');
}
