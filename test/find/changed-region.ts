/** The regions copied to a folder of their own, with changes a key author might make. */
import {cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {onTestFinished} from 'vitest';
import {type Flow, readFlow} from '../../src/find/flow.ts';

const flows = join(import.meta.dirname, '../../flows');

/** A text that stands once in a file under `flows/`, and what takes its place. */
export type Change = {readonly in: string; readonly find: string | RegExp; readonly put: string};

/** The British Isles as they are after these changes. */
export function changedFlow(...changes: readonly Change[]): Flow {
	const folder = mkdtempSync(join(tmpdir(), 'changed-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	cpSync(flows, folder, {recursive: true});
	for (const {in: file, find, put} of changes) {
		const whole = readFileSync(join(folder, file), 'utf8');
		const changed = whole.replace(find, put);
		if (changed === whole) throw new Error(`Expected ${String(find)} in ${file}`);
		writeFileSync(join(folder, file), changed);
	}
	return readFlow(folder, 'british-isles');
}
