/** A picture in a message, noted to be fetched for a find. */
import type {Message} from 'grammy/types';
import type {Trail} from '../find/trail.ts';
import type {FindEvent} from '../find/turn.ts';
import type {FindRow} from '../store/finds.ts';
import {wantPhoto} from '../store/photos.ts';
import type {Desk} from './desk.ts';
import type {Incoming} from './event.ts';
import {readTrail} from './stored-trail.ts';

/** Notes a picture and says what it means to its find: a new photo, or one it has. */
export async function takePicture(
	{tx, now}: Desk,
	row: FindRow,
	{message, ...picture}: Incoming & {readonly message: Message},
): Promise<FindEvent> {
	const {id} = await wantPhoto(tx, {find: row.id, ...picture, album: message.media_group_id, now});
	// The same photo again counts once; one that was taken back with “Back” counts anew.
	return hasPhoto(readTrail(row), id) ? {kind: 'resume'} : {kind: 'photo', photo: id};
}

function hasPhoto(trail: Trail, photo: number): boolean {
	return trail.some(({answer}) => answer.kind === 'photo' && answer.photo === photo);
}
