/** Makes the list of who is told something, page by page, so that no conversation waits for a long list. */
import {listenersAfter} from '../store/audience.ts';
import {type Broadcast, broadcastsOf, markGathered, moveBroadcast} from '../store/broadcasts.ts';
import {addDeliveries, type Recipient, toldAfter} from '../store/deliveries.ts';
import {guestsOf, guestsToTell} from '../store/guests.ts';
import type {Db, Tx} from '../store/schema.ts';
import {isAskedFor, type News, newsSchema} from '../survey/news.ts';
import {hearsAt} from '../survey/telling.ts';

/** What gathering works with; `zone` is the keeper's, for people whose own is not known. */
export type GatheringTools = {readonly db: Db; readonly now: () => number; readonly zone: string};

/** Somebody to be told, and whose clock it is. */
type Found = {readonly chat: number; readonly person: number; readonly zone: string | undefined};
/** Where the next page begins; nothing after the last. */
type Page = {readonly found: readonly Found[]; readonly next: number | undefined};

/** Small, so that a conversation waits for a few milliseconds at most. */
const pageSize = 100;

/** Adds one page to the ledger of a broadcast; after the last it is ready to be sent. */
export async function gatherNext({db, now, zone}: GatheringTools, broadcast: Broadcast): Promise<void> {
	const news = newsSchema.parse(JSON.parse(broadcast.body));
	await db.transaction().execute(async tx => {
		const {found, next} = await pageOf(tx, broadcast, news);
		const hearing = hearingBy(broadcast, {startsAt: news.day.startsAt, now: now()});
		const recipients = found.map(one => ({chat: one.chat, person: one.person, ...hearing(one.zone ?? zone)}));
		await addDeliveries(tx, broadcast.id, recipients);
		if (next === undefined) await moveBroadcast(tx, {id: broadcast.id, from: ['gathering'], to: 'running'});
		else await markGathered(tx, {id: broadcast.id, gathered: next});
	});
}

async function pageOf(tx: Tx, broadcast: Broadcast, news: News): Promise<Page> {
	const {day, kind, gathered} = broadcast;
	switch (kind) {
		case 'announced': {
			const wishes = await listenersAfter(tx, {after: gathered, limit: pageSize});
			const found = wishes.filter(({asked}) => isAskedFor(asked, news));
			return {found, next: wishes.length < pageSize ? undefined : wishes.at(-1)?.id};
		}
		case 'evening':
		case 'soon':
			return {found: await guestsToTell(tx, {day, answers: ['coming', 'perhaps']}), next: undefined};
		case 'result':
			return {found: await guestsToTell(tx, {day, answers: ['coming']}), next: undefined};
		case 'changed':
		case 'cancelled':
			return toldBefore(tx, broadcast);
	}
}

/** Those who come or may come, and whoever was told of the day before and did not say that they cannot. */
async function toldBefore(tx: Tx, {day, gathered}: Broadcast): Promise<Page> {
	const guests = gathered === 0 ? await guestsToTell(tx, {day, answers: ['coming', 'perhaps']}) : [];
	const said = await guestsOf(tx, day);
	const away = new Set(said.filter(({answer}) => answer === 'cannot').map(({person}) => person));
	const announced = (await broadcastsOf(tx, day)).find(({kind}) => kind === 'announced');
	const told = announced
		? await toldAfter(tx, {broadcast: announced.id, after: gathered, limit: pageSize})
		: [];
	return {
		found: [...guests, ...told.filter(({person}) => !away.has(person))],
		next: told.length < pageSize ? undefined : told.at(-1)?.chat,
	};
}

/** When those of a zone hear it; worked out once for each zone, since clocks are slow to ask. */
function hearingBy(
	{kind, dueAt, uselessAt}: Broadcast,
	{startsAt, now}: {readonly startsAt: number; readonly now: number},
): (zone: string) => Pick<Recipient, 'hearsAt' | 'notBefore' | 'isUseless'> {
	const known = new Map<string, Pick<Recipient, 'hearsAt' | 'notBefore' | 'isUseless'>>();
	const notice = {kind, dueAt, uselessAt, startsAt};
	return zone => {
		const before = known.get(zone);
		if (before) return before;
		const at = hearsAt(notice, {zone, now});
		const meant = hearsAt(notice, {zone, now: dueAt}) ?? now;
		const hearing = {hearsAt: meant, notBefore: at ?? now, isUseless: at === undefined};
		known.set(zone, hearing);
		return hearing;
	};
}
