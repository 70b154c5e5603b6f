import type {ChatMessage} from './message.ts';
import {bot} from './people.ts';

/**
 * Whether a group message reaches a bot in privacy mode: commands meant for it, replies to its own messages and
 * service messages do; talk and mentions do not.
 */
export function reachesBot(message: ChatMessage): boolean {
	if (message.new_chat_members !== undefined || message.left_chat_member !== undefined) return true;
	if (message.reply_to_message?.from.id === bot.id) return true;
	const words = message.text ?? message.caption ?? '';
	const command = (message.entities ?? message.caption_entities ?? []).find(
		entity => entity.type === 'bot_command' && entity.offset === 0,
	);
	if (command === undefined) return false;
	const [, name] = words.slice(0, command.length).split('@');
	return name === undefined || name.toLowerCase() === bot.username;
}
