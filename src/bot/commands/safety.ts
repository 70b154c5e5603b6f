/** /safety: the cautions, at any time. */
import type {Say} from '../../text/text.ts';
import {type Ctx, readerAt, sayHere} from '../desk.ts';

/** Says the word on safety with the region's rules, tide tables and emergency number. */
export async function showSafety({desk}: Ctx): Promise<void> {
	return sayHere(desk, safetyText(readerAt(desk).say));
}

/** The cautions before anybody goes to a beach. */
export function safetyText(say: Say): string {
	const places = say.say('safety-places', {
		rules: say.say('region-safety'),
		tides: say.say('region-tides'),
		emergency: say.say('region-emergency'),
	});
	return `${say.say('safety')}\n\n${places}`;
}
