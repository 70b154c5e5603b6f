/** A YAML file read with zod: a fault names file and line. */
import {readFileSync} from 'node:fs';
import {type Document, isMap, isNode, isScalar, LineCounter, parseDocument, type YAMLError} from 'yaml';
import type {z} from 'zod';
import {remarkOn} from './yaml-remark.ts';

/** Something wrong in a file a key author writes: where, what, and what to do. */
export type Fault = {
	readonly file: string;
	readonly line: number;
	readonly what: string;
	readonly todo: string;
};

/** A file read, with the line on which any value stands: the line of its name, where it has one. */
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
			what: `${error.message.split(/ at line \d+|\n/)[0] ?? 'This is not YAML'}.`,
			todo: todoOf(error),
		}));
		return {kind: 'faults', faults};
	}
	const lineOf = (path: Path): number => {
		for (let depth = path.length; depth >= 0; depth--) {
			const at = startOf(document, path.slice(0, depth));
			if (at !== undefined) return counter.linePos(at).line;
		}
		return 1;
	};
	const parsed = schema.safeParse(document.toJS());
	if (parsed.success) return {kind: 'read', read: {value: parsed.data, lineOf}};
	const faults = parsed.error.issues.map(remarkOn).map(({path, what, todo}) => ({
		...{file, line: lineOf(path), what, todo},
	}));
	return {kind: 'faults', faults};
}

/** Where the name of a value begins, or a value without one. */
function startOf(document: Document, path: Path): number | undefined {
	const above = document.getIn(path.slice(0, -1), true);
	const pair = isMap(above)
		? above.items.find(({key}) => isScalar(key) && String(key.value) === String(path.at(-1)))
		: undefined;
	if (pair && isScalar(pair.key) && path.length > 0) return pair.key.range?.[0];
	const node = document.getIn(path, true);
	return isNode(node) ? node.range?.[0] : undefined;
}

function todoOf({code}: YAMLError): string {
	if (code === 'TAB_AS_INDENT') return 'Put spaces in place of the tab.';
	if (code === 'DUPLICATE_KEY') return 'Take one of the two out, or give it another id.';
	if (code === 'BAD_INDENT' || code === 'MULTILINE_IMPLICIT_KEY' || code === 'BLOCK_AS_IMPLICIT_KEY')
		return 'Begin this line and those around it with as many spaces as their neighbours have.';
	return 'Mend the YAML on this line.';
}
