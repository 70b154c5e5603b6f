/** Asks where a case was found, by the phone's own position. */
import type {FindRow} from '../store/finds.ts';
import {type Desk, postHere, readerAt} from './desk.ts';
import {escaped} from './words.ts';

/** Asks for a position: by a button in private, by a reply in a group. */
export async function askPosition(desk: Desk, row: FindRow): Promise<void> {
	const {say} = readerAt(desk, row.region);
	const isPrivate = desk.chat.kind === 'private';
	await postHere(
		desk,
		{
			kind: 'send',
			html: escaped(say.say(isPrivate ? 'ask-position' : 'ask-position-group')),
			keyboard: [],
			...(isPrivate ? {positionButton: say.say('option-send-position')} : {forceReply: true}),
		},
		{role: 'say', find: row.id},
	);
}
