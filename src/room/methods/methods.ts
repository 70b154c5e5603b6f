import type {Method} from './call.ts';
import * as chats from './chats.ts';
import * as commands from './commands.ts';
import * as editing from './editing.ts';
import * as media from './media.ts';
import {answerCallbackQuery} from './presses.ts';
import * as receiving from './receiving.ts';
import * as sending from './sending.ts';

const all: Readonly<Record<string, Method>> = {
	...chats,
	...commands,
	...editing,
	...media,
	...receiving,
	...sending,
	answerCallbackQuery,
};

const byName = new Map(Object.entries(all).map(([name, method]) => [name.toLowerCase(), {name, method}]));

/** The method of that name, in any mixture of capitals; undefined when the room has none. */
export function methodNamed(name: string): {readonly name: string; readonly method: Method} | undefined {
	return byName.get(name.toLowerCase());
}
