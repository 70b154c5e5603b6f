import type {Core} from './core.ts';
import type {Formatted} from './html.ts';
import {readHtml} from './html.ts';
import * as limits from './limits.ts';
import type {Entity} from './message.ts';
import {asUser, personWithId} from './people.ts';
import {badRequest} from './refusal.ts';

/** Text as a bot sends it. */
export type SentText = {
	readonly text: string;
	readonly parseMode: string | undefined;
	readonly entities: readonly Entity[] | undefined;
};

/** The text of a message: 1 to 4096 characters once markup is out. */
export function messageText(core: Core, sent: SentText): Formatted {
	const formatted = readText(core, sent);
	if (formatted.text === '') throw badRequest('message text is empty');
	if (formatted.text.length > limits.textMax) throw badRequest('message is too long');
	return formatted;
}

/** The caption under a photo or file: up to 1024 characters, or none. */
export function captionText(core: Core, sent: SentText): Formatted {
	const formatted = readText(core, sent);
	if (formatted.text.length > limits.captionMax) throw badRequest('message caption is too long');
	return formatted;
}

/** The commands, names and links a person's own text holds. */
export function entitiesTyped(text: string): readonly Entity[] {
	const entities: Entity[] = [];
	const pattern =
		/(?<=^|\s)(\/[A-Za-z0-9_]{1,32}(?:@[A-Za-z0-9_]+)?|@[A-Za-z0-9_]{5,32}|https?:\/\/\S+)(?=$|[\s.,;:])/g;
	for (const match of text.matchAll(pattern)) {
		const first = match[0][0];
		const type = first === '/' ? 'bot_command' : first === '@' ? 'mention' : 'url';
		entities.push({type, offset: match.index, length: match[0].length});
	}
	return entities;
}

function readText(core: Core, sent: SentText): Formatted {
	const mode = sent.parseMode?.toLowerCase();
	if (mode !== undefined && mode !== '' && mode !== 'html') throw badRequest('unsupported parse_mode');
	const read = mode === 'html' ? readHtml(sent.text) : {text: sent.text, entities: checked(sent)};
	const entities = read.entities.map(entity => withPerson(core, entity));
	return trimmed({text: read.text, entities});
}

function checked(sent: SentText): readonly Entity[] {
	const entities = sent.entities ?? [];
	if (entities.some(entity => entity.offset + entity.length > sent.text.length)) {
		throw badRequest('entity ends after the end of the text');
	}
	return entities;
}

/** A link to a person's id names that person; to a stranger it is left as a link, which the platform drops. */
function withPerson(core: Core, entity: Entity): Entity {
	const id = /^tg:\/\/user\?id=(\d+)$/.exec(entity.url ?? '')?.[1];
	const person = id === undefined ? undefined : personWithId(core, Number(id));
	if (person === undefined) return entity;
	return {type: 'text_mention', offset: entity.offset, length: entity.length, user: asUser(person)};
}

function trimmed(formatted: Formatted): Formatted {
	const start = formatted.text.length - formatted.text.trimStart().length;
	const text = formatted.text.trim();
	const entities = formatted.entities.flatMap(entity => {
		const offset = Math.max(0, entity.offset - start);
		const end = Math.min(text.length, entity.offset + entity.length - start);
		return end > offset ? [{...entity, offset, length: end - offset}] : [];
	});
	return {text, entities};
}
