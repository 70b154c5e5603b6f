/** The ledger: one row for each chat that is told something, so that nobody is told twice and nobody missed. */
import type {Db, Tables, Tx} from './schema.ts';

/** A message that is to go to one chat. */
export type Delivery = {
	readonly id: number;
	readonly broadcast: number;
	readonly chat: number;
	readonly kind: 'private' | 'group';
	/** Whose language it is told in. */
	readonly person: number | undefined;
	readonly hearsAt: number;
	readonly attempts: number;
};

/** What became of the deliveries of a broadcast. */
export type Ledger = Readonly<Record<DeliveryState, number>>;
type DeliveryState = Tables['delivery']['state'];

/** One more to be told; `useless` where it would come too late. */
export type Recipient = {
	readonly chat: number;
	readonly person: number;
	/** When it was meant to be heard. */
	readonly hearsAt: number;
	/** When it goes: later, where its hour was missed. */
	readonly notBefore: number;
	readonly isUseless: boolean;
};

/** Adds recipients to a broadcast; a chat that is in its ledger already stays as it is. */
export async function addDeliveries(
	tx: Tx,
	broadcast: number,
	recipients: readonly Recipient[],
): Promise<void> {
	if (recipients.length === 0) return;
	await tx
		.insertInto('delivery')
		.values(
			recipients.map(({chat, person, hearsAt, notBefore, isUseless}) => ({
				broadcast,
				chat,
				person,
				state: isUseless ? ('useless' as const) : ('waiting' as const),
				hearsAt,
				notBefore,
				sentAt: null,
			})),
		)
		.onConflict(conflict => conflict.columns(['broadcast', 'chat']).doNothing())
		.execute();
}

/** The next deliveries of a broadcast that may go at `now`, longest due first; chats in `busy` are left out. */
export async function nextDeliveries(
	db: Db | Tx,
	ask: {
		readonly broadcast: number;
		readonly now: number;
		readonly busy: readonly number[];
		readonly limit: number;
	},
): Promise<readonly Delivery[]> {
	let query = db
		.selectFrom('delivery')
		.innerJoin('chat', 'chat.id', 'delivery.chat')
		.select([
			'delivery.id',
			'delivery.broadcast',
			'delivery.chat',
			'chat.kind',
			'delivery.person',
			'delivery.hearsAt',
			'delivery.attempts',
		])
		.where('delivery.broadcast', '=', ask.broadcast)
		.where('delivery.state', '=', 'waiting')
		.where('delivery.notBefore', '<=', ask.now)
		.orderBy('delivery.notBefore')
		.orderBy('delivery.id')
		.limit(ask.limit);
	if (ask.busy.length > 0) query = query.where('delivery.chat', 'not in', ask.busy);
	const rows = await query.execute();
	return rows.map(row => ({...row, person: row.person ?? undefined}));
}

/** Takes a delivery in hand: from now on it may have arrived. False when it waits no more. */
export async function claimDelivery(db: Db | Tx, id: number): Promise<boolean> {
	const claimed = await db
		.updateTable('delivery')
		.set(build => ({state: 'sending' as const, attempts: build('attempts', '+', 1)}))
		.where('id', '=', id)
		.where('state', '=', 'waiting')
		.executeTakeFirst();
	return claimed.numUpdatedRows > 0n;
}

/** Notes what became of a delivery in hand. */
export async function settleDelivery(
	db: Db | Tx,
	settled: {
		readonly id: number;
		readonly state: Exclude<DeliveryState, 'waiting' | 'sending'>;
		readonly now: number;
	},
): Promise<void> {
	const sentAt = settled.state === 'sent' ? settled.now : null;
	await db
		.updateTable('delivery')
		.set({state: settled.state, sentAt})
		.where('id', '=', settled.id)
		.where('state', '=', 'sending')
		.execute();
}

