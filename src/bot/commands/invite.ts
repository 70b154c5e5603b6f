/** /invite: a link that makes one person a coordinator or a verifier. */
import {invitationLivesMs, invite} from '../../store/invitations.ts';
import {rolesOf} from '../../store/roles.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';
import {rolesGivenBy} from '../role-commands.ts';
import {dayOf} from '../words.ts';

/** Asks whom a person wants to invite. */
export async function askWhom({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const offered = rolesGivenBy(await rolesOf(desk.tx, desk.person.id));
	return sayHere(
		desk,
		say.say('invite-whom'),
		offered.map(role => [{text: say.say(`invite-${role}`), data: menuButton('invite', role)}]),
	);
}

/** Makes a link that gives this role once; only for those who may give it. */
export async function makeInvitation(desk: Desk, [named]: readonly string[]): Promise<void> {
	const {say, zone} = readerAt(desk);
	const role = rolesGivenBy(await rolesOf(desk.tx, desk.person.id)).find(one => one === named);
	if (!role) return sayHere(desk, say.say('role-missing-group'));
	const code = desk.house.newCode();
	await invite(desk.tx, {code, role, by: desk.person.id, now: desk.now});
	const until = dayOf(desk.now + invitationLivesMs, {say, zone});
	await sayHere(desk, say.say('invite-how', {role, until}));
	const link = desk.house.startLink(code);
	return sayHere(
		desk,
		link === undefined ? say.say('invite-words', {role, code}) : say.say('invite-link', {role, code, link}),
	);
}
