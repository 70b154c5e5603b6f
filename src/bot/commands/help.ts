/** /help: what can be done here. */
import {type Ctx, readerAt, sayHere} from '../desk.ts';

/** Lists the commands. */
export async function showHelp({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const group = desk.chat.kind === 'group' ? 'yes' : 'no';
	return sayHere(desk, `${say.say('help', {group})}\n\n${say.say('privacy-short')}`);
}
