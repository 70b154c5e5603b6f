/** A door between the program and the room, where a call can be held so that the program dies in the middle of it. */
import {createServer, type IncomingMessage, request, type ServerResponse} from 'node:http';
import {onTestFinished} from 'vitest';

/** `before` the room has heard of the call, or `after` it has done what was asked and before the answer. */
export type Moment = 'before' | 'after';

export type Gate = {
	readonly url: string;
	/** Holds the next call of a method for good; resolves once one is held. */
	readonly hold: (method: string, when: Moment) => Promise<void>;
};

type Rule = {readonly method: string; readonly when: Moment; readonly held: () => void};

/** Opens a gate in front of the room; it closes with the test. */
export async function openGate(roomUrl: string): Promise<Gate> {
	const rules: Rule[] = [];
	const isHeld = (path: string, when: Moment): boolean => {
		const at = rules.findIndex(rule => rule.when === when && path.endsWith(`/${rule.method}`));
		const [rule] = at < 0 ? [] : rules.splice(at, 1);
		rule?.held();
		return rule !== undefined;
	};
	const server = createServer((incoming, outgoing) => void pass({roomUrl, isHeld}, incoming, outgoing));
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
	const address = server.address();
	if (address === null || typeof address === 'string') throw new Error('Expected a port of our own');
	onTestFinished(() => {
		server.closeAllConnections();
		server.close();
	});
	return {
		url: `http://127.0.0.1:${address.port}`,
		hold: (method, when) =>
			new Promise(resolve => {
				rules.push({method, when, held: resolve});
			}),
	};
}

type Doorway = {readonly roomUrl: string; readonly isHeld: (path: string, when: Moment) => boolean};

async function pass(
	{roomUrl, isHeld}: Doorway,
	incoming: IncomingMessage,
	outgoing: ServerResponse,
): Promise<void> {
	const path = incoming.url ?? '';
	const body = await bytesOf(incoming);
	if (isHeld(path, 'before')) return;
	const {host: _own, ...headers} = incoming.headers;
	const call = request(new URL(path, roomUrl), {method: incoming.method ?? 'GET', headers});
	// A program that died hangs up, and the room may not hand its updates to nobody.
	outgoing.once('close', () => call.destroy());
	call.once('error', () => outgoing.destroy());
	call.once('response', async answer => {
		const answered = await bytesOf(answer);
		if (isHeld(path, 'after')) return;
		outgoing.writeHead(answer.statusCode ?? 500, answer.headers).end(answered);
	});
	call.end(body);
}

async function bytesOf(stream: IncomingMessage): Promise<Buffer> {
	const chunks: Buffer[] = [];
	try {
		for await (const chunk of stream) chunks.push(Buffer.from(chunk));
	} catch {
		// The other side hung up; what came so far is all there is.
	}
	return Buffer.concat(chunks);
}
