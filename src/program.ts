/** The whole program put together: store, regions, room, bot, clockwork; started in that order, stopped in the other. */
import {randomBytes, randomUUID} from 'node:crypto';
import {accessSync, constants, existsSync, readdirSync, statSync} from 'node:fs';
import {join} from 'node:path';
import {createBot} from './bot/bot.ts';
import {openNews} from './bot/day-news.ts';
import {askForResults} from './bot/day-over.ts';
import {showProgress} from './bot/day-progress.ts';
import {type House, type Shelf, shelfOf} from './bot/desk.ts';
import {
	addPhotoToRecord,
	photoMeasured,
	photoTold,
	tellPhotoLost,
	wakeBowl,
	warnOfUnfinished,
} from './bot/happenings.ts';
import {type Listening, listen} from './bot/listen.ts';
import {handOver} from './bot/made.ts';
import {setProfile} from './bot/profile.ts';
import {renewCommands} from './bot/role-commands.ts';
import {type Clockwork, startClockwork} from './clockwork/clockwork.ts';
import {type Drawer, openDrawer} from './clockwork/drawer.ts';
import {type Measurer, openMeasurer} from './clockwork/measurer.ts';
import {picturesOf} from './draw/title.ts';
import {checkAround} from './find/check-around.ts';
import {flowOf, readAround} from './find/flow.ts';
import {checkRead} from './key/check.ts';
import {type Region, tryRegion} from './key/region.ts';
import {sayFault} from './key/yaml.ts';
import {type Room, startRoom} from './room/server.ts';
import {projectRoot, type Settings} from './settings.ts';
import {newCode, offerClaim} from './store/invitations.ts';
import {openStore} from './store/open.ts';
import type {CallPicture} from './store/picture.ts';
import type {Db} from './store/schema.ts';
import {loadTides, type Tides} from './survey/tides.ts';
import {readTexts} from './text/text.ts';

/** The time the program lives in; only the room moves it. */
export type Clock = {readonly now: () => number; readonly forward: (ms: number) => void};

/** The running program, until stopped. */
export type Program = {
	/** Address of the chat room, when there is no token. */
	readonly roomUrl: string | undefined;
	readonly room: Room | undefined;
	/** How to become the owner, until somebody is. */
	readonly claim: Claim | undefined;
	/** Rejects when the platform refuses to be polled. */
	readonly ended: Promise<void>;
	readonly stop: () => Promise<void>;
};

/** The code that makes whoever brings it the owner, and the link that brings it where there are links. */
export type Claim = {readonly code: string; readonly link: string | undefined};

/** What the program is handed: a clock, where its log goes, and the regions if not its own. */
export type ProgramTools = {
	readonly clock: Clock;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
	readonly flowsFolder?: string;
	/** Regions read before, for those who start often. */
	readonly shelves?: ReadonlyMap<string, Shelf>;
	/** Who draws, if not a thread of its own; then nothing is drawn before it is wanted. */
	readonly drawer?: Drawer;
	/** Who measures, if not a thread of its own. */
	readonly measurer?: Measurer;
	/** How long words wait for their drawing. */
	readonly pictureMs?: number;
};

/** Where the real platform lives when no other host is named. */
const platformRoot = 'https://api.telegram.org';

