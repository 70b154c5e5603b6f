/** What the platform shows of the bot: its commands and descriptions. */
import type {Api} from 'grammy';
import type {Say} from '../text/text.ts';
import {commandList} from './role-commands.ts';

/**
 * Sets command lists and descriptions; a group's list has more, and the common ones again, since the narrowest list is
 * shown alone. What the platform refuses is logged: a bot without a profile still works.
 */
export async function setProfile(
	api: Api,
	say: Say,
	log: (line: Readonly<Record<string, unknown>>) => void,
): Promise<void> {
	const list = commandList([], say);
	const inGroups = commandList([], say, 'group');
	const calls = [
		() => api.setMyCommands(list, {scope: {type: 'default'}}),
		() => api.setMyCommands(inGroups, {scope: {type: 'all_group_chats'}}),
		() => api.setMyDescription(say.say('description')),
		() => api.setMyShortDescription(say.say('short-description')),
	];
	for (const call of calls) {
		try {
			await call();
		} catch (error) {
			log({level: 'warn', what: 'profile not set', error: String(error)});
		}
	}
}
