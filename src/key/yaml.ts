/** A YAML file read with zod: a fault names file and line. */
import {readFileSync} from 'node:fs';
import {isNode, LineCounter, parseDocument} from 'yaml';
import type {z} from 'zod';

/** Something wrong in a file a key author writes: where, what, and what to do. */
export type Fault = {
	readonly file: string;
	readonly line: number;
	readonly what: string;
	readonly todo: string;
};

/** A file read, with the line on which any value stands. */
export type Read<T> = {readonly value: T; readonly lineOf: (path: Path) => number};

type Path = readonly (string | number)[];

/** Says a fault in one line, as `check` prints it. */
export function sayFault(fault: Fault): string {
	return `${fault.file}:${fault.line}: ${fault.what} ${fault.todo}`;
}

/** Reads a YAML file through a schema; throws one Error that lists every fault by file and line. */
export function readYaml<Schema extends z.ZodType>(file: string, schema: Schema): Read<z.output<Schema>> {
	const found = tryYaml(file, schema);
	if (found.kind === 'faults') throw new Error(found.faults.map(sayFault).join('\n'));
	return found.read;
}

/** Reads a YAML file through a schema; faults come back as values. */
export function tryYaml<Schema extends z.ZodType>(
	file: string,
	schema: Schema,
):
	| {readonly kind: 'read'; readonly read: Read<z.output<Schema>>}
	| {readonly kind: 'faults'; readonly faults: readonly Fault[]} {
	const counter = new LineCounter();
	const document = parseDocument(readFileSync(file, 'utf8'), {lineCounter: counter});
	if (document.errors.length > 0) {
		const faults = document.errors.map(error => ({
			file,
			line: counter.linePos(error.pos[0]).line,
			what: error.message.split('\n')[0] ?? 'This is not YAML.',
			todo: 'Mend the YAML on this line.',
		}));
		return {kind: 'faults', faults};
	}
	const lineOf = (path: Path): number => {
		for (let depth = path.length; depth >= 0; depth--) {
			const node = document.getIn(path.slice(0, depth), true);
			if (isNode(node) && node.range) return counter.linePos(node.range[0]).line;
		}
		return 1;
	};
	const parsed = schema.safeParse(document.toJS());
	if (parsed.success) return {kind: 'read', read: {value: parsed.data, lineOf}};
	const faults = parsed.error.issues.map(issue => {
		const path = issue.path.map(step => (typeof step === 'symbol' ? String(step) : step));
		return {
			file,
			line: lineOf(path),
			what: `"${path.join('.')}": ${issue.message}.`,
			todo: 'Compare it with the same entry of another region.',
		};
	});
	return {kind: 'faults', faults};
}
