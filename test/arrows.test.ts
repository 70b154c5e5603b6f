import {join} from 'node:path';
import {expect, test} from 'vitest';
import {arrowFaults, docFaults, importsOf, rooms} from './support/arrows.ts';
import {codeOf, type Source, sourcesUnder} from './support/source.ts';

const root = join(import.meta.dirname, '..');
const house = sourcesUnder(join(root, 'src'), /\.ts$/).map(({path, text}) => ({path: `src/${path}`, text}));

test('every import of the house points down, to a door or a file beside it, and never in a circle', () => {
	expect(house.length).toBeGreaterThan(100);
	expect(arrowFaults(house)).toEqual([]);
});

test('every exported function and type of the house says what it promises', () => {
	expect(house.flatMap(docFaults)).toEqual([]);
});

test('the import lines read are all there are', () => {
	const read = house.flatMap(importsOf);
	const written = house.flatMap(({text}) => codeOf(text).match(/\bfrom\s+_|\bimport\s*\(\s*_/g) ?? []);
	expect(written.length).toBeGreaterThan(400);
	expect(read).toHaveLength(written.length);
});

test('no room of the table imports a room above or beside it', () => {
	for (const [name, {floor, mayImport}] of Object.entries(rooms)) {
		if (floor === 5) continue;
		for (const other of mayImport) {
			const isBelow = (rooms[other]?.floor ?? 0) < floor;
			// Two exceptions: the store reads the settings beside it, and pictures are drawn from what names a find.
			const isExcused = ['store > settings', 'draw > key'].includes(`${name} > ${other}`);
			expect(isBelow || isExcused, `${name} > ${other}`).toBe(true);
		}
	}
});

/** A made-up house of one file more than is needed. */
function faultsIn(files: Readonly<Record<string, string>>): readonly string[] {
	const sources: readonly Source[] = Object.entries(files).map(([path, text]) => ({path, text}));
	return [...arrowFaults(sources), ...sources.flatMap(docFaults)];
}

test.each([
	[
		'a type import of a room above',
		"import type {Bot} from '../bot/bot.ts';",
		'src/find/turn.ts:1: "find" may not import "bot" (src/bot/bot.ts)',
	],
	[
		'a room beside',
		"import {draft} from '../record/draft.ts';",
		'src/find/turn.ts:1: "find" may not import "record" (src/record/draft.ts)',
	],
	[
		'a re-export of a room above',
		"export {bot} from '../bot/bot.ts';",
		'src/find/turn.ts:1: "find" may not import "bot" (src/bot/bot.ts)',
	],
	[
		'an import spread over lines',
		"import {\n\ta,\n\ttype B,\n} from '../bot/bot.ts';",
		'src/find/turn.ts:4: "find" may not import "bot" (src/bot/bot.ts)',
	],
	[
		'an import in the middle of code',
		"const bot = await import('../bot/bot.ts');",
		'src/find/turn.ts:1: "find" may not import "bot" (src/bot/bot.ts)',
	],
	[
		'a file two levels down',
		"import {up} from '../store/migrations/0001-first.ts';",
		'src/find/turn.ts:1: imports "src/store/migrations/0001-first.ts", a file two levels down in another room',
	],
	[
		'a missing extension',
		"import {open} from '../store/open';",
		'src/find/turn.ts:1: imports "../store/open" without its extension .ts',
	],
	[
		'a path from the root',
		"import {open} from '/src/store/open.ts';",
		'src/find/turn.ts:1: imports "/src/store/open.ts", which is no relative path',
	],
	[
		'a file outside the house',
		"import {png} from '../../test/room/picture.ts';",
		'src/find/turn.ts:1: imports "test/room/picture.ts", which stands outside src',
	],
	['a default export', '\nexport default 1;', 'src/find/turn.ts:2: exports a default'],
	[
		'an import for its effect',
		"import '../bot/bot.ts';",
		'src/find/turn.ts:1: "find" may not import "bot" (src/bot/bot.ts)',
	],
	[
		'an import of itself',
		"import {a} from './turn.ts';",
		'src/find/turn.ts:1: closes a cycle: src/find/turn.ts > src/find/turn.ts',
	],
	[
		'a function without a doc comment',
		'/** A file. */\nconst a = 1;\nexport async function go() {}',
		'src/find/turn.ts:3: the exported function "go" has no doc comment',
	],
	[
		'a type under a comment of another kind',
		'// A number.\nexport type Size = number;',
		'src/find/turn.ts:2: the exported type "Size" has no doc comment',
	],
])('%s is noticed by file and line', (_, text, fault) => {
	expect(faultsIn({'src/find/turn.ts': text})).toEqual([fault]);
});

test('a circle of three files is noticed once', () => {
	const faults = faultsIn({
		'src/key/a.ts': "import {b} from './b.ts';",
		'src/key/b.ts': "import type {C} from './c.ts';",
		'src/key/c.ts': "\nimport {a} from './a.ts';",
	});
	expect(faults).toEqual([
		'src/key/c.ts:2: closes a cycle: src/key/a.ts > src/key/b.ts > src/key/c.ts > src/key/a.ts',
	]);
});

test('a folder that the design does not know is noticed', () => {
	expect(faultsIn({'src/misc/a.ts': ''})).toEqual(['src/misc/a.ts:1: "misc" is no room of the design']);
});

test('what only looks like an import is let through', () => {
	const text = [
		"// import {bot} from '../bot/bot.ts';",
		'/* export default 1; */',
		`const said = \`import {a} from '../bot/bot.ts'; \${from('../bot/bot.ts')}\`;`,
		"import {readFileSync} from 'node:fs';",
		"import {z} from 'zod';",
		"import {open} from '../store/open.ts';",
		"import {turn} from './commands/deep.ts';",
	].join('\n');
	expect(faultsIn({'src/find/turn.ts': text})).toEqual([]);
});
