import {z} from 'zod';
import {jsonField, numberField} from '../body.ts';
import {commandsFor, dropCommands, keepCommands, scopeKey, scopeSchema} from '../command-lists.ts';
import {writeSetting} from '../core.ts';
import * as limits from '../limits.ts';
import {chatWithId} from '../people.ts';
import {badRequest} from '../refusal.ts';
import type {Call} from './call.ts';
import {parameters} from './call.ts';

const placeSchema = z.object({
	scope: jsonField(scopeSchema).default({type: 'default'}),
	language_code: z.string().default(''),
});
const listSchema = z.object({
	commands: jsonField(z.array(z.object({command: z.string(), description: z.string()}))),
});
const longSchema = z.object({description: z.string().default('')});
const shortSchema = z.object({short_description: z.string().default('')});

/** Sets the list of commands people see, for one scope and language. */
export function setMyCommands(call: Call): true {
	const place = readPlace(call);
	const {commands} = parameters(call, listSchema);
	if (commands.length > limits.commandsMax) throw badRequest('BOT_COMMANDS_TOO_MUCH');
	for (const {command, description} of commands) {
		if (!limits.commandName.test(command.replace(/^\//, ''))) throw badRequest('BOT_COMMAND_INVALID');
		if (description.length < 1 || description.length > limits.commandDescriptionMax) {
			throw badRequest('BOT_COMMAND_DESCRIPTION_INVALID');
		}
	}
	const plain = commands.map(one => ({
		command: one.command.replace(/^\//, ''),
		description: one.description,
	}));
	keepCommands(call.core, place, plain);
	return true;
}

/** The list of commands of one scope and language; empty when none was set. */
export function getMyCommands(call: Call): unknown {
	return commandsFor(call.core, readPlace(call)) ?? [];
}

/** Takes the list of one scope and language away. */
export function deleteMyCommands(call: Call): true {
	dropCommands(call.core, readPlace(call));
	return true;
}

/** Sets what an empty chat says about the bot. */
export function setMyDescription(call: Call): true {
	const {description} = parameters(call, longSchema);
	if (description.length > limits.descriptionMax.long) throw badRequest('BOT_DESCRIPTION_TOO_LONG');
	writeSetting(call.core, 'description', description);
	return true;
}

/** Sets the bot's short description. */
export function setMyShortDescription(call: Call): true {
	const {short_description} = parameters(call, shortSchema);
	if (short_description.length > limits.descriptionMax.short)
		throw badRequest('BOT_SHORT_DESCRIPTION_TOO_LONG');
	writeSetting(call.core, 'short_description', short_description);
	return true;
}

function readPlace(call: Call): {readonly scope: string; readonly language: string} {
	const {scope, language_code} = parameters(call, placeSchema);
	if (language_code !== '' && !/^[a-z]{2}$/.test(language_code)) throw badRequest('language code invalid');
	if ('chat_id' in scope && chatWithId(call.core, numberField.parse(scope.chat_id)) === undefined) {
		throw badRequest('chat not found');
	}
	return {scope: scopeKey(scope), language: language_code};
}
