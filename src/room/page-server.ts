import {existsSync} from 'node:fs';
import {readFile} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import type {HttpBindings} from '@hono/node-server';
import type {Hono} from 'hono';
import {fileBytes, fileWithId} from './files.ts';
import {serveActs} from './page-acts.ts';
import {serveLive} from './page-live.ts';
import type {PageRoom} from './page-room.ts';

const kinds: Readonly<Record<string, string>> = {
	css: 'text/css; charset=utf-8',
	js: 'text/javascript; charset=utf-8',
	html: 'text/html; charset=utf-8',
};
// A picture may be shown; anything else is only offered for saving, so that it never runs as a page.
const picture = /^image\/(?:png|jpeg|gif|webp)$/;

/** Serves the web page, its live events, the deeds of the people on it and the files they see. */
export function servePage(app: Hono<{Bindings: HttpBindings}>, room: PageRoom): void {
	const folder = join(packageRoot(), 'src', 'room', 'page');
	app.get('/', () => sendPart(folder, 'index.html'));
	app.get('/page/:name{[a-z-]+\\.(?:js|css)}', ctx => sendPart(folder, ctx.req.param('name')));
	app.get('/favicon.ico', ctx => ctx.body(null, 204));
	app.get('/room/file/:id', ctx => sendFile(room, ctx.req.param('id')));
	serveLive(app, room);
	serveActs(app, room);
}

async function sendPart(folder: string, name: string): Promise<Response> {
	const path = join(folder, name);
	if (!existsSync(path)) return new Response('There is nothing here.', {status: 404});
	const type = kinds[name.split('.').at(-1) ?? ''] ?? 'text/plain';
	return new Response(await readFile(path), {headers: {'content-type': type, 'cache-control': 'no-cache'}});
}

function sendFile(room: PageRoom, id: string): Response {
	const file = fileWithId(room.core, id);
	const bytes = fileBytes(room.core, id);
	if (file === undefined || bytes === undefined) return new Response('There is nothing here.', {status: 404});
	const type = file.path.endsWith('.png') ? 'image/png' : 'image/jpeg';
	const mime = file.kind === 'photo' ? type : (file.mime ?? '');
	const isShown = picture.test(mime);
	return new Response(new Uint8Array(bytes), {
		headers: {
			'content-type': isShown ? mime : 'application/octet-stream',
			'content-disposition': isShown
				? 'inline'
				: `attachment; filename*=UTF-8''${encodeURIComponent(file.name ?? 'file')}`,
			'cache-control': 'private, max-age=3600',
		},
	});
}

/** The compiled server lies deeper than its source, and the page's files stay with the source. */
function packageRoot(): string {
	let folder = import.meta.dirname;
	while (!existsSync(join(folder, 'package.json'))) {
		if (folder === dirname(folder)) {
			throw new Error(`Expected a package.json above ${import.meta.dirname}; there is none`);
		}
		folder = dirname(folder);
	}
	return folder;
}
