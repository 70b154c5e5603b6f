/** Whole conversations: a real database file, the real program, real HTTP to a room that plays the platform. */
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {onTestFinished, test} from 'vitest';
import {readFlow} from '../../src/find/flow.ts';
import {standAt} from '../../src/find/stand.ts';
import {trailSchema} from '../../src/find/trail.ts';
import {type Program, startProgram} from '../../src/program.ts';
import {groups} from '../../src/room/people.ts';
import {type Room, type RoomMessage, startRoom} from '../../src/room/server.ts';
import {projectRoot, readSettings} from '../../src/settings.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';

/** How a journey is made harder. */
export type Mode = 'plain' | 'delivered twice' | 'restarted after each update' | 'two at once in a group';

const everyMode: readonly Mode[] = [
	'plain',
	'delivered twice',
	'restarted after each update',
	'two at once in a group',
];
const begunAt = Date.UTC(2026, 4, 2, 9, 30);

/** A test of a whole conversation, run plainly and in the harder ways. */
export function journeyTest(
	name: string,
	walk: (journey: Journey) => Promise<void>,
	modes: readonly Mode[] = everyMode,
): void {
	for (const mode of modes) {
		test(`${name} (${mode})`, async () => {
			const journey = await beginJourney({mode});
			await walk(journey).catch(error => {
				throw journey.errors.length > 0 ? new Error(`In the log: ${JSON.stringify(journey.errors[0])}`, {cause: error}) : error;
			});
			journey.check();
		}, 60_000);
	}
}

export type JourneyOptions = {readonly mode?: Mode; readonly environment?: Readonly<Record<string, string>>};

export type Journey = Awaited<ReturnType<typeof beginJourney>>;
export type Actor = ReturnType<typeof actorIn>;

/** Starts a room and the program; everything ends with the test. */
export async function beginJourney({mode = 'plain', environment = {}}: JourneyOptions = {}) {
	const folder = mkdtempSync(join(tmpdir(), 'journey-'));
	const clock = stillClock();
	const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
	room.deliverTwice(mode === 'delivered twice');
	const settings = readSettings({
		BOT_TOKEN: room.token,
		BOT_API_ROOT: room.url,
		DATA_DIR: folder,
		...environment,
	});
	const errors: unknown[] = [];
	const log = (line: Readonly<Record<string, unknown>>) => void (isError(line) && errors.push(line));
	const open = () => startProgram(settings, {clock, log});
	const running = {program: await open()};
	const db = await openStore(settings.databaseFile);
	onTestFinished(async () => {
		await running.program.stop();
		await db.destroy();
		await room.stop();
		rmSync(folder, {recursive: true, force: true});
	});
	const restart = async () => {
		await running.program.stop();
		running.program = await open();
	};
	const world: World = {mode, room, clock, db, restart, settle: () => settle({room, db, clock})};
	const ben = mode === 'two at once in a group' ? actorIn(world, 'Ben', groups[0].id) : undefined;
	const ada = actorIn(world, 'Ada', ben ? groups[0].id : undefined, ben && (() => stumble(ben)));
	return {
		...world,
		ada,
		folder,
		settings,
		errors,
		/** A person in private chat, whatever the mode. */
		person: (name: string, chat?: number) => actorIn(world, name, chat),
		forward: async (ms: number) => {
			clock.forward(ms);
			await settle({room, db, clock});
		},
		/** Nothing went wrong behind the scenes. */
		check: () => {
			if (errors.length > 0)
				throw new Error(`Expected no errors in the log; got ${JSON.stringify(errors[0])}`);
		},
	};
}

/** Where the newest find of a person stands, replayed from the database. */
export async function newestFind(db: Db, platformId: number) {
	const row = await db
		.selectFrom('find')
		.innerJoin('person', 'person.id', 'find.person')
		.select(['find.id', 'find.trail', 'find.turn', 'find.state', 'find.uuid'])
		.where('person.platformId', '=', platformId)
		.orderBy('find.id', 'desc')
		.executeTakeFirstOrThrow();
	const trail = trailSchema.parse(JSON.parse(row.trail));
	const flow = readFlow(join(projectRoot(), 'flows'), 'british-isles');
	return {...row, trail, standing: standAt(flow, trail)};
}

type World = {
	readonly mode: Mode;
	readonly room: Room;
	readonly clock: ReturnType<typeof stillClock>;
	readonly db: Db;
	readonly restart: () => Promise<void>;
	readonly settle: () => Promise<void>;
};

