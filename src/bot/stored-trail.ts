/** Trails of stored finds: read, or told to be unreadable. */
import {type Standing, standAt} from '../find/stand.ts';
import {type Trail, trailSchema} from '../find/trail.ts';
import type {FindRow} from '../store/finds.ts';
import {type Desk, shelfOf} from './desk.ts';

/** The trail of a stored find; throws an Error that repeats nothing of it when it cannot be read. */
export function readTrail(row: FindRow): Trail {
	try {
		return trailSchema.parse(JSON.parse(row.trail));
	} catch (error) {
		throw new Error(`Expected the trail of find ${row.id} to fit its schema`, {cause: error});
	}
}

/** The trail of a stored find, or nothing when it cannot be read: then the log says so, and the others go on. */
export function trailIfSound({house}: Pick<Desk, 'house'>, row: FindRow): Trail | undefined {
	const read = trailSchema.safeParse(storedJson(row.trail));
	if (read.success) return read.data;
	house.log({level: 'error', what: 'trail not readable', find: row.id});
	return undefined;
}

/** Where a stored find stands; throws like `readTrail`. */
export function standingOf({house}: Pick<Desk, 'house'>, row: FindRow): Standing {
	return standAt(shelfOf(house, row.region).flow, readTrail(row));
}

function storedJson(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return undefined;
	}
}
