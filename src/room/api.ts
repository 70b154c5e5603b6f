import type {HttpBindings} from '@hono/node-server';
import {RESPONSE_ALREADY_SENT} from '@hono/node-server/utils/response';
import type {Context, Hono} from 'hono';
import {z} from 'zod';
import type {Body} from './body.ts';
import {readBody} from './body.ts';
import type {Core} from './core.ts';
import type {Faults} from './faults.ts';
import {fileAtPath, fileBytes} from './files.ts';
import {methodNamed} from './methods/methods.ts';
import type {Polling} from './polling.ts';
import {refusal, refusalIn} from './refusal.ts';
import type {Webhook} from './webhook.ts';

/** What the Bot API needs besides the room itself. */
export type Api = {
	readonly core: Core;
	readonly token: string;
	readonly polling: Polling;
	readonly webhook: Webhook;
	readonly faults: Faults;
	/** Hears of faults of the room's own. */
	readonly onError: (error: unknown) => void;
};

type RoomContext = Context<{Bindings: HttpBindings}>;

// The largest file, plus room for the other parts of the form.
const requestBytesMax = 51_000_000;
const chatSchema = z.object({chat_id: z.coerce.number().int()});
const retrySchema = z.object({retry_after: z.number()});

/** Puts the Bot API under `/bot<token>/<method>` and `/file/bot<token>/<path>`. */
export function serveApi(app: Hono<{Bindings: HttpBindings}>, api: Api): void {
	app.on(['GET', 'POST'], '*', async (ctx, next) => {
		const path = decodeURIComponent(new URL(ctx.req.url).pathname);
		const file = /^\/file\/bot([^/]+)\/(.+)$/.exec(path);
		if (file !== null) return sendFile(api, {token: file[1] ?? '', path: file[2] ?? ''});
		const call = /^\/bot([^/]+)\/([^/]*)$/.exec(path);
		if (call === null) return next();
		if (call[1] !== api.token) return answerError(refusal(401, 'Unauthorized'), api);
		return answer(ctx, api, call[2] ?? '');
	});
}

async function answer(ctx: RoomContext, api: Api, asked: string): Promise<Response> {
	try {
		const found = methodNamed(asked);
		if (found === undefined) throw refusal(404, 'Not Found');
		if (Number(ctx.req.header('content-length') ?? 0) > requestBytesMax) {
			throw refusal(413, 'Request Entity Too Large');
		}
		const body = await bodyOf(ctx);
		const dropped = api.faults.meet(found.name, chatOf(body));
		if (dropped === 'before') return hangUp(ctx);
		const result = await found.method({...body, ...api, hangUp: signalOf(ctx)});
		return dropped === 'after' ? hangUp(ctx) : ctx.json({ok: true, result});
	} catch (error) {
		return answerError(error, api);
	}
}

async function bodyOf(ctx: RoomContext): Promise<Body> {
	try {
		return await readBody(ctx.req.raw);
	} catch {
		throw refusal(400, "Bad Request: can't parse the request body");
	}
}

function chatOf(body: Body): number | undefined {
	return chatSchema.safeParse(body.fields).data?.chat_id;
}

function answerError(error: unknown, api: Api): Response {
	const refused = refusalIn(error);
	if (refused === undefined) api.onError(error);
	const {code, description, parameters} = refused ?? {code: 500, description: 'Internal Server Error'};
	const extra = parameters === undefined ? {} : {parameters};
	return new Response(JSON.stringify({ok: false, error_code: code, description, ...extra}), {
		status: code,
		headers: {'content-type': 'application/json', ...(refused === undefined ? {} : retryHeader(parameters))},
	});
}

function retryHeader(parameters: Readonly<Record<string, unknown>> | undefined): Record<string, string> {
	const read = retrySchema.safeParse(parameters);
	return read.success ? {'retry-after': String(read.data.retry_after)} : {};
}

function signalOf(ctx: RoomContext): AbortSignal {
	const gone = new AbortController();
	ctx.env.outgoing.once('close', () => gone.abort());
	return gone.signal;
}

function hangUp(ctx: RoomContext): Response {
	ctx.env.incoming.socket.destroy();
	return RESPONSE_ALREADY_SENT;
}

type FileAsked = {readonly token: string; readonly path: string};

function sendFile(api: Api, asked: FileAsked): Response {
	const file = asked.token === api.token ? fileAtPath(api.core, asked.path) : undefined;
	const bytes = file === undefined ? undefined : fileBytes(api.core, file.id);
	if (bytes === undefined) return answerError(refusal(404, 'Not Found'), api);
	return new Response(new Uint8Array(bytes), {headers: {'content-type': 'application/octet-stream'}});
}
