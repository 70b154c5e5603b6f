/** /settings: whose clock it is. */
import {IANAZone} from 'luxon';
import {chooseZone} from '../../store/people.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';

/** Offered as buttons; any other zone can be written. */
const offered = [
	'Europe/London',
	'Europe/Dublin',
	'Europe/Jersey',
	'Europe/Guernsey',
	'Europe/Isle_of_Man',
	'Europe/Paris',
];

/** Shows the zone, or sets the one written after the command. */
export async function showSettings(ctx: Ctx): Promise<void> {
	const {desk} = ctx;
	const written = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	if (written !== '') return setZone(desk, [written]);
	const {say, zone} = readerAt(desk);
	const keyboard = offered.map(name => [{text: name, data: menuButton('settings', name)}]);
	return sayHere(desk, say.say('settings', {zone}), keyboard);
}

/** Sets a person's zone; one that nobody knows is answered with how to write it. */
export async function setZone(desk: Desk, [zone = '']: readonly string[]): Promise<void> {
	const {say} = readerAt(desk);
	if (!IANAZone.isValidZone(zone))
		return sayHere(desk, say.say('settings-unknown', {zone: zone.slice(0, 60)}));
	await chooseZone(desk.tx, desk.person.id, zone);
	return sayHere(desk, say.say('settings-set', {zone}));
}
