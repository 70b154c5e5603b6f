/** How long people wait for an answer while very many others are being told something, and when nobody is. */
import {createServer, type IncomingMessage, request, type ServerResponse} from 'node:http';
import {join} from 'node:path';
import {setTimeout as sleep} from 'node:timers/promises';
import {readShelves, startProgram} from '../../src/program.ts';
import {type Room, startRoom} from '../../src/room/server.ts';
import {projectRoot, readSettings} from '../../src/settings.ts';
import {tellMany} from '../../src/store/broadcasts.ts';
import {ledgerOf} from '../../src/store/deliveries.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {noonZone} from '../support/noon.ts';
import {exampleDay} from '../survey/days.ts';
import {inMs, median, percentile} from './table.ts';

const people = 50_000;
/** Chats of the crowd have ids from here on; the room knows none of them. */
const crowdFrom = 10_000_000;
const questions = 80;
const dayMs = 24 * 3_600_000;
/** Between two questions, as somebody reads and presses. */
const restMs = 40;

/** The most that waiting may grow while a crowd is told; the middle of all answers. */
export const mostRatio = 2;

/** Measures answers without and with a broadcast to 50,000, in one run of one program; gives rows and their ratio. */
export async function measureTelling(
	folder: string,
): Promise<{readonly rows: readonly (readonly string[])[]; readonly ratio: number}> {
	const clock = {now: Date.now, forward: () => undefined};
	const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
	const door = await openDoor(room.url);
	const settings = readSettings({BOT_TOKEN: room.token, BOT_API_ROOT: door.url, DATA_DIR: folder});
	const program = await startProgram(settings, {
		clock,
		log: () => undefined,
		shelves: readShelves(join(projectRoot(), 'flows'), settings.region),
		drawer: {draw: () => new Promise(() => undefined), stop: async () => undefined},
	});
	const db = await openStore(settings.databaseFile);
	try {
		const ada = room.person('Ada');
		ada.sends('/start');
		await sleep(500);
		await fillCrowd(db);
		// The first answers pay for what is done once.
		await answerTimes(room, door);
		const alone = await answerTimes(room, door);
		const broadcast = await begin(db);
		const listed = await listMade(db, broadcast);
		const beganAt = Date.now();
		const before = (await ledgerOf(db, broadcast)).sent;
		const beside = await answerTimes(room, door);
		const after = (await ledgerOf(db, broadcast)).sent;
		const perSecond = (after - before) / ((Date.now() - beganAt) / 1000);
		const row = (name: string, times: readonly number[]) => [
			name,
			inMs(median(times)),
			inMs(percentile(times, 0.95)),
		];
		return {
			rows: [
				['', 'median', '95 in 100'],
				row('nobody is told', alone),
				[`their list is made in ${(listed / 1000).toFixed(1)} s`],
				row(`${people} are told, ${perSecond.toFixed(1)} a second`, beside),
			],
			ratio: median(beside) / median(alone),
		};
	} finally {
		await program.stop();
		await db.destroy();
		await room.stop();
		door.close();
	}
}

async function answerTimes(room: Room, door: Door): Promise<readonly number[]> {
	const ada = room.person('Ada');
	const times: number[] = [];
	for (let index = 0; index < questions; index += 1) {
		const answered = door.nextAnswer();
		const began = performance.now();
		ada.sends('/help');
		await answered;
		times.push(performance.now() - began);
		await sleep(restMs);
	}
	return times;
}

/** Waits until the list is made and the sending has begun; gives milliseconds. */
async function listMade(db: Db, broadcast: number): Promise<number> {
	const began = performance.now();
	for (;;) {
		const row = db.selectFrom('broadcast').select('state').where('id', '=', broadcast);
		if ((await row.executeTakeFirstOrThrow()).state === 'running') return performance.now() - began;
		await sleep(20);
	}
}

