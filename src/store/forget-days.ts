/** What somebody who leaves had to do with survey days: wishes and answers go, days they planned stay without them. */
import type {Tx} from './schema.ts';
import {stopPlanning} from './seats.ts';

/** What stands for a contact that is not told any more. */
const noContact = '–';

/** Forgets what a person asked, answered and planned; nothing more is told to their private chats. */
export async function forgetInDays(
	tx: Tx,
	{person, chats}: {readonly person: number; readonly chats: readonly number[]},
): Promise<void> {
	await tx.deleteFrom('guest').where('person', '=', person).execute();
	await tx.deleteFrom('audience').where('person', '=', person).execute();
	// Nobody can be told by a coordinator who is not there.
	await tx.deleteFrom('audience').where('coordinator', '=', person).execute();
	await forgetPlans(tx, person);
	await tx.updateTable('delivery').set({person: null}).where('person', '=', person).execute();
	for (const chat of chats) await tx.deleteFrom('delivery').where('chat', '=', chat).execute();
}

/** A day that nobody heard of goes; what people were told stays, less whom to ask. */
async function forgetPlans(tx: Tx, person: number): Promise<void> {
	const days = await tx
		.selectFrom('day')
		.select(['id', 'state', 'body'])
		.where('person', '=', person)
		.execute();
	for (const {id, state, body} of days) {
		await stopPlanning(tx, id);
		if (state === 'planned') {
			await tx.deleteFrom('day').where('id', '=', id).execute();
			continue;
		}
		const told = body === null ? null : withoutContact(body);
		await tx.updateTable('day').set({person: null, plan: null, body: told}).where('id', '=', id).execute();
		const news = await tx.selectFrom('broadcast').select(['id', 'body']).where('day', '=', id).execute();
		for (const one of news) {
			await tx
				.updateTable('broadcast')
				.set({body: withoutContact(one.body)})
				.where('id', '=', one.id)
				.execute();
		}
	}
}

/** The same JSON with nobody to ask, however deep that stands. */
function withoutContact(json: string): string {
	const strip = (value: unknown): unknown => {
		if (Array.isArray(value)) return value.map(strip);
		if (typeof value !== 'object' || value === null) return value;
		return Object.fromEntries(
			Object.entries(value).map(([key, one]) => [key, key === 'contact' ? noContact : strip(one)]),
		);
	};
	return JSON.stringify(strip(JSON.parse(json)));
}
