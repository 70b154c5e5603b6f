/** /start: a greeting, and on the first visit the word on safety before anything else; or a code that was brought. */
import {findSatAt} from '../../store/seats.ts';
import {packButton} from '../button.ts';
import {dayPrefix} from '../day-link.ts';
import {type Ctx, readerAt, sayHere, sitterAt} from '../desk.ts';
import {bringCode} from '../role-code.ts';
import {showLinkedDay} from './days.ts';
import {safetyText} from './safety.ts';

/** Greets; somebody who was here before may go straight on. */
export async function start(ctx: Ctx): Promise<void> {
	const {desk} = ctx;
	const code = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	if (code !== '' && !code.startsWith(dayPrefix)) return bringCode(desk, code);
	if (code !== '' && desk.person.isWelcomed) return showLinkedDay(desk, code.slice(dayPrefix.length));
	const {say} = readerAt(desk);
	const begin = {
		text: say.say(desk.person.isWelcomed ? 'begin' : 'begin-read'),
		data: packButton({kind: 'begin'}),
	};
	if (!desk.person.isWelcomed) {
		const paragraphs = [say.say('welcome'), safetyText(say), say.say('privacy-short')];
		await sayHere(desk, paragraphs.join('\n\n'), [[begin]]);
		return code === '' ? undefined : showLinkedDay(desk, code.slice(dayPrefix.length));
	}
	const find = await findSatAt(desk.tx, sitterAt(desk));
	const goOn =
		find === undefined ? [] : [{text: say.say('button-go-on'), data: packButton({kind: 'resume', find})}];
	return sayHere(desk, say.say('welcome-back'), [[begin], ...(goOn.length > 0 ? [goOn] : [])]);
}
