/** What journeys of reviewing share: a finder's saved draft, and verifiers who look at it. */
import type {Journey} from './journey.ts';
import {begin, type Deed, walkTo} from './steps.ts';
import {trust} from './team.ts';

/** Ben and Cato check finds; Ada has saved one, with these answers. */
export async function oneToReview({db, ada, person}: Journey, answers: Readonly<Record<string, Deed>> = {}) {
	const [ben, cato] = [person('Ben'), person('Cato')];
	for (const verifier of [ben, cato]) await trust(db, verifier, 'verifier');
	await begin(person('Ada'));
	if (ada.chat !== ada.id) await ada.sends('/find');
	await walkTo({db, person: ada}, 'kept', answers);
	return {ada, ben, cato};
}
