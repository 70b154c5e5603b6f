/** /help: what can be done here. */
import {rolesOf} from '../../store/roles.ts';
import {ownCommands} from '../command-table.ts';
import {type Ctx, type Desk, readerAt, sayHere} from '../desk.ts';

/** Lists the commands. */
export async function showHelp({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const group = desk.chat.kind === 'group' ? 'yes' : 'no';
	const parts = [say.say('help', {group}), await roleLines(desk), say.say('privacy-short')];
	return sayHere(desk, parts.filter(part => part !== '').join('\n\n'));
}

/** What the person may do beside that; a group need not know. */
async function roleLines(desk: Desk): Promise<string> {
	if (desk.chat.kind === 'group') return '';
	const {say} = readerAt(desk);
	const lines = ownCommands(await rolesOf(desk.tx, desk.person.id)).map(command =>
		say.say('help-role', {command: `/${command}`, what: say.say(`command-${command}`)}),
	);
	return lines.join('\n');
}
