/** A picture in a message, noted to be fetched for a find. */
import type {Message} from 'grammy/types';
import type {FindEvent} from '../find/events.ts';
import type {FindRow} from '../store/finds.ts';
import {wantPhoto} from '../store/photos.ts';
import type {Desk} from './desk.ts';
import type {Incoming} from './event.ts';

/** Notes a picture, once, and says so to its find. */
export async function takePicture(
	{tx, now}: Desk,
	row: FindRow,
	{message, ...picture}: Incoming & {readonly message: Message},
): Promise<FindEvent> {
	const {id} = await wantPhoto(tx, {find: row.id, ...picture, album: message.media_group_id, now});
	return {kind: 'photo', photo: id};
}
