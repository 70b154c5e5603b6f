/** What the platform shows of the bot: its commands and descriptions. */
import type {Api} from 'grammy';
import type {Say} from '../text/text.ts';

/** In the order of a person's day. */
const commands = ['find', 'bowl', 'drafts', 'cancel', 'help', 'safety', 'settings'] as const;

/** Sets command lists and descriptions; a group's list also has /say, since the narrowest list is shown alone. */
export async function setProfile(api: Api, {say}: Say): Promise<void> {
	const list = commands.map(command => ({command, description: say(`command-${command}`)}));
	const inGroups = [...list, {command: 'say', description: say('command-say')}];
	await api.setMyCommands(list, {scope: {type: 'default'}});
	await api.setMyCommands(inGroups, {scope: {type: 'all_group_chats'}});
	await api.setMyDescription(say('description'));
	await api.setMyShortDescription(say('short-description'));
}
