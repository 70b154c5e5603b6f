/** Whose a find is, and who may answer for it. */
import {type FindRow, findById, openFinds} from '../store/finds.ts';
import {findOfMessage} from '../store/outbox.ts';
import {hasLeft, personById, seatOf, sitAt} from '../store/people.ts';
import {findOfAlbum} from '../store/photos.ts';
import type {Desk} from './desk.ts';

/** A find this long untouched is not what words without a reply are meant for. */
const freshMs = 12 * 3_600_000;

/** Its owner anywhere; in the group it was begun in everybody else, too, unless the owner said no. */
export function mayAnswer({person, chat}: Desk, row: FindRow): boolean {
	if (row.person === person.id) return true;
	return chat.kind === 'group' && row.chat === chat.id && row.isOwnersAlone === 0;
}

/** Whether a find is not brought to its end yet. */
export function isOpen({state}: FindRow): boolean {
	return state === 'open' || state === 'soaking';
}

/** A deleted find keeps its number and nothing else. */
export function isDeleted({state, trail}: FindRow): boolean {
	return state === 'thrown' && trail === '[]';
}

/** The find of a button, when the person who pressed may answer for it. */
export async function answerableFind(desk: Desk, find: number): Promise<FindRow | 'none' | 'not-yours'> {
	const row = await findById(desk.tx, find);
	if (!row || isDeleted(row)) return 'none';
	return mayAnswer(desk, row) ? row : 'not-yours';
}

/** The find of a button, when it belongs to the person who pressed. */
export async function ownFind(desk: Desk, find: number): Promise<FindRow | 'none' | 'not-yours'> {
	const row = await findById(desk.tx, find);
	if (!row || isDeleted(row)) return 'none';
	return row.person === desk.person.id ? row : 'not-yours';
}

/** What a message is a reply to, and the album it is part of. */
export type Tie = {readonly replied?: number | undefined; readonly album?: string | undefined};

/**
 * The find that a message is about: that of its album, of the message it replies to, the one its writer sits at, or
 * the only one open in the group; `which` where several are.
 */
export async function findSpokenOf(desk: Desk, {replied, album}: Tie): Promise<FindRow | 'none' | 'which'> {
	const {tx, chat, person} = desk;
	const tied =
		(album === undefined ? undefined : await findOfAlbum(tx, {chat: chat.id, album})) ??
		(replied === undefined ? undefined : await findOfMessage(tx, {chat: chat.id, messageId: replied}));
	const row = tied === undefined ? undefined : await findById(tx, tied);
	if (row && !isDeleted(row)) return row;
	const place = {chat: chat.id, person: person.id};
	const seat = await seatOf(tx, place);
	const seated = seat === undefined ? undefined : await findById(tx, seat);
	if (seated && isOpen(seated)) return seated;
	const isForOthers = chat.kind === 'group' && !(await hasLeft(tx, place));
	const others = isForOthers ? await openFinds(tx, {chat: chat.id, since: desk.now - freshMs}) : [];
	const [only, ...more] = others.filter(other => mayAnswer(desk, other));
	if (more.length > 0) return 'which';
	return only ?? seated ?? 'none';
}

/** From now on the words of the person go to this find; one who only helps stays at an open find of their own. */
export async function sitDown(desk: Desk, row: FindRow): Promise<void> {
	const {tx, chat, person} = desk;
	if (desk.isUnnamed) return;
	const seat = {chat: chat.id, person: person.id};
	if (row.person !== person.id) {
		const at = await seatOf(tx, seat);
		const own = at === undefined ? undefined : await findById(tx, at);
		if (own && own.person === person.id && isOpen(own)) return;
	}
	await sitAt(tx, {...seat, find: row.id});
}

/** The desk of the find's owner: their clock and language; without a name where somebody else speaks. */
export async function ownersDesk(desk: Desk, row: FindRow): Promise<Desk> {
	if (row.person === desk.person.id) return desk;
	return {...desk, person: await personById(desk.tx, row.person), name: undefined};
}
