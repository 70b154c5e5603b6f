/** A folder that receives records: one JSON file for each, in place of what was there. */
import {open, rename} from 'node:fs/promises';
import {join} from 'node:path';
import type {Forward} from '../store/forwards.ts';
import type {Outcome} from './forward-outcome.ts';

/**
 * Puts a message about a record into its file, whole or not at all, also when the machine loses its power. Each message
 * holds the record as it is, so writing it twice is harmless.
 */
export async function putIntoFolder(
	folder: string,
	{record, body}: Pick<Forward, 'record' | 'body'>,
): Promise<Outcome> {
	if (!/^[\w-]+$/.test(record))
		throw new Error(`Expected a record's name of letters, digits, _ and -; got "${record}"`);
	const file = join(folder, `${record}.json`);
	// Always the same name, so that what a killed program left half written is written over.
	const half = join(folder, `.${record}.half`);
	try {
		await writeThrough(half, `${JSON.stringify(JSON.parse(body), undefined, '\t')}\n`);
		await rename(half, file);
		await flushFolder(folder);
		return {kind: 'heard'};
	} catch (error) {
		if (error instanceof SyntaxError) throw error;
		return {kind: 'failed', error: codeOf(error), retryAfterMs: 0};
	}
}

async function writeThrough(file: string, text: string): Promise<void> {
	const handle = await open(file, 'w', 0o640);
	try {
		await handle.writeFile(text);
		await handle.sync();
	} finally {
		await handle.close();
	}
}

/** A rename is on disk once its folder is. */
async function flushFolder(folder: string): Promise<void> {
	const handle = await open(folder, 'r');
	try {
		await handle.sync();
	} finally {
		await handle.close();
	}
}

/** The short name of an error of the file system; its message holds the path. */
function codeOf(error: unknown): string {
	return error instanceof Error && 'code' in error && typeof error.code === 'string'
		? error.code
		: 'unknown error';
}
