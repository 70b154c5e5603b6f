/** What a command works with: the project, where it was called, and where words come in and go out. */
import {relative, sep} from 'node:path';
import type {Fault} from '../key/yaml.ts';

/** Everything a command may touch, handed in so that tests can hand in their own. */
export type Terminal = {
	/** The folder that holds `flows/`. */
	readonly root: string;
	/** The folder the command was called in; paths are said from here. */
	readonly calledIn: string;
	/** Standard input, line by line. */
	readonly lines: AsyncIterable<string>;
	/** Says one line on standard output. */
	readonly say: (line: string) => void;
	/** Says one line on standard error. */
	readonly complain: (line: string) => void;
};

/** What a command leaves behind: 0 all is well, 1 something is wrong with what it read, 2 it was called wrongly. */
export type ExitCode = 0 | 1 | 2;

/** What an error says, in one line. */
export function messageOf(error: unknown): string {
	return error instanceof Error ? error.message : String(error);
}

/** A path as one would type it from where the command was called. */
export function pathFrom(calledIn: string, path: string): string {
	return relative(calledIn, path).split(sep).join('/') || '.';
}

/** Says faults one a line, `file:line: what todo`. */
export function sayFaults(terminal: Terminal, faults: readonly Fault[]): void {
	for (const {file, line, what, todo} of faults) {
		terminal.say(`${pathFrom(terminal.calledIn, file)}:${line}: ${what} ${todo}`);
	}
}
