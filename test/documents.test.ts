/** What people are told about settings, scripts and files is what there is. */
import {existsSync, readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';

const root = join(import.meta.dirname, '..');
const read = (path: string) => readFileSync(join(root, path), 'utf8');
const found = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].map(match => match[1] ?? '');
const names = found(read('src/settings.ts'), /^\t\t([A-Z][A-Z_]+): /gm).toSorted();

test('the README explains every setting and no other', () => {
	expect(names.length).toBeGreaterThan(10);
	expect(found(read('README.md'), /^\| `([A-Z][A-Z_]+)` \|/gm).toSorted()).toEqual(names);
});

test('env.example holds every setting and no other', () => {
	expect(found(read('deploy/env.example'), /^([A-Z_]+)=/gm).toSorted()).toEqual(names);
});

test('the README gives the defaults that the program has', () => {
	const defaults = found(read('src/settings.ts'), /\.default\(([^)]+)\)/g).map(value =>
		value.replaceAll("'", ''),
	);
	expect(defaults.length).toBeGreaterThan(4);
	const told = found(read('README.md'), /^\| `[A-Z_]+` \| `([^`]+)` \|/gm);
	expect(defaults.filter(value => !told.includes(value))).toEqual([]);
});

test('DEVELOPERS.md, the README and the runbook name no file that is not there', () => {
	const told = ['DEVELOPERS.md', 'README.md', 'deploy/RUNBOOK.md'].flatMap(document =>
		found(read(document), /`((?:[a-z-]+\/)*[\w.-]+\.(?:ts|js|sh|yaml|conf|example|service))`/g),
	);
	const somewhere = ['', 'src', 'test', 'deploy', 'flows', 'src/bot', 'src/room'].map(folder =>
		join(root, folder),
	);
	const isThere = (path: string) =>
		somewhere.some(folder => existsSync(join(folder, path))) ||
		[doors, isOfRegion, packages].some(names => names.has(path));
	expect(told.length).toBeGreaterThan(40);
	expect(told.filter(path => !isThere(path))).toEqual([]);
});

test('DEVELOPERS.md names only scripts that package.json has', () => {
	const scripts = found(read('package.json'), /^\t\t"([a-z]+)": "(?=[^"]*(?:npm|node|biome|tsc|vitest))/gm);
	const told = found(read('DEVELOPERS.md'), /npm run (?:-s )?([a-z]+)/g);
	expect(scripts).toContain('bench');
	expect(told.filter(name => !scripts.includes(name))).toEqual([]);
});

/** The table of rooms names doors without their folders, and authors speak of a region's files alike. */
const doors = new Set(
	readdirSync(join(root, 'src'), {withFileTypes: true})
		.filter(entry => entry.isDirectory())
		.flatMap(entry => readdirSync(join(root, 'src', entry.name))),
);
const isOfRegion = new Set(readdirSync(join(root, 'flows', 'british-isles')));

/** Some packages are named like files. */
const packages = new Set(found(read('package.json'), /^\t\t"([^"]+)": "\d/gm));
