/** Where a person is at home as far as they told: the spot they wish to hear about, or that of their last find. */
import {draftSchema} from '../record/draft.ts';
import {askedIn} from '../store/audience.ts';
import {draftsOf} from '../store/drafts.ts';
import type {Desk} from './desk.ts';

/** A point on WGS 84, in degrees. */
export type Spot = {readonly latitude: number; readonly longitude: number};

const looksBack = 10;

/** The spot that a chat wishes to hear about, else that of the newest of its writer's last finds that has one. */
export async function nearSpot(desk: Desk): Promise<Spot | undefined> {
	for (const {asked} of await askedIn(desk.tx, desk.chat.id)) {
		if (asked.kind === 'near') return asked;
	}
	return lastSpot(desk);
}

/** The spot of the newest of a person's last finds that has one. */
export async function lastSpot({tx, person}: Desk): Promise<Spot | undefined> {
	const drafts = await draftsOf(tx, {person: person.id, limit: looksBack}, draftSchema);
	for (const {body} of drafts) {
		if (body.place.kind === 'spot') return body.place;
	}
	return undefined;
}
