/** What of survey days is still being told. */
import type {RoomClock} from '../../src/room/server.ts';
import type {Db} from '../../src/store/schema.ts';

/** How many broadcasts have something to do now; one that only waits a few seconds for the limits gets them. */
export async function leftToTell(db: Db, clock: RoomClock): Promise<number> {
	const atWork = await db
		.selectFrom('broadcast')
		.select(['id', 'state'])
		.where('state', 'in', ['waiting', 'gathering', 'running'])
		.where('dueAt', '<=', clock.now())
		.execute();
	let busy = 0;
	for (const {id, state} of atWork) {
		const rows = await db
			.selectFrom('delivery')
			.select('notBefore')
			.where('broadcast', '=', id)
			.where('state', 'in', ['waiting', 'sending'])
			.execute();
		const soonest = Math.min(...rows.map(({notBefore}) => notBefore)) - clock.now();
		const isFarOff = state === 'running' && rows.length > 0 && soonest > 5000;
		if (!isFarOff) busy += 1;
		if (state === 'running' && rows.length > 0 && soonest > 0 && soonest <= 5000) clock.forward(soonest);
	}
	return busy;
}
