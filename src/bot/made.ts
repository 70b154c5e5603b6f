/** What was made for somebody, handed over in words and files. */
import type {Made} from '../record/made.ts';
import {addressOf} from '../store/chats.ts';
import type {Parcel} from '../store/parcels.ts';
import {personById} from '../store/people.ts';
import type {Tx} from '../store/schema.ts';
import {type Desk, type House, postHere, readerAt, sayHere} from './desk.ts';
import {tellSeason} from './season-screen.ts';
import {escaped} from './words.ts';

/** Puts what was made in the queue of its chat; nothing when the chat is gone. */
export async function handOver(
	house: House,
	tx: Tx,
	{parcel, made}: {readonly parcel: Parcel; readonly made: Made | {readonly kind: 'failed'}},
): Promise<void> {
	const chat = await addressOf(tx, parcel.chat);
	if (!chat) return;
	const person = await personById(tx, parcel.person);
	const {thread} = parcel;
	const desk: Desk = {house, tx, now: house.now(), chat, person, name: undefined, thread};
	const {say} = readerAt(desk);
	switch (made.kind) {
		case 'files':
			return handOverFiles(desk, parcel, made);
		case 'season':
			return tellSeason(desk, made.season);
		case 'nothing':
		case 'too-large':
		case 'not-described':
			return sayHere(desk, say.say(`parcel-${made.kind}`));
		case 'failed':
			return sayHere(desk, say.say('parcel-failed'));
	}
}

async function handOverFiles(
	desk: Desk,
	parcel: Parcel,
	{names, records = 0}: Extract<Made, {kind: 'files'}>,
): Promise<void> {
	const {say} = readerAt(desk);
	for (const [index, name] of names.entries()) {
		const values = {part: index + 1, parts: names.length, records};
		const html = escaped(say.say(`parcel-${parcel.wanted.kind}`, values));
		await postHere(desk, {kind: 'document', file: `${parcel.id}/${name}`, html}, {role: 'file'});
	}
}