/** A person who writes, presses and sends, and looks at what came back. */
function actorIn(world: World, name: string, group?: number, meanwhile?: () => Promise<void>) {
	const {room} = world;
	const person = room.person(name);
	const chat = group ?? person.id;
	const heard = () =>
		room.messages(chat).filter(message => message.from === 'bot' && isFor(message, name, group));
	const last = (): RoomMessage => {
		const message = heard().at(-1);
		if (!message) throw new Error(`Expected a message of the bot for ${name}; there is none`);
		return message;
	};
	// In a group only a reply to the bot's message reaches it.
	const replying = () => (group === undefined ? {} : {chat: group, replyTo: last().id});
	const done = async () => {
		await world.settle();
		if (world.mode === 'restarted after each update') {
			await world.restart();
			await world.settle();
		}
		await meanwhile?.();
	};
	const deed = async (act: () => unknown) => {
		act();
		await done();
	};
	return {
		id: person.id,
		chat,
		room: person,
		get sees(): RoomMessage {
			return last();
		},
		get all(): readonly RoomMessage[] {
			return heard();
		},
		labels: () =>
			last()
				.buttons.flat()
				.map(button => button.text),
		sends: (text: string) =>
			deed(() => person.sends(text, text.startsWith('/') ? {chat} : {chat, ...replying()})),
		photo: (bytes: Uint8Array, options: {asFile?: boolean; fileName?: string; mimeType?: string} = {}) =>
			deed(() => person.photo(bytes, {chat, ...replying(), ...options})),
		album: (photos: readonly Uint8Array[]) => deed(() => person.album(photos, {chat, ...replying()})),
		location: (latitude: number, longitude: number, accuracyM?: number) =>
			deed(() =>
				person.location(latitude, longitude, {
					chat,
					...replying(),
					...(accuracyM === undefined ? {} : {accuracyM}),
				}),
			),
		deed,
		/** Presses the button with this label on the last message, or on an older one. */
		presses: (label: string, {on = last()}: {on?: RoomMessage} = {}) => {
			const button = on.buttons.flat().find(({text}) => text === label || text.startsWith(`${label} `));
			if (!button) {
				const labels = on.buttons.flat().map(({text}) => text);
				throw new Error(
					`Expected a button "${label}" under "${on.text.slice(0, 80)}"; it has ${labels.join(' | ')}`,
				);
			}
			return deed(() => person.presses(button.data, {chat, messageId: on.id}));
		},
	};
}

/** In a group every question begins with the name of whom it is for. */
function isFor(message: RoomMessage, name: string, group: number | undefined): boolean {
	return (
		group === undefined ||
		message.text.startsWith(`${name}:`) ||
		message.text.startsWith('Finder of') ||
		!/^(?:Ada|Ben):/.test(message.text)
	);
}

/** Ben has a find of his own and answers it while Ada goes on. */
async function stumble(ben: {
	labels: () => readonly string[];
	room: {sends: (text: string, options: {chat: number}) => unknown};
	chat: number;
}): Promise<void> {
	ben.room.sends('/find', {chat: ben.chat});
}

async function settle({
	room,
	db,
	clock,
}: {
	room: Room;
	db: Db;
	clock: ReturnType<typeof stillClock>;
}): Promise<void> {
	const until = Date.now() + 15_000;
	for (;;) {
		await room.idle();
		const waiting = await db
			.selectFrom('outbox')
			.select(['notBefore', 'state', 'content'])
			.where('state', 'in', ['waiting', 'sending'])
			.execute();
		const photos = await db.selectFrom('photo').select('id').where('state', '=', 'wanted').execute();
		const due = await db
			.selectFrom('reminder')
			.select('id')
			.where('doneAt', 'is', null)
			.where('dueAt', '<=', clock.now())
			.execute();
		if (waiting.length + photos.length + due.length + room.pendingUpdates() === 0) return;
		const soonest = Math.min(...waiting.map(row => row.notBefore));
		if (waiting.length > 0 && soonest > clock.now() && soonest - clock.now() < 5000)
			clock.forward(soonest - clock.now());
		if (Date.now() > until)
			throw new Error(`Expected the outbox to run dry; ${JSON.stringify(waiting.slice(0, 2))} waits`);
		await new Promise(resolve => setTimeout(resolve, 5));
	}
}

function isError(line: Readonly<Record<string, unknown>>): boolean {
	const {level} = line;
	return level === 'error';
}

function stillClock() {
	let now = begunAt;
	return {
		now: () => now,
		forward: (ms: number) => {
			now += ms;
		},
	};
}

export type {Program};
