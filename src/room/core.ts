import {z} from 'zod';
import type {RoomDatabase} from './database.ts';

/** The time the room lives in, UTC milliseconds, and a way to move it ahead. */
export type RoomClock = {readonly now: () => number; readonly forward: (ms: number) => void};

/** Tells everyone who listens that something in the room is different. */
export type Changes = {
	readonly tell: () => void;
	/** Calls `heard` after each change, until the returned function is called. */
	readonly listen: (heard: () => void) => () => void;
};

/** What every part of the room works with. */
export type Core = {readonly db: RoomDatabase; readonly clock: RoomClock; readonly changes: Changes};

const valueRow = z.object({value: z.number()});
const bodyRow = z.object({body: z.string()});

/** A place for changes to be told and heard; many in one go are told once. */
export function openChanges(): Changes {
	const listeners = new Set<() => void>();
	let told = false;
	return {
		tell: () => {
			if (told) return;
			told = true;
			// Writes are synchronous, so by then the transaction that made the change is over.
			queueMicrotask(() => {
				told = false;
				for (const heard of [...listeners]) heard();
			});
		},
		listen: heard => {
			listeners.add(heard);
			return () => {
				listeners.delete(heard);
			};
		},
	};
}

/** The next number of a counter that outlives the program, beginning with `first`. */
export function nextNumber(core: Core, name: string, first: number): number {
	const row = core.db.one(
		valueRow,
		'insert into counter (name, value) values (?, ?) on conflict (name) do update set value = value + 1 returning value',
		name,
		first,
	);
	if (row === undefined) throw new Error(`Expected counter "${name}" to give a number; it gave none`);
	return row.value;
}

/** A number that rises with every change a page can show. */
export function nextChange(core: Core): number {
	return nextNumber(core, 'change', 1);
}

/** A kept setting, or undefined when it was never written. */
export function readSetting<T>(core: Core, name: string, schema: z.ZodType<T>): T | undefined {
	const row = core.db.one(bodyRow, 'select body from setting where name = ?', name);
	return row === undefined ? undefined : schema.parse(JSON.parse(row.body));
}

/** Keeps a setting; undefined takes it away. */
export function writeSetting(core: Core, name: string, value: unknown): void {
	if (value === undefined) core.db.run('delete from setting where name = ?', name);
	else {
		const sql =
			'insert into setting (name, body) values (?, ?) on conflict (name) do update set body = excluded.body';
		core.db.run(sql, name, JSON.stringify(value));
	}
	core.changes.tell();
}
