/** /region: whose egg cases are told apart. */
import {chooseRegion} from '../../store/people.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, regionOf, sayHere, shelfOf} from '../desk.ts';

/** Shows the regions, the present one first in words. */
export async function showRegions({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const keyboard = [...desk.house.shelves.keys()].map(region => [
		{text: nameOf(desk, region), data: menuButton('region', region)},
	]);
	return sayHere(desk, say.say('region', {region: nameOf(desk, regionOf(desk))}), keyboard);
}

/** Sets a person's region; new finds begin with its key. One that is gone is shown the list again. */
export async function setRegion(desk: Desk, [region = '']: readonly string[]): Promise<void> {
	const {say} = readerAt(desk);
	if (!desk.house.shelves.has(region)) return sayHere(desk, say.say('region-gone'));
	await chooseRegion(desk.tx, desk.person.id, region);
	return sayHere(desk, say.say('region-set', {region: nameOf(desk, region)}));
}

function nameOf(desk: Desk, region: string): string {
	return shelfOf(desk.house, region).texts.in(desk.person.language).say('region-name');
}
