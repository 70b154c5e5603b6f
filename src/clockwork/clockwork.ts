/** What happens by itself: sending, telling many, reminding, fetching photos, forwarding, tidying. */
import type {Api} from 'grammy';
import type {Region} from '../key/region.ts';
import type {Receiver} from '../settings.ts';
import {recoverSending} from '../store/outbox.ts';
import type {Parcel} from '../store/parcels.ts';
import type {CallPicture} from '../store/picture.ts';
import type {Reminder} from '../store/reminders.ts';
import type {Db, Tx} from '../store/schema.ts';
import type {StaleFind} from '../store/unfinished.ts';
import type {Say} from '../text/text.ts';
import type {Drawer} from './drawer.ts';
import {forwardNext} from './forwarding.ts';
import {keepHouse} from './housekeeping.ts';
import {startLoop} from './loop.ts';
import type {Measurer} from './measurer.ts';
import {openOutbox} from './outbox.ts';
import {openPace} from './pace.ts';
import {type MadeOrNot, makeNextParcel} from './parcels.ts';
import {fetchNextPhoto, type PhotoTools} from './photos.ts';
import {openPictures} from './pictures.ts';
import {wakeDueBowls} from './reminders.ts';
import {startTelling, type TellingTools} from './telling.ts';
import {keepUnfinished} from './unfinished.ts';

/** What the clockwork works with; the clock and chance are handed in. */
export type ClockworkTools = {
	readonly db: Db;
	readonly api: Api;
	readonly fileRoot: string;
	readonly drawer: Drawer;
	/** How long words wait for their drawing; 200 ms without it. */
	readonly pictureMs?: number | undefined;
	readonly photoFolder: string;
	/** Where what is made for somebody stands until it is sent. */
	readonly parcelFolder: string;
	/** Where finished pictures are kept. */
	readonly pictureFolder: string;
	readonly now: () => number;
	/** A random share from 0 to 1, so that many programs do not call at the same instant. */
	readonly jitter: () => number;
	readonly forward: Receiver | undefined;
	readonly onDue: (tx: Tx, reminders: readonly Reminder[]) => Promise<void>;
	readonly onPhotoKept: (tx: Tx, find: number) => Promise<void>;
	readonly onPhotoLost: (tx: Tx, find: number) => Promise<void>;
	readonly measure: Measurer['measure'];
	readonly onPhotoMeasured: PhotoTools['onMeasured'];
	readonly onPhotoTold: PhotoTools['onTold'];
	/** The sentences in a language, or in the usual one. */
	readonly sayIn: (language: string | undefined) => Say;
	/** The zone of people who have not said theirs. */
	readonly zone: string;
	readonly onStale: (tx: Tx, finds: readonly StaleFind[]) => Promise<void>;
	/** The keeper's description of the data, and the regions of records; throws an Error for one that is not there. */
	readonly datasetFile: string;
	readonly regionOf: (id: string) => Region;
	readonly onMade: (tx: Tx, parcel: Parcel, made: MadeOrNot) => Promise<void>;
	/** How news of survey days are worded and shown to be told, and the zone of people whose own is not known. */
	readonly telling: Pick<TellingTools, 'word' | 'onProgress' | 'afterDays' | 'zone'>;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** The running loops: told that work waits, given pictures to draw while there is time, or stopped. */
export type Clockwork = {
	readonly wake: () => void;
	readonly prepare: (pictures: readonly CallPicture[]) => void;
	readonly stop: () => Promise<void>;
};

const secondMs = 1000;

/** Starts every loop; `wake` says that something was written down. */
export async function startClockwork(tools: ClockworkTools): Promise<Clockwork> {
	const {db, log, now} = tools;
	await recoverSending(db);
	const pictures = openPictures({
		...tools,
		...(tools.pictureMs === undefined ? {} : {patienceMs: tools.pictureMs}),
	});
	const pace = openPace(now);
	const outbox = openOutbox({...tools, pictures, pace}, () => sending.wake());
	const sending = startLoop({name: 'outbox', work: outbox.send, pauseMs: secondMs / 2, log});
	const {api} = tools;
	const onPosted = () => sending.wake();
	const telling = await startTelling({db, api, now, pace, pictures, log, onPosted, ...tools.telling});
	const reminding = startLoop({
		name: 'reminders',
		work: async () => {
			const hasMore = await wakeDueBowls({db, now, onDue: tools.onDue, log});
			sending.wake();
			return hasMore;
		},
		pauseMs: secondMs,
		log,
	});
	const photos = startLoop({
		name: 'photos',
		work: () =>
			fetchNextPhoto({
				...tools,
				onKept: tools.onPhotoKept,
				onLost: tools.onPhotoLost,
				onMeasured: tools.onPhotoMeasured,
				onTold: tools.onPhotoTold,
			}),
		pauseMs: secondMs,
		log,
	});
	const forwarding = startLoop({
		name: 'forwarding',
		work: () => forwardNext({db, now: now(), forward: tools.forward, log, jitter: tools.jitter}),
		pauseMs: secondMs,
		log,
	});
	const parcels = startLoop({
		name: 'parcels',
		work: async () => {
			// What writes PDF and zip files takes half a second to load: no start waits for it.
			const make = async (parcel: Parcel, folder: string) =>
				(await import('./make-parcel.ts')).makeParcel(tools, parcel, folder);
			const hasMore = await makeNextParcel({...tools, make});
			if (hasMore) sending.wake();
			return hasMore;
		},
		pauseMs: secondMs,
		log,
	});
	const tidying = startLoop({
		name: 'housekeeping',
		work: async () => {
			await keepUnfinished(tools);
			return keepHouse(tools);
		},
		pauseMs: 600 * secondMs,
		log,
	});
	const unprepared: CallPicture[] = [];
	const preparing = startLoop({
		name: 'pictures',
		work: async () => {
			const next = unprepared.shift();
			if (next) await pictures.prepare(next);
			return unprepared.length > 0;
		},
		pauseMs: 3600 * secondMs,
		log,
	});
	const loops = [sending, telling, reminding, photos, forwarding, parcels, tidying];
	return {
		prepare: wanted => {
			unprepared.push(...wanted);
			preparing.wake();
		},
		wake: () => {
			for (const loop of [sending, telling, photos, forwarding, parcels, tidying]) loop.wake();
		},
		stop: async () => {
			const prepared = preparing.stop();
			await Promise.all(loops.map(loop => loop.stop()));
			await outbox.drained();
			// Last, since what is being sent may still wait for its drawing.
			await tools.drawer.stop();
			await prepared;
		},
	};
}
