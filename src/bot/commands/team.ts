/** /team: who helps with what, and taking a role back. */
import {releaseClaims} from '../../store/review.ts';
import {type Holder, peopleWith, type Role, rolesOf, withdrawRole} from '../../store/roles.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';
import {listCommands, rolesGivenBy} from '../role-commands.ts';
import {rowsOf} from '../screen.ts';
import {tell} from '../tell.ts';
import {dayOf, type Reader} from '../words.ts';

/** So many people fit a phone. */
const perPage = 10;

/** Lists everybody who helps. */
export async function showTeam({desk}: Ctx): Promise<void> {
	return listTeam(desk, 0);
}

/** Does what a button of the list asks for; only for those who may give the role. */
export async function actOnTeam(desk: Desk, [act = '', ...what]: readonly string[]): Promise<void> {
	if (act === 'more') return listTeam(desk, Number(what[0]) || 0);
	const {say} = readerAt(desk);
	const role = (await rolesTaken(desk)).find(one => one === what[0]);
	if (!role) return sayHere(desk, say.say('role-missing-group'));
	const person = Number(what[1]);
	const holder = (await peopleWith(desk.tx, role)).find(one => one.person === person);
	if (!holder) return sayHere(desk, say.say('team-gone'));
	const values = {name: nameOf(holder, say), role};
	if (act === 'ask') {
		const answer = (message: string, next: string) => [
			{text: say.say(message), data: menuButton('team', next, role, String(person))},
		];
		return sayHere(desk, say.say('team-really', values), [
			answer('team-yes', 'withdraw'),
			answer('team-no', 'leave'),
		]);
	}
	if (act !== 'withdraw') return sayHere(desk, say.say('team-left', values));
	await withdrawRole(desk.tx, {person, role});
	if (role === 'verifier') await releaseClaims(desk.tx, {person});
	await listCommands(desk.house, desk.tx, person);
	await tell(desk, person, theirs => ({text: theirs.say.say('team-thanks', {role})}));
	return sayHere(desk, say.say('team-withdrawn', values));
}

/** Lists the people of a page that begins after so many. */
async function listTeam(desk: Desk, from: number): Promise<void> {
	const reader = readerAt(desk);
	const {say} = reader;
	const takes = await rolesTaken(desk);
	const team = [
		...(await peopleWith(desk.tx, 'owner')),
		...(await peopleWith(desk.tx, 'coordinator')),
		...(await peopleWith(desk.tx, 'verifier')),
	];
	const page = team.slice(from, from + perPage);
	const numbered = page.map((holder, index) => ({holder, number: String(from + index + 1)}));
	const lines = numbered.map(({holder, number}) => lineOf(holder, number, reader));
	const buttons = numbered
		.filter(({holder: {role, person}}) => takes.includes(role) && person !== desk.person.id)
		.map(({holder: {person, role}, number}) => ({
			text: say.say('team-withdraw', {number}),
			data: menuButton('team', 'ask', role, String(person)),
		}));
	const more =
		team.length > from + perPage
			? [[{text: say.say('team-more'), data: menuButton('team', 'more', String(from + perPage))}]]
			: [];
	return sayHere(desk, [say.say('team-list'), ...lines].join('\n'), [...rowsOf(buttons), ...more]);
}

/** The roles that the person at the desk may take back. */
async function rolesTaken({tx, person}: Desk): Promise<readonly Role[]> {
	return rolesGivenBy(await rolesOf(tx, person.id));
}

function lineOf(holder: Holder, number: string, {say, zone}: Reader): string {
	const since = dayOf(holder.grantedAt, {say, zone});
	return say.say('team-line', {number, name: nameOf(holder, say), role: holder.role, since});
}

function nameOf({publicName}: Holder, say: Reader['say']): string {
	return publicName ?? say.say('team-nameless');
}