/** Starts everything; throws with one line for each fault of a region folder. */
export async function startProgram(settings: Settings, tools: ProgramTools): Promise<Program> {
	const {clock, log} = tools;
	expectReceiver(settings);
	const flowsFolder = tools.flowsFolder ?? join(projectRoot(), 'flows');
	const photoFolder = join(settings.dataDir, 'photos');
	const pictureFolder = join(settings.dataDir, 'pictures');
	const shelves = tools.shelves ?? readShelves(flowsFolder, settings.region);
	const tides = settings.isCheckingTides ? await openTides(log) : undefined;
	const db = await openStore(settings.databaseFile);
	const room =
		settings.botToken === undefined
			? await startRoom({
					port: settings.roomPort,
					folder: join(settings.dataDir, 'room'),
					clock,
					onError: error => log({level: 'error', what: 'room', error: String(error)}),
				})
			: undefined;
	const token = settings.botToken ?? room?.token ?? '';
	const apiRoot = room?.url ?? settings.botApiRoot;
	const measurer = tools.measurer ?? openMeasurer();
	let clockwork: Clockwork | undefined;
	const startLink = (code: string) =>
		settings.botToken === undefined ? undefined : `https://t.me/${bot.botInfo.username}?start=${code}`;
	const house: House = {
		db,
		shelves,
		region: settings.region,
		zone: settings.zone,
		now: clock.now,
		newUuid: randomUUID,
		newCode: () => newCode(randomBytes),
		startLink,
		wake: () => clockwork?.wake(),
		isForwarding: settings.forward !== undefined,
		verifiersChat: settings.verifiersChat,
		tides,
		log,
	};
	const bot = createBot(house, {token, apiRoot});
	await bot.init();
	// Before anybody is listened to, so that a code of an earlier start is worth nothing.
	const claim = await offerToOwn(db, {now: clock.now(), startLink});
	clockwork = await startClockwork({
		db,
		api: bot.api,
		fileRoot: `${apiRoot ?? platformRoot}/file/bot${token}`,
		drawer: tools.drawer ?? openDrawer({flowsFolder, keptFolder: pictureFolder, photoFolder}),
		pictureMs: tools.pictureMs,
		photoFolder,
		parcelFolder: join(settings.dataDir, 'parcels'),
		pictureFolder,
		now: clock.now,
		jitter: Math.random,
		forward: settings.forward,
		onDue: (tx, reminders) => wakeBowl(house, tx, reminders),
		onPhotoKept: (tx, find) => addPhotoToRecord(house, tx, find),
		onPhotoLost: (tx, find) => tellPhotoLost(house, tx, find),
		measure: measurer.measure,
		onPhotoMeasured: (tx, find, outcome) => photoMeasured(house, tx, find, outcome),
		onPhotoTold: (tx, photo, told) => photoTold(house, tx, photo, told),
		zone: settings.zone,
		onStale: (tx, finds) => warnOfUnfinished(house, tx, finds),
		sayIn: language => shelfOf(house, settings.region).texts.in(language),
		datasetFile: settings.datasetFile,
		regionOf: id => regionNamed(shelves, id),
		onMade: (tx, parcel, made) => handOver(house, tx, {parcel, made}),
		telling: {
			zone: settings.zone,
			word: openNews(house, db),
			afterDays: () => askForResults(house, db),
			onProgress: (tx, broadcast, ledger) => showProgress(house, tx, {broadcast, ledger}),
		},
		log,
	});
	const listening: Listening = await listen(bot, settings.webhook);
	const texts = shelves.get(settings.region)?.texts;
	if (texts) await setProfile(bot.api, texts.in(undefined), log);
	await db.transaction().execute(tx => renewCommands(house, tx));
	clockwork.wake();
	// Last, since drawing ahead would take the processor from starting.
	if (!tools.drawer) clockwork.prepare(everyPicture(shelves));
	return {
		claim,
		roomUrl: room?.url,
		room,
		ended: listening.ended,
		stop: async () => {
			await listening.stop();
			await clockwork?.stop();
			await measurer.stop();
			await room?.stop();
			await db.destroy();
		},
	};
}

function regionNamed(shelves: ReadonlyMap<string, Shelf>, id: string): Region {
	const shelf = shelves.get(id);
	if (shelf) return shelf.flow.region;
	throw new Error(
		`Expected region "${id}" of a record under flows/; there are ${[...shelves.keys()].join(', ')}`,
	);
}

/** A folder that is to receive records has to be there: a place that is not mounted would be filled unseen. */
function expectReceiver({forward}: Settings): void {
	if (forward?.kind !== 'folder') return;
	try {
		accessSync(forward.folder, constants.W_OK);
		if (statSync(forward.folder).isDirectory()) return;
	} catch {
		// Told below, with what to do.
	}
	throw new Error(
		`FORWARD_FOLDER: expected a folder that is there and can be written to; got "${forward.folder}"`,
	);
}

/** A check that cannot be made keeps nobody from planning: the start goes on without it, and says so. */
async function openTides(log: ProgramTools['log']): Promise<Tides | undefined> {
	const tides = await loadTides();
	if (!tides)
		log({
			level: 'warn',
			what: 'tide check off',
			error: 'TIDE_CHECK is on, but neaps is not installed: npm ci',
		});
	return tides;
}

async function offerToOwn(
	db: Db,
	{now, startLink}: {readonly now: number; readonly startLink: House['startLink']},
): Promise<Claim | undefined> {
	const code = newCode(randomBytes);
	const offered = await db.transaction().execute(tx => offerClaim(tx, {code, now}));
	return offered === 'offered' ? {code, link: startLink(code)} : undefined;
}

/** The pictures of all questions, the most likely region and language first. */
function everyPicture(shelves: ReadonlyMap<string, Shelf>): readonly CallPicture[] {
	return [...shelves.values()].flatMap(({flow, texts}) =>
		texts.languages.flatMap(language => picturesOf(flow.region, language)),
	);
}

/** Every region under `flows/`, checked; throws an Error with a line for each fault. */
export function readShelves(flowsFolder: string, wanted: string): ReadonlyMap<string, Shelf> {
	const names = readdirSync(flowsFolder).filter(name => existsSync(join(flowsFolder, name, 'key.yaml')));
	if (!names.includes(wanted))
		throw new Error(`REGION: expected one of ${names.join(', ')}; got "${wanted}"`);
	const own = join(projectRoot(), 'src', 'text');
	const around = readAround(flowsFolder);
	const shelves = names.map(name => {
		const texts = readTexts([own, flowsFolder, join(flowsFolder, name)]);
		const tried = tryRegion(flowsFolder, name);
		const faults = tried.kind === 'faults' ? tried.faults : checkRead(tried.read, texts);
		const all = [...faults, ...checkAround(flowsFolder, texts, around).faults];
		if (tried.kind === 'faults' || all.length > 0) throw new Error(all.map(sayFault).join('\n'));
		return [name, {flow: flowOf(tried.read.region, around.value), texts}] as const;
	});
	return new Map(shelves);
}
