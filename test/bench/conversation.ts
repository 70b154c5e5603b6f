/** Whole finds led through the bot as the platform would lead them, each update timed. */
import {randomUUID} from 'node:crypto';
import {join} from 'node:path';
import {createBot} from '../../src/bot/bot.ts';
import {packButton} from '../../src/bot/button.ts';
import type {House} from '../../src/bot/desk.ts';
import {readShelves} from '../../src/program.ts';
import {projectRoot} from '../../src/settings.ts';
import type {Db} from '../../src/store/schema.ts';
import {aboutBot, type Deed, updateFrom} from './update.ts';

type Timed = {readonly kind: Deed['kind']; readonly ms: number; readonly processorMs: number};

const region = 'british-isles';
const startedAt = Date.UTC(2026, 4, 2, 9, 30);
const walkers = 40;

/** One find from the first question to a kept draft. */
const script: readonly Deed[] = [
	{kind: 'text', what: '/find'},
	{kind: 'press', what: 'yes'},
	{kind: 'press', what: 'empty'},
	{kind: 'photo', what: 'top'},
	{kind: 'photo', what: 'underside'},
	{kind: 'press', what: 'go-on'},
	{kind: 'pin', what: '50.1029,-5.5432'},
	{kind: 'text', what: '2 May'},
	{kind: 'text', what: '2'},
	{kind: 'press', what: 'surface'},
	{kind: 'press', what: 'go-on'},
	{kind: 'press', what: 'soft'},
	{kind: 'press', what: 'both'},
	{kind: 'text', what: '66 mm'},
	{kind: 'press', what: 'broad'},
	{kind: 'press', what: 'blade'},
	{kind: 'text', what: '50 mm'},
	{kind: 'press', what: 'keep'},
];

/** People who walk the script in turn; `walk` takes one of them through a whole find. */
export async function beginWalkers(db: Db) {
	const house: House = {
		db,
		shelves: readShelves(join(projectRoot(), 'flows'), region),
		region,
		zone: 'Europe/London',
		now: () => startedAt + updates * 1000,
		newUuid: randomUUID,
		newCode: randomUUID,
		startLink: () => undefined,
		wake: () => undefined,
		isForwarding: true,
		verifiersChat: undefined,
		tides: undefined,
		log: line => {
			throw new Error(`Expected no trouble in the log; got ${JSON.stringify(line)}`);
		},
	};
	const bot = createBot(house, {token: '900001:bench', apiRoot: 'http://127.0.0.1:9'});
	bot.botInfo = aboutBot;
	let updates = 0;
	let walks = 0;
	let times: Timed[] = [];
	const take = async (person: number, deed: Deed) => {
		const data = deed.kind === 'press' ? await buttonOf(db, person, deed.what) : '';
		updates += 1;
		const update = updateFrom({person, number: 1_000_000 + updates, at: startedAt, deed, data});
		const before = process.cpuUsage();
		const began = process.hrtime.bigint();
		await bot.handleUpdate(update);
		const ms = Number(process.hrtime.bigint() - began) / 1e6;
		const {user, system} = process.cpuUsage(before);
		times.push({kind: deed.kind, ms, processorMs: (user + system) / 1000});
		// What the clockwork does meanwhile is not a part of the update.
		await db.updateTable('outbox').set({state: 'sent'}).where('state', '=', 'waiting').execute();
	};
	return {
		walk: async () => {
			const person = 10_000 + (walks % walkers);
			walks += 1;
			for (const deed of script) await take(person, deed);
		},
		times: (): readonly Timed[] => times,
		forgetTimes: () => {
			times = [];
		},
		/** Throws unless every walk ended in a draft; says how many there are. */
		check: async () => {
			const drafts = await db.selectFrom('draft').select('find').execute();
			if (drafts.length !== walks)
				throw new Error(`Expected ${walks} walks to end in a draft; ${drafts.length} did`);
			return drafts.length;
		},
	};
}

/** The button that the person's newest question shows for this option. */
async function buttonOf(db: Db, platformId: number, option: string): Promise<string> {
	const find = await db
		.selectFrom('find')
		.innerJoin('person', 'person.id', 'find.person')
		.select(['find.id', 'find.turn'])
		.where('person.platformId', '=', platformId)
		.orderBy('find.id', 'desc')
		.executeTakeFirstOrThrow();
	return packButton({kind: 'find', find: find.id, turn: find.turn, option});
}
