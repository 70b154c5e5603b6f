/** Whole conversations: a real database file, the real program, real HTTP to a room that plays the platform. */
import {mkdtempSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {onTestFinished, test} from 'vitest';
import type {Measurer} from '../../src/clockwork/measurer.ts';
import {readFlow} from '../../src/find/flow.ts';
import {standAt} from '../../src/find/stand.ts';
import {trailSchema} from '../../src/find/trail.ts';
import {type Program, readShelves, startProgram} from '../../src/program.ts';
import {groups} from '../../src/room/people.ts';
import {type Room, startRoom} from '../../src/room/server.ts';
import {projectRoot, readSettings} from '../../src/settings.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {type Actor, actorIn, type Mode, type World} from './actor.ts';
import {stumbling, welcome} from './ben.ts';
import {quickDrawer, testPictureMs} from './drawer.ts';
import {quickFolder} from './folder.ts';
import {leftToTell} from './left-to-tell.ts';
import {quickMeasurer} from './measurer.ts';

const everyMode: readonly Mode[] = [
	'plain',
	'delivered twice',
	'restarted after each update',
	'two at once in a group',
];
const usuallyBegunAt = Date.UTC(2026, 4, 2, 9, 30);

/** Which harder ways a journey takes, when it begins (UTC ms), and under which settings. */
export type Conditions = Omit<JourneyOptions, 'mode'> & {readonly modes?: readonly Mode[]};

/** A test of a whole conversation, run plainly and in the harder ways. */
export function journeyTest(
	name: string,
	walk: (journey: Journey) => Promise<void>,
	how: readonly Mode[] | Conditions = {},
): void {
	const {modes = everyMode, ...options}: Conditions = isModes(how) ? {modes: how} : how;
	for (const mode of modes) {
		test(`${name} (${mode})`, async () => {
			const journey = await beginJourney({mode, ...options});
			await walk(journey).catch(error => {
				throw journey.errors.length > 0
					? new Error(`In the log: ${JSON.stringify(journey.errors[0])}`, {cause: error})
					: error;
			});
			journey.check();
		}, 60_000);
	}
}

/** Ways for the entries of a list: the first in all of them, the others, which differ in a word alone, plainly. */
export function waysOfEntry(index: number): readonly Mode[] {
	return index === 0 ? everyMode : ['plain'];
}

export type JourneyOptions = {
	readonly mode?: Mode;
	readonly environment?: Readonly<Record<string, string>>;
	readonly begunAt?: number;
	/** What is seen on photos, where it is not measured. */
	readonly measure?: Measurer['measure'];
};

export type Journey = Awaited<ReturnType<typeof beginJourney>>;

/** Starts a room and the program; everything ends with the test. */
export async function beginJourney({
	mode = 'plain',
	environment = {},
	begunAt = usuallyBegunAt,
	measure,
}: JourneyOptions = {}) {
	const folder = mkdtempSync(join(quickFolder(), 'journey-'));
	const clock = stillClock(begunAt);
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
	const open = () =>
		startProgram(settings, {
			clock,
			log,
			shelves: everyShelf(),
			drawer: quickDrawer(join(folder, 'photos')),
			measurer: measure ? {measure, stop: async () => undefined} : quickMeasurer(),
			pictureMs: testPictureMs,
		});
	const running = {program: await open()};
	const db = await openStore(settings.databaseFile);
	onTestFinished(async () => {
		await running.program.stop();
		await db.destroy();
		await room.stop();
		rmSync(folder, {recursive: true, force: true});
	});
	/** The program is away for so long, and comes back. */
	const away = async (ms: number) => {
		await running.program.stop();
		clock.forward(ms);
		running.program = await open();
	};
	const restart = () => away(0);
	const world: World = {mode, room, clock, db, restart, settle: () => settle({room, db, clock})};
	const ben = mode === 'two at once in a group' ? actorIn(world, 'Ben', groups[0].id) : undefined;
	const ada = actorIn(world, 'Ada', ben ? groups[0].id : undefined, ben && stumbling(ben));
	if (ben) await welcome(actorIn(world, 'Ben'));
	return {
		...world,
		ada,
		folder,
		settings,
		errors,
		/** The code that makes whoever brings it the owner, until somebody did. */
		ownerCode: () => running.program.claim?.code,
		/** A person in private chat, whatever the mode. */
		person: (name: string, chat?: number) => actorIn(world, name, chat),
		forward: async (ms: number) => {
			clock.forward(ms);
			await settle({room, db, clock});
		},
		/** The program is down for so long, and settles once it is back. */
		away: async (ms: number) => {
			await away(ms);
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
	return {...row, ...replayed(row.trail)};
}

/** Where a find stands, replayed from its stored trail. */
export function replayed(stored: string) {
	const trail = trailSchema.parse(JSON.parse(stored));
	return {trail, standing: standAt(britishIsles(), trail)};
}

let readOnce: ReturnType<typeof readFlow> | undefined;
let shelvesOnce: ReturnType<typeof readShelves> | undefined;

/** The regions, read once for all the starts of a test file. */
function everyShelf(): ReturnType<typeof readShelves> {
	shelvesOnce ??= readShelves(join(projectRoot(), 'flows'), 'british-isles');
	return shelvesOnce;
}

function britishIsles(): ReturnType<typeof readFlow> {
	readOnce ??= readFlow(join(projectRoot(), 'flows'), 'british-isles');
	return readOnce;
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
			.select(['chat', 'lane', 'notBefore', 'state', 'content'])
			.where('state', 'in', ['waiting', 'sending'])
			.orderBy('id')
			.execute();
		const photos = await db.selectFrom('photo').select('id').where('state', '=', 'wanted').execute();
		const parcels = await db.selectFrom('parcel').select('id').execute();
		const due = await db
			.selectFrom('reminder')
			.innerJoin('find', 'find.id', 'reminder.find')
			.innerJoin('chat', 'chat.id', 'find.chat')
			.select('reminder.id')
			.where('chat.goneAt', 'is', null)
			.where('doneAt', 'is', null)
			.where('dueAt', '<=', clock.now())
			.execute();
		const telling = await leftToTell(db, clock);
		const toSend = waiting.length + photos.length + parcels.length + telling;
		if (toSend + due.length + room.pendingUpdates() === 0) return;
		// What stands behind another row of its chat waits for that one, whatever its own time.
		const heads = waiting.filter(
			(row, index) => waiting.findIndex(({chat, lane}) => chat === row.chat && lane === row.lane) === index,
		);
		const soonest = Math.min(...heads.map(row => row.notBefore));
		if (waiting.length > 0 && soonest > clock.now() && soonest - clock.now() <= 5000)
			clock.forward(soonest - clock.now());
		if (Date.now() > until)
			throw new Error(`Expected the outbox to run dry; ${JSON.stringify(waiting.slice(0, 2))} waits`);
		await new Promise(resolve => setTimeout(resolve, 5));
	}
}

function isModes(how: readonly Mode[] | Conditions): how is readonly Mode[] {
	return Array.isArray(how);
}

function isError(line: Readonly<Record<string, unknown>>): boolean {
	const {level} = line;
	return level === 'error';
}

function stillClock(begunAt: number) {
	let now = begunAt;
	return {
		now: () => now,
		forward: (ms: number) => {
			now += ms;
		},
	};
}

export type {Actor, Mode, Program};
