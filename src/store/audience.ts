/** Who asked to be told of survey days. */
import {dropWaiting} from './deliveries.ts';
import type {Db, Tx} from './schema.ts';

/** What somebody asked to be told of. */
export type Asked =
	| {readonly kind: 'coast'; readonly region: string}
	| {readonly kind: 'near'; readonly latitude: number; readonly longitude: number}
	| {readonly kind: 'coordinator'; readonly coordinator: number};

/** A wish to be told, in the chat where it was made. */
export type Listener = {
	readonly id: number;
	readonly chat: number;
	readonly person: number;
	/** The zone of the person, where it is known. */
	readonly zone: string | undefined;
	readonly asked: Asked;
};

const columns = [
	'audience.id',
	'audience.chat',
	'audience.person',
	'audience.kind',
	'audience.region',
	'audience.coordinator',
	'audience.latitude',
	'audience.longitude',
	'person.zone',
] as const;

/** Notes a wish; the same one of the same chat counts once, and one spot takes the place of the last. */
export async function askToBeTold(
	tx: Tx,
	{
		chat,
		person,
		asked,
		now,
	}: {readonly chat: number; readonly person: number; readonly asked: Asked; readonly now: number},
): Promise<void> {
	let same = tx.deleteFrom('audience').where('chat', '=', chat).where('kind', '=', asked.kind);
	if (asked.kind === 'coast') same = same.where('region', '=', asked.region);
	if (asked.kind === 'coordinator') same = same.where('coordinator', '=', asked.coordinator);
	await same.execute();
	await tx
		.insertInto('audience')
		.values({
			chat,
			person,
			kind: asked.kind,
			region: asked.kind === 'coast' ? asked.region : null,
			coordinator: asked.kind === 'coordinator' ? asked.coordinator : null,
			latitude: asked.kind === 'near' ? asked.latitude : null,
			longitude: asked.kind === 'near' ? asked.longitude : null,
			createdAt: now,
		})
		.execute();
}

/** What a chat asked to be told of, first wish first. */
export async function askedIn(db: Db | Tx, chat: number): Promise<readonly Listener[]> {
	const rows = await listeners(db).where('audience.chat', '=', chat).orderBy('audience.id').execute();
	return rows.map(listenerFrom);
}

/** The next wishes after wish `after` that chats which are there have made; the caller looks which of them fit. */
export async function listenersAfter(
	db: Db | Tx,
	{after, limit}: {readonly after: number; readonly limit: number},
): Promise<readonly Listener[]> {
	const rows = await listeners(db)
		.innerJoin('chat', 'chat.id', 'audience.chat')
		.where('chat.goneAt', 'is', null)
		.where('audience.id', '>', after)
		.orderBy('audience.id')
		.limit(limit)
		.execute();
	return rows.map(listenerFrom);
}

/** Takes back one wish of a chat. */
export async function takeBackWish(
	tx: Tx,
	{id, chat}: {readonly id: number; readonly chat: number},
): Promise<void> {
	await tx.deleteFrom('audience').where('id', '=', id).where('chat', '=', chat).execute();
}

/** Nothing more is told to a chat, nor in it to those who said that they come. */
export async function stopTelling(db: Db | Tx, chat: number): Promise<void> {
	await db.deleteFrom('audience').where('chat', '=', chat).execute();
	await db.updateTable('guest').set({isTold: 0}).where('chat', '=', chat).execute();
	await dropWaiting(db, {chat});
}

/** Wishes, answers and deliveries of one chat become those of another; for a group that becomes a supergroup. */
export async function moveAudience(
	tx: Tx,
	{from, into}: {readonly from: number; readonly into: number},
): Promise<void> {
	await tx.updateTable('audience').set({chat: into}).where('chat', '=', from).execute();
	await tx.updateTable('guest').set({chat: into}).where('chat', '=', from).execute();
	// What both were to be told is told once.
	await tx
		.deleteFrom('delivery')
		.where('chat', '=', from)
		.where('broadcast', 'in', query =>
			query.selectFrom('delivery').select('broadcast').where('chat', '=', into),
		)
		.execute();
	await tx.updateTable('delivery').set({chat: into}).where('chat', '=', from).execute();
}

function listeners(db: Db | Tx) {
	return db.selectFrom('audience').innerJoin('person', 'person.id', 'audience.person').select(columns);
}

type Row = Awaited<ReturnType<ReturnType<typeof listeners>['execute']>>[number];

function listenerFrom(row: Row): Listener {
	const {id, chat, person, zone} = row;
	return {id, chat, person, zone: zone ?? undefined, asked: askedFrom(row)};
}

function askedFrom({id, kind, region, coordinator, latitude, longitude}: Row): Asked {
	if (kind === 'coast' && region !== null) return {kind, region};
	if (kind === 'coordinator' && coordinator !== null) return {kind, coordinator};
	if (kind === 'near' && latitude !== null && longitude !== null) return {kind, latitude, longitude};
	throw new Error(`Expected wish ${id} to say what "${kind}" means`);
}
