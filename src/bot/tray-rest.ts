/** The cases left on a tray, as the beginning of a find of their own. */
import type {Tray} from '../find/proposal.ts';
import {standAt} from '../find/stand.ts';
import type {Trail} from '../find/trail.ts';
import {trailOfRest} from '../find/tray-turn.ts';
import type {FindRow} from '../store/finds.ts';
import {keepTurn} from '../store/finds.ts';
import {sharePhoto} from '../store/photos.ts';
import {type Desk, shelfOf} from './desk.ts';

/** The new find with what is left, on a photo of its own: erasing one find takes nothing from another. */
export async function withRest(
	{house, tx, now}: Desk,
	begun: FindRow,
	{trail, rest}: {readonly trail: Trail; readonly rest: Tray},
): Promise<FindRow> {
	const {flow} = shelfOf(house, begun.region);
	const photo = await sharePhoto(tx, {photo: rest.photo, find: begun.id, now});
	const left = trailOfRest(flow, {trail, standing: standAt(flow, trail), rest}, {photo, now});
	const {id: find, turn, state} = begun;
	await keepTurn(tx, {find, trail: JSON.stringify(left), turn, state, now});
	return {...begun, trail: JSON.stringify(left)};
}
