/** A program that is killed again and again, and the person who goes on talking to it. */
import {mkdtempSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {setTimeout as sleep} from 'node:timers/promises';
import {onTestFinished} from 'vitest';
import {type Room, startRoom} from '../../src/room/server.ts';
import {readSettings} from '../../src/settings.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {type Actor, actorIn} from './actor.ts';
import {quickFolder} from './folder.ts';
import {type Gate, type Moment, openGate} from './gate.ts';
import {type Running, runProgram} from './process.ts';

/** How the program dies: in the middle of a call that is held at the gate. */
export type Death = {readonly method: string; readonly when: Moment};

/** What was under way when the program died. */
export type Found = Death & {readonly unconfirmed: number; readonly sending: number; readonly wanted: number};

const patienceMs = 90_000;

/** Opens a room, a gate before it and a database; nothing runs yet. */
export async function mortalWorld(built: string, more: Readonly<Record<string, string>> = {}) {
	const folder = mkdtempSync(join(quickFolder(), 'mortal-'));
	const clock = {now: Date.now, forward: () => undefined};
	const room = await startRoom({port: 0, folder: join(folder, 'room'), clock});
	const gate = await openGate(room.url);
	const environment = {BOT_TOKEN: room.token, BOT_API_ROOT: gate.url, DATA_DIR: folder, ...more};
	const db = await openStore(readSettings(environment).databaseFile);
	onTestFinished(async () => {
		await db.destroy();
		await room.stop();
		rmSync(folder, {recursive: true, force: true});
	});
	const quiet = () => settled(room, db);
	const start = async () => {
		const running = runProgram(built, environment);
		await running.ready;
		return running;
	};
	const person = (settle: () => Promise<void>): Actor =>
		actorIn({mode: 'plain', room, clock, db, settle, restart: () => Promise.resolve()}, 'Ada');
	return {room, gate, db, folder, start, quiet, person};
}

export type MortalWorld = Awaited<ReturnType<typeof mortalWorld>>;

/** Kills the running program in the midst of the next call of that kind, and says what was left half done. */
export async function killIn(
	world: MortalWorld,
	running: Running,
	held: Promise<void>,
): Promise<Omit<Found, keyof Death>> {
	await Promise.race([held, late('a call to hold')]);
	await running.end('SIGKILL');
	return leftHalfDone(world);
}

/** Arms the gate: the next call of that kind is held. */
export function lurk(gate: Gate, {method, when}: Death): Promise<void> {
	return gate.hold(method, when);
}

async function leftHalfDone({room, db}: MortalWorld) {
	const sending = await db.selectFrom('outbox').select('id').where('state', '=', 'sending').execute();
	const wanted = await db.selectFrom('photo').select('id').where('state', '=', 'wanted').execute();
	return {unconfirmed: room.pendingUpdates(), sending: sending.length, wanted: wanted.length};
}

async function settled(room: Room, db: Db): Promise<void> {
	const until = Date.now() + patienceMs;
	while (Date.now() < until) {
		const waiting = await db
			.selectFrom('outbox')
			.select('id')
			.where('state', 'in', ['waiting', 'sending'])
			.execute();
		const wanted = await db.selectFrom('photo').select('id').where('state', '=', 'wanted').execute();
		const parcels = await db.selectFrom('parcel').select('id').execute();
		if (waiting.length + wanted.length + parcels.length + room.pendingUpdates() === 0) return;
		await sleep(20);
	}
	throw new Error('Expected the program to do all that waits; something still waits');
}

async function late(what: string): Promise<never> {
	await sleep(patienceMs, undefined, {ref: false});
	throw new Error(`Expected ${what}; none came`);
}
