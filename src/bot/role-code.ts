/** A code that somebody brings with /start: it gives a role, once. */
import {redeem} from '../store/invitations.ts';
import {type Desk, readerAt, sayHere} from './desk.ts';
import {listCommands} from './role-commands.ts';
import {tell} from './tell.ts';

/** Takes a code in a private chat; a group hears only that it does not belong there. */
export async function bringCode(desk: Desk, code: string): Promise<void> {
	const {say} = readerAt(desk);
	if (desk.chat.kind === 'group') return sayHere(desk, say.say('code-privately'));
	const brought = await redeem(desk.tx, {code, person: desk.person.id, now: desk.now});
	switch (brought.kind) {
		case 'refused':
			return sayHere(desk, say.say('code-refused'));
		case 'again':
			return sayHere(desk, say.say('role-again', {role: brought.role}));
		case 'granted':
			await listCommands(desk.house, desk.tx, desk.person.id);
			if (brought.invitedBy !== undefined) {
				await tell(desk, brought.invitedBy, ({say: theirs}) => ({
					text: theirs.say('invite-used', {role: brought.role}),
				}));
			}
			return sayHere(desk, say.say('role-given', {role: brought.role}));
	}
}
