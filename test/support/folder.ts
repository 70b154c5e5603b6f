/** Where tests keep their databases: in memory where the machine has such a folder, since every commit waits for the disk. */
import {accessSync, constants} from 'node:fs';
import {tmpdir} from 'node:os';

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