async function fillCrowd(db: Db): Promise<void> {
	const at = {createdAt: Date.now()};
	const zone = noonZone();
	for (let first = 0; first < people; first += 500) {
		const indexes = Array.from({length: 500}, (_, index) => first + index);
		await db.transaction().execute(async tx => {
			const person = {language: 'en', zone, isZoneChosen: 1 as const, region: null, welcomedAt: null};
			await tx
				.insertInto('person')
				.values(indexes.map(index => ({id: 100 + index, platformId: crowdFrom + index, ...person, ...at})))
				.execute();
			await tx
				.insertInto('chat')
				.values(indexes.map(index => ({id: 100 + index, kind: 'private' as const, goneAt: null, ...at})))
				.execute();
			await tx
				.insertInto('chatAddress')
				.values(indexes.map(index => ({platformId: crowdFrom + index, chat: 100 + index})))
				.execute();
			const wish = {
				kind: 'coast' as const,
				region: 'british-isles',
				coordinator: null,
				latitude: null,
				longitude: null,
			};
			await tx
				.insertInto('audience')
				.values(indexes.map(index => ({chat: 100 + index, person: 100 + index, ...wish, ...at})))
				.execute();
		});
		await sleep(1);
	}
}

async function begin(db: Db): Promise<number> {
	const now = Date.now();
	const startsAt = now + 3 * dayMs;
	const day = {...exampleDay, startsAt, endsAt: startsAt + 3_600_000};
	return db.transaction().execute(async tx => {
		const stored = {
			uuid: 'day-1',
			code: 'code-1',
			person: 100,
			region: 'british-isles',
			state: 'published' as const,
		};
		const {id} = await tx
			.insertInto('day')
			.values({
				...stored,
				plan: null,
				askedForResultAt: null,
				turn: 1,
				body: JSON.stringify(day),
				startsAt,
				endsAt: day.endsAt,
				createdAt: now,
				changedAt: now,
			})
			.returning('id')
			.executeTakeFirstOrThrow();
		const body = JSON.stringify({uuid: 'day-1', sequence: 1, region: 'british-isles', coordinator: 100, day});
		return tellMany(tx, {day: id, kind: 'announced', dueAt: now, uselessAt: startsAt, body, now});
	});
}

type Door = {
	readonly url: string;
	/** Resolves once the next message of the bot has come to the room. */
	readonly nextAnswer: () => Promise<void>;
	readonly close: () => void;
};

/** A door before the room that answers for the crowd and lets everything else through. */
async function openDoor(roomUrl: string): Promise<Door> {
	let onAnswer = () => {};
	const server = createServer(
		(incoming, outgoing) => void pass(roomUrl, incoming, outgoing, () => onAnswer()),
	);
	await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
	const address = server.address();
	if (address === null || typeof address === 'string') throw new Error('Expected a port of our own');
	return {
		url: `http://127.0.0.1:${address.port}`,
		nextAnswer: () =>
			new Promise(resolve => {
				onAnswer = resolve;
			}),
		close: () => {
			server.closeAllConnections();
			server.close();
		},
	};
}

async function pass(
	roomUrl: string,
	incoming: IncomingMessage,
	outgoing: ServerResponse,
	onAnswer: () => void,
): Promise<void> {
	const chunks: Buffer[] = [];
	for await (const chunk of incoming) chunks.push(Buffer.from(chunk));
	const body = Buffer.concat(chunks);
	const isForCrowd =
		/\/send\w+$/.test(incoming.url ?? '') && /chat_id"?[^0-9]{1,60}1\d{7}/.test(body.toString('latin1'));
	if (isForCrowd) {
		const message = {message_id: 1, date: 0, chat: {id: 1, type: 'private'}};
		outgoing.writeHead(200, {'content-type': 'application/json'});
		outgoing.end(JSON.stringify({ok: true, result: message}));
		return;
	}
	const {host: _, ...headers} = incoming.headers;
	const call = request(new URL(incoming.url ?? '', roomUrl), {method: incoming.method ?? 'GET', headers});
	outgoing.once('close', () => call.destroy());
	call.once('error', () => outgoing.destroy());
	call.once('response', answer => {
		outgoing.writeHead(answer.statusCode ?? 500, answer.headers);
		answer.pipe(outgoing);
		if (incoming.url?.endsWith('/sendMessage')) onAnswer();
	});
	call.end(body);
}
