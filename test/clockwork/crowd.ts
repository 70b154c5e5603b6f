import {join} from 'node:path';
import {Api} from 'grammy';
import {onTestFinished} from 'vitest';
import {openBroadcasts} from '../../src/clockwork/broadcasts.ts';
import {openPace} from '../../src/clockwork/pace.ts';
import type {Broadcast} from '../../src/store/broadcasts.ts';
import {tellMany} from '../../src/store/broadcasts.ts';
import {type Ledger, ledgerOf} from '../../src/store/deliveries.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {ownFolder} from '../support/folder.ts';
import {strictHost, type Trouble} from '../support/strict-host.ts';
import {exampleDay} from '../survey/days.ts';

/** Ten in the morning in London, long before the example day. */
export const begunAt = Date.UTC(2026, 3, 20, 9);

export type Crowd = Awaited<ReturnType<typeof crowdOf>>;

type Conditions = {
	readonly people: number;
	readonly groups?: number;
	readonly trouble?: (chat: number, text: string) => Trouble;
	/** Milliseconds of the clock that a message is on its way. */
	readonly wayMs?: () => number;
};

/** A store with so many people who asked to be told of the coast of the example day, and the means to tell them. */
export async function crowdOf({people, groups = 0, trouble, wayMs = () => 0}: Conditions) {
	const time = {now: begunAt};
	const now = () => time.now;
	const host = await strictHost({
		now,
		onArrival: () => {
			time.now += wayMs();
		},
		...(trouble ? {trouble} : {}),
	});
	const db = await openStore(join(ownFolder('crowd'), 'pursekey.db'));
	onTestFinished(() => db.destroy());
	await fillCrowd(db, {people, groups});
	const day = await publishedDay(db);
	const lines: Readonly<Record<string, unknown>>[] = [];
	const shown: {readonly at: number; readonly ledger: Ledger; readonly state: string}[] = [];
	const wait: {ms: number | undefined} = {ms: undefined};
	const open = () =>
		openBroadcasts(
			{
				db,
				api: new Api('1:crowd', {apiRoot: host.url}),
				now,
				zone: 'Europe/London',
				pace: openPace(now),
				pictures: {drawing: async () => undefined},
				word: async ({kind}) => ({kind: 'send', html: kind, keyboard: []}),
				onProgress: async (_tx, {state}, ledger) => void shown.push({at: time.now, ledger, state}),
				wakeIn: ms => {
					wait.ms = ms;
				},
				log: line => void lines.push(line),
			},
			() => undefined,
		);
	const broadcaster = open();
	/** Works until nothing is left that could be done by `until`. */
	const run = async (until = Number.POSITIVE_INFINITY, one = broadcaster) => {
		for (;;) {
			wait.ms = undefined;
			const did = await one.work();
			await one.drained();
			if (did) continue;
			if (wait.ms === undefined || time.now >= until) return;
			time.now += Math.max(1, wait.ms);
		}
	};
	return {
		db,
		host,
		time,
		day,
		lines,
		shown,
		run,
		broadcaster,
		/** Another program on the same store. */
		open,
		tell: (kind: Broadcast['kind'], more: {dueAt?: number; uselessAt?: number; progressRow?: number} = {}) =>
			db.transaction().execute(tx =>
				tellMany(tx, {
					day,
					kind,
					dueAt: time.now,
					uselessAt: exampleDay.startsAt,
					body: JSON.stringify({
						uuid: 'day-1',
						sequence: 1,
						region: 'testland',
						coordinator: 1,
						day: exampleDay,
					}),
					now: time.now,
					...more,
				}),
			),
		ledger: (broadcast: number) => ledgerOf(db, broadcast),
	};
}

/** The platform's id of a person or, below zero, of a group of the crowd. */
export const idOf = (index: number, kind: 'person' | 'group' = 'person') =>
	kind === 'person' ? 10_000 + index : -10_000 - index;

async function fillCrowd(db: Db, {people, groups}: {people: number; groups: number}): Promise<void> {
	const at = {createdAt: 0};
	await db.transaction().execute(async tx => {
		for (let index = 1; index <= people + groups; index += 1) {
			const isGroup = index > people;
			const person = {platformId: idOf(index), language: 'en', zone: null, isZoneChosen: 0 as const};
			const wish = {
				chat: index,
				person: index,
				kind: 'coast' as const,
				region: 'testland',
				coordinator: null,
			};
			await tx
				.insertInto('person')
				.values({...person, region: null, welcomedAt: null, ...at})
				.execute();
			await tx
				.insertInto('chat')
				.values({kind: isGroup ? 'group' : 'private', goneAt: null, ...at})
				.execute();
			await tx
				.insertInto('chatAddress')
				.values({platformId: isGroup ? idOf(index, 'group') : idOf(index), chat: index})
				.execute();
			await tx
				.insertInto('audience')
				.values({...wish, latitude: null, longitude: null, ...at})
				.execute();
		}
	});
}

async function publishedDay(db: Db): Promise<number> {
	const {id} = await db
		.insertInto('day')
		.values({
			uuid: 'day-1',
			code: 'code-1',
			person: 1,
			region: 'testland',
			state: 'published',
			plan: null,
			turn: 1,
			body: JSON.stringify(exampleDay),
			sequence: 1,
			startsAt: exampleDay.startsAt,
			endsAt: exampleDay.endsAt,
			askedForResultAt: null,
			createdAt: 0,
			changedAt: 0,
		})
		.returning('id')
		.executeTakeFirstOrThrow();
	return id;
}
