/** Whose a find is, and who may answer for it. */
import {type FindRow, findById} from '../store/finds.ts';
import {personById} from '../store/people.ts';
import {findSatAt, sitAt} from '../store/seats.ts';
import {type Desk, sitterAt} from './desk.ts';

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

/** From now on the words of the person go to this find; one who only helps stays at an open find of their own. */
export async function sitDown(desk: Desk, row: FindRow): Promise<void> {
	const {tx, person} = desk;
	if (desk.isUnnamed) return;
	const seat = sitterAt(desk);
	if (row.person !== person.id) {
		const at = await findSatAt(tx, seat);
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
