import type {Server} from 'node:http';
import {createServer} from 'node:http';
import type {HttpBindings} from '@hono/node-server';
import {getRequestListener} from '@hono/node-server';
import {Hono} from 'hono';
import {z} from 'zod';
import {serveApi} from './api.ts';
import type {Core, RoomClock} from './core.ts';
import {openChanges, readSetting, writeSetting} from './core.ts';
import {openDatabase} from './database.ts';
import type {CallMade, DropRule, Faults, RefuseRule} from './faults.ts';
import {openFaults} from './faults.ts';
import {fileBytes} from './files.ts';
import {guardOrigin} from './guard.ts';
import type {RoomPerson} from './handles.ts';
import {roomPerson} from './handles.ts';
import {messagesIn} from './messages.ts';
import {servePage} from './page-server.ts';
import {makeGroups} from './people.ts';
import {openPolling} from './polling.ts';
import type {CallbackAnswer} from './press.ts';
import {answersSince} from './press.ts';
import type {RoomMessage} from './snapshot.ts';
import {snapshot} from './snapshot.ts';
import {repeatLastUpdate, waitingCount} from './updates.ts';
import {openWebhook} from './webhook.ts';

export type {RoomClock} from './core.ts';
export type {RoomPerson} from './handles.ts';
export type {RoomButton, RoomMessage} from './snapshot.ts';

/** How a room is started: its port on loopback (0 for any free one), its folder, its clock. */
export type RoomOptions = {
	readonly port: number;
	readonly folder: string;
	readonly clock: RoomClock;
	readonly token?: string;
	/** Refuses too many messages in too short a time with 429. */
	readonly limits?: boolean;
	/** Hears of faults of the room's own; without it they are only answered with 500. */
	readonly onError?: (error: unknown) => void;
};

/** A running room. The last nine are for tests. */
export type Room = {
	readonly url: string;
	readonly token: string;
	readonly stop: () => Promise<void>;
	readonly person: (name: string) => RoomPerson;
	readonly messages: (chat: number) => readonly RoomMessage[];
	readonly fileBytes: (fileId: string) => Uint8Array | undefined;
	readonly callbackAnswers: () => readonly CallbackAnswer[];
	readonly deliverTwice: (on: boolean) => void;
	readonly repeatLast: () => void;
	readonly refuse: (rule: RefuseRule) => void;
	readonly dropConnection: (rule: DropRule) => void;
	readonly calls: () => readonly CallMade[];
	readonly pendingUpdates: () => number;
	/** Resolves when no update is left that was not delivered and confirmed. */
	readonly idle: () => Promise<void>;
	/** Resolves with the next change: a message, an edit, an answer, a confirmed update. */
	readonly nextChange: () => Promise<void>;
	/** Moves the room's time ahead, as the page's buttons do. */
	readonly forward: (ms: number) => void;
};

/** Starts the room; throws when the port is taken. */
export async function startRoom(options: RoomOptions): Promise<Room> {
	const db = openDatabase(options.folder);
	const core: Core = {db, clock: options.clock, changes: openChanges()};
	makeGroups(core);
	const shift = readSetting(core, 'shift', z.number()) ?? 0;
	if (shift > 0) options.clock.forward(shift);

	const token = options.token ?? '900001:local-room';
	const polling = openPolling(core);
	const webhook = openWebhook(core);
	const faults = openFaults(core, options.limits ?? false);
	const stopping = new AbortController();
	const app = new Hono<{Bindings: HttpBindings}>();
	const server = createServer(getRequestListener(app.fetch));
	app.use('*', guardOrigin);
	serveApi(app, {core, token, polling, webhook, faults, onError: options.onError ?? (() => undefined)});
	servePage(app, {core, stopping: stopping.signal, forward: ms => moveClock(core, ms)});
	const port = await listen(server, options.port);

	return {
		url: `http://127.0.0.1:${port}`,
		token,
		stop: async () => {
			stopping.abort();
			polling.end('Conflict: the room closes');
			await webhook.stop();
			await close(server);
			db.close();
		},
		...handles(core, faults),
	};
}

function handles(core: Core, faults: Faults): Omit<Room, 'url' | 'token' | 'stop'> {
	return {
		person: name => roomPerson(core, name),
		messages: chat => messagesIn(core, chat).map(kept => snapshot(core, kept)),
		fileBytes: id => fileBytes(core, id),
		callbackAnswers: () => answersSince(core, 0),
		deliverTwice: on => writeSetting(core, 'deliver_twice', on),
		repeatLast: () => {
			repeatLastUpdate(core);
		},
		refuse: faults.refuse,
		dropConnection: faults.drop,
		calls: faults.calls,
		pendingUpdates: () => waitingCount(core),
		idle: async () => {
			while (waitingCount(core) > 0) await nextTold(core);
		},
		nextChange: () => nextTold(core),
		forward: ms => moveClock(core, ms),
	};
}

function nextTold(core: Core): Promise<void> {
	return new Promise(resolve => {
		const stop = core.changes.listen(() => {
			stop();
			resolve();
		});
	});
}

function moveClock(core: Core, ms: number): void {
	core.clock.forward(ms);
	writeSetting(core, 'shift', (readSetting(core, 'shift', z.number()) ?? 0) + ms);
}

function listen(server: Server, port: number): Promise<number> {
	return new Promise((resolve, reject) => {
		server.once('error', error => {
			reject(new Error(`Expected port ${port} of this machine to be free for the room`, {cause: error}));
		});
		server.listen(port, '127.0.0.1', () => {
			const address = server.address();
			resolve(typeof address === 'object' && address !== null ? address.port : port);
		});
	});
}

function close(server: Server): Promise<void> {
	return new Promise(resolve => {
		server.close(() => resolve());
		server.closeAllConnections();
	});
}
