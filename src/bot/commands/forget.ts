/** /forget: all that is held on a person erased, after a plain yes. */
import {checkedFinds} from '../../store/checked.ts';
import {post} from '../../store/outbox.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';
import {forgetEverything} from '../forget-person.ts';
import {escaped} from '../words.ts';

/** A yes that lies on a screen for longer is asked for again. */
const yesHoldsMs = 3_600_000;

/** Says what is erased and what is not, and asks. */
export async function askToForget({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const kept = (await checkedFinds(desk.tx, desk.person.id)).length;
	const button = (message: string, menu: string, parts: readonly string[]) => [
		{text: say.say(message), data: menuButton(menu, ...parts)},
	];
	return sayHere(desk, say.say('farewell', {kept}), [
		button('farewell-yes', 'forget', ['yes', desk.now.toString(36)]),
		button('farewell-copy', 'mydata', []),
		button('farewell-no', 'forget', ['no']),
	]);
}

/** Erases after a yes that is not too old; anything else leaves all as it is. */
export async function answerForget(desk: Desk, [answer, askedAt]: readonly string[]): Promise<void> {
	const {say} = readerAt(desk);
	if (answer !== 'yes') return sayHere(desk, say.say('farewell-kept'));
	const ageMs = desk.now - Number.parseInt(askedAt ?? '', 36);
	if (!(ageMs >= 0 && ageMs <= yesHoldsMs)) return sayHere(desk, say.say('farewell-too-old'));
	const kept = await forgetEverything(desk);
	// The person is not there any more; their chat is, for these last words.
	const call = {kind: 'send', html: escaped(say.say('farewell-done', {kept})), keyboard: []} as const;
	await post(desk.tx, {chat: desk.chat.id, role: 'say', call: {...call, keyboard: []}, now: desk.now});
}