/** A delivery waits until `notBefore`: one in hand that cannot have left, or one that lets others go before it. */
export async function postponeDelivery(
	db: Db | Tx,
	later: {readonly id: number; readonly from: 'sending' | 'waiting'; readonly notBefore: number},
): Promise<void> {
	await db
		.updateTable('delivery')
		.set({state: 'waiting', notBefore: later.notBefore})
		.where('id', '=', later.id)
		.where('state', '=', later.from)
		.execute();
}

/** What was in hand when the program died may have arrived: it is not repeated, and the ledger says so. */
export async function recoverDeliveries(db: Db): Promise<void> {
	const atWork = db
		.selectFrom('broadcast')
		.select('id')
		.where('state', 'in', ['gathering', 'running', 'paused', 'stopped', 'done']);
	await db
		.updateTable('delivery')
		.set({state: 'unknown'})
		.where('broadcast', 'in', atWork)
		.where('state', '=', 'sending')
		.execute();
}

/** How many deliveries of a broadcast are in each state. */
export async function ledgerOf(db: Db | Tx, broadcast: number): Promise<Ledger> {
	const rows = await db
		.selectFrom('delivery')
		.select('state')
		.select(({fn}) => fn.countAll<number>().as('count'))
		.where('broadcast', '=', broadcast)
		.groupBy('state')
		.execute();
	const count = (state: DeliveryState) => Number(rows.find(row => row.state === state)?.count ?? 0);
	return {
		waiting: count('waiting'),
		sending: count('sending'),
		sent: count('sent'),
		unknown: count('unknown'),
		failed: count('failed'),
		gone: count('gone'),
		stopped: count('stopped'),
		useless: count('useless'),
	};
}

/** Whether anything of a broadcast waits or is in hand. */
export async function isUnderWay(db: Db | Tx, broadcast: number): Promise<boolean> {
	const row = await db
		.selectFrom('delivery')
		.select('id')
		.where('broadcast', '=', broadcast)
		.where('state', 'in', ['waiting', 'sending'])
		.limit(1)
		.executeTakeFirst();
	return row !== undefined;
}

/** What of a broadcast waits, or what would go to a chat, perhaps only of one day. */
type Waiting = {readonly broadcast: number} | {readonly chat: number; readonly day?: number};

/** Drops what waits: it was stopped, or is of no use any more. */
export async function dropWaiting(
	db: Db | Tx,
	waiting: Waiting,
	state: 'stopped' | 'useless' = 'stopped',
): Promise<void> {
	let query = db.updateTable('delivery').set({state}).where('state', '=', 'waiting');
	if ('broadcast' in waiting) {
		await query.where('broadcast', '=', waiting.broadcast).execute();
		return;
	}
	const {chat, day} = waiting;
	query = query.where('chat', '=', chat);
	if (day !== undefined)
		query = query.where('broadcast', 'in', from =>
			from.selectFrom('broadcast').select('id').where('day', '=', day),
		);
	await query.execute();
}

/** The next chats after chat `after` that a broadcast told something, or may have, and that still wish to hear. */
export async function toldAfter(
	db: Db | Tx,
	ask: {readonly broadcast: number; readonly after: number; readonly limit: number},
): Promise<readonly {readonly chat: number; readonly person: number; readonly zone: string | undefined}[]> {
	const rows = await db
		.selectFrom('delivery')
		.innerJoin('chat', 'chat.id', 'delivery.chat')
		.innerJoin('person', 'person.id', 'delivery.person')
		.select(['delivery.chat', 'delivery.person', 'person.zone'])
		.where('delivery.broadcast', '=', ask.broadcast)
		.where('delivery.state', 'in', ['sent', 'unknown', 'sending'])
		.where('chat.goneAt', 'is', null)
		// Who took back every wish hears no more of what they once asked for.
		.where(({exists, selectFrom}) =>
			exists(selectFrom('audience').select('audience.id').whereRef('audience.chat', '=', 'delivery.chat')),
		)
		.where('delivery.chat', '>', ask.after)
		.orderBy('delivery.chat')
		.limit(ask.limit)
		.execute();
	return rows.flatMap(({person, ...row}) =>
		person === null ? [] : [{...row, person, zone: row.zone ?? undefined}],
	);
}
