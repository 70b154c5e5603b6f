import {mkdtempSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {onTestFinished} from 'vitest';
import {z} from 'zod';
import type {Room, RoomOptions} from '../../src/room/server.ts';
import {startRoom} from '../../src/room/server.ts';
import {quickFolder} from '../support/folder.ts';

const answerSchema = z.object({
	ok: z.boolean(),
	result: z.unknown().optional(),
	error_code: z.number().optional(),
	description: z.string().optional(),
	parameters: z.record(z.string(), z.unknown()).optional(),
});

/** What the room answers to a call. */
export type Answer = z.infer<typeof answerSchema>;

/** A room in a folder of its own, with a clock that stands still until it is moved. */
export type Scene = {
	readonly room: Room;
	readonly folder: string;
	readonly call: (method: string, parameters?: object) => Promise<Answer>;
	readonly forward: (ms: number) => void;
};

/** A clock that stands still until it is moved; begins on 5 October 2026, 09:00 UTC. */
export function stillClock(): RoomOptions['clock'] {
	let now = Date.UTC(2026, 9, 5, 9);
	return {
		now: () => now,
		forward: ms => {
			now += ms;
		},
	};
}

/** Starts a room that ends with the test. */
export async function scene(options: Partial<RoomOptions> = {}): Promise<Scene> {
	const folder = options.folder ?? newFolder();
	const clock = options.clock ?? stillClock();
	const room = await startRoom({port: 0, folder, clock, ...options});
	onTestFinished(room.stop);
	return {room, folder, call: (method, parameters) => call(room, method, parameters), forward: clock.forward};
}

/** A folder that goes when the test ends. */
export function newFolder(): string {
	const folder = mkdtempSync(join(quickFolder(), 'room-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}

/** Calls a method of the Bot API with JSON. */
export async function call(room: Room, method: string, parameters: object = {}): Promise<Answer> {
	const response = await fetch(`${room.url}/bot${room.token}/${method}`, {
		method: 'POST',
		headers: {'content-type': 'application/json'},
		body: JSON.stringify(parameters),
	});
	return answerSchema.parse(await response.json());
}
