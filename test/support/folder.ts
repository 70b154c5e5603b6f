/** Where tests keep their databases: in memory where the machine has such a folder, since every commit waits for the disk. */
import {accessSync, constants, mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {onTestFinished} from 'vitest';

const inMemory = '/dev/shm';

/** A folder for short-lived files. */
export function quickFolder(): string {
	try {
		accessSync(inMemory, constants.W_OK);
		return inMemory;
	} catch {
		return tmpdir();
	}
}

/** A new folder of a test's own, gone when the test is over. */
export function ownFolder(name: string): string {
	const folder = mkdtempSync(join(quickFolder(), `${name}-`));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return folder;
}
