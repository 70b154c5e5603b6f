/** /privacy: what is held on people, what for, how long, and what they can do about it. */

import {unfinishedKeptDays, warnedBeforeDays} from '../../find/unfinished.ts';
import {type Ctx, readerAt, sayHere} from '../desk.ts';

/** Says it on one screen, with the commands that see, correct and erase. */
export async function showPrivacy({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	return sayHere(
		desk,
		say.say('privacy', {
			days: unfinishedKeptDays,
			before: warnedBeforeDays,
			forwarded: desk.house.isForwarding ? 'yes' : 'no',
		}),
	);
}
