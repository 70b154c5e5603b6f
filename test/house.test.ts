import {readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {z} from 'zod';
import {readRegion} from '../src/key/region.ts';
import {escapeFaults, lengthFaults, nameFaults} from './support/house-rules.ts';
import {sourcesUnder} from './support/source.ts';

const root = join(import.meta.dirname, '..');
const everyFile = sourcesUnder(join(root, 'src'), /\.(?:ts|js|css|html|ftl)$/);
const scripts = everyFile.filter(({path}) => path.endsWith('.ts'));
const programs = everyFile.filter(({path}) => /\.(?:ts|js)$/.test(path));
const versions = z.record(z.string(), z.string());
const packageFile = z
	.object({dependencies: versions, devDependencies: versions, optionalDependencies: versions})
	.parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')));
const packages = {
	...packageFile.dependencies,
	...packageFile.devDependencies,
	...packageFile.optionalDependencies,
};

test('no file of the house is over 250 lines without saying why in its first line', () => {
	expect(everyFile.length).toBeGreaterThan(100);
	expect(everyFile.flatMap(lengthFaults)).toEqual([]);
});

test('nothing in the house goes round the type checker', () => {
	expect(scripts.flatMap(escapeFaults)).toEqual([]);
});

test.each(regionNames())('no character, question or animal of %s is named in the house', name => {
	const names = namesIn(name);
	expect(names.size).toBeGreaterThan(20);
	expect(programs.flatMap(source => nameFaults(source, names))).toEqual([]);
});

test('every version in package.json is exact', () => {
	// OpenCV for Node has no releases but those with a name behind the number.
	const exact = /^\d+\.\d+\.\d+(?:-release\.\d+)?$/;
	const loose = Object.entries(packages).filter(([, version]) => !exact.test(version));
	expect(Object.keys(packages).length).toBeGreaterThan(10);
	expect(loose).toEqual([]);
});

test('DEVELOPERS.md says of every dependency what it is for', () => {
	const guide = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
	expect(Object.keys(packages).filter(name => !guide.includes(`\`${name}\``))).toEqual([]);
});

test('a file of 251 lines is noticed, one of 250 or with a reason is not', () => {
	const lines = (count: number, first: string) => ({
		path: 'a.ts',
		text: `${first}\n${'x;\n'.repeat(count - 1)}`,
	});
	expect(lengthFaults(lines(251, '/** A table. */'))).toEqual([
		'a.ts:1: 251 lines, and the first does not say why',
	]);
	expect(lengthFaults(lines(250, '/** A table. */'))).toEqual([]);
	expect(lengthFaults(lines(251, '/** A long table: one row for each square. */'))).toEqual([]);
});

test.each([
	['const a: any = 1;', '"any"'],
	['const a = b as Thing;', '"as"'],
	['const a = <T,>(b: T) =>\n\tb as unknown as string;', '"as"'],
	['const a = found!.name;', '"!"'],
	['const a = list[0]!;', '"!"'],
	['let a!: string;', '"!"'],
	['const a = z.any();', '"any"'],
	['enum Colour {red}', '"enum"'],
	['export const enum Colour {red}', '"enum"'],
	['namespace Inner {}', '"namespace"'],
])('%s is noticed', (text, what) => {
	expect(escapeFaults({path: 'a.ts', text})[0]).toContain(what);
});

test.each([
	"import {a as b} from './a.ts';",
	"import * as limits from './limits.ts';",
	"import {\n\ta as b,\n} from './a.ts';",
	"export {a as b} from './a.ts';",
	"const a = ['x'] as const;",
	"const a = z.enum(['x']);",
	'if (!found || a !== b || !(c != d)) return !a;',
	"const a = 'as any enum!';",
	'// any as they come!',
	`const a = \`as any \${b} enum!\`;`,
	'const a = /as|any!/;',
	'const many = alias.asText(anyone);',
	'const over = AbortSignal.any([one, two]);',
])('%s is let through', text => {
	expect(escapeFaults({path: 'a.ts', text})).toEqual([]);
});

test('a name of a region is noticed as a whole word, in strings and templates and by line', () => {
	const names = new Set(['keel', 'testa minor', 'slim-length']);
	const text = `const a = 'keel';\nconst b = \`the Testa minor of \${c}\`;\nconst d = 'slim-length, keels, keel-less';\n// keel`;
	expect(nameFaults({path: 'a.ts', text}, names)).toEqual([
		'a.ts:1: "keel" is a name of a region',
		'a.ts:2: "testa minor" is a name of a region',
		'a.ts:3: "slim-length" is a name of a region',
	]);
});

function regionNames(): readonly string[] {
	const entries = readdirSync(join(root, 'flows'), {withFileTypes: true});
	return entries.filter(entry => entry.isDirectory()).map(({name}) => name);
}

/** Ids of characters, questions and taxa, and Latin names. */
function namesIn(region: string): ReadonlySet<string> {
	const {key, profiles} = readRegion(join(root, 'flows'), region);
	const latin = Object.values(profiles.taxa).map(({scientificName}) => scientificName.toLowerCase());
	const ids = [key.characters, key.questions, profiles.taxa].flatMap(part => Object.keys(part));
	return new Set([...ids, ...latin]);
}
