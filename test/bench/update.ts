/** Updates as the platform sends them. */
import type {Update, UserFromGetMe} from 'grammy/types';

/** What a person does; `what` is the option pressed, the words, the place, or which photo. */
export type Deed = {readonly kind: 'press' | 'text' | 'photo' | 'pin'; readonly what: string};

export type Coming = {
	readonly person: number;
	readonly number: number;
	/** UTC milliseconds. */
	readonly at: number;
	readonly deed: Deed;
	/** Callback data of a press. */
	readonly data: string;
};

/** The update of one deed in the person's private chat. */
export function updateFrom({person, number, at, deed, data}: Coming): Update {
	const from = {id: person, is_bot: false, first_name: 'Walker', language_code: 'en'};
	const chat = {id: person, type: 'private' as const, first_name: 'Walker'};
	const message = {message_id: number, date: Math.floor(at / 1000), chat, from};
	switch (deed.kind) {
		case 'press':
			return {
				update_id: number,
				callback_query: {id: String(number), from, chat_instance: '1', message, data},
			};
		case 'photo': {
			const size = {file_id: `f${number}`, file_unique_id: `u${number}`, width: 1280, height: 960};
			return {update_id: number, message: {...message, photo: [size]}};
		}
		case 'pin': {
			const [latitude = 0, longitude = 0] = deed.what.split(',').map(Number);
			return {
				update_id: number,
				message: {...message, location: {latitude, longitude, horizontal_accuracy: 20}},
			};
		}
		case 'text': {
			const command = {type: 'bot_command' as const, offset: 0, length: deed.what.length};
			const entities = deed.what.startsWith('/') ? {entities: [command]} : {};
			return {update_id: number, message: {...message, text: deed.what, ...entities}};
		}
	}
}

/** What the platform says of the bot, so that nothing need be asked. */
export const aboutBot: UserFromGetMe = {
	id: 900_001,
	is_bot: true,
	first_name: 'Pursekey',
	username: 'pursekey_bot',
	can_join_groups: true,
	can_read_all_group_messages: false,
	can_manage_bots: false,
	supports_inline_queries: false,
	can_connect_to_business: false,
	has_main_web_app: false,
	has_topics_enabled: false,
	allows_users_to_create_topics: false,
	supports_join_request_queries: false,
};
