import {mkdirSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {readRegion} from '../../src/key/region.ts';
import {projectWith, run} from './project.ts';

const {key, profiles} = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const [taxa, questions] = [profiles.taxa, key.questions].map(named => Object.keys(named).length);
const clean = `british-isles: ${taxa} taxa, ${questions} questions, nothing wrong`;

test('a region without a fault is said in one line', async () => {
	const {said, complained, exitCode} = await run(['check', 'british-isles']);
	expect(said).toBe(clean);
	expect(complained).toBe('');
	expect(exitCode).toBe(0);
});

test('without a name every region is checked', async () => {
	const root = projectWith();
	mkdirSync(join(root, 'flows', 'atlantis'));
	const {said, exitCode} = await run(['check'], {root});
	expect(said).toContain('flows/atlantis/key.yaml:1: There is no such file.');
	expect(said).toContain('flows/atlantis/profiles.yaml:1: There is no such file.');
	expect(said).toContain('flows/atlantis/en.ftl:1: There is no such file.');
	expect(said).toContain(clean);
	expect(exitCode).toBe(1);
});

test('a fault is said with its file from where the command was called, its line, and what to do', async () => {
	const root = projectWith({in: 'british-isles/key.yaml', find: 'leads: net}', put: 'leads: nets}'});
	const {said, exitCode} = await run(['check', 'british-isles'], {root});
	expect(said).toMatch(
		/^flows\/british-isles\/key\.yaml:\d+: "broad-length" leads to "nets", which is neither a question nor a taxon with a profile\. Write question "nets"/m,
	);
	expect(said).not.toContain('nothing wrong');
	expect(exitCode).toBe(1);
});

test.each([
	['key.yaml', 'begins: outline', 'begins: [outline'],
	['key.yaml', 'begins: outline', 'begin: outline'],
	['profiles.yaml', 'rank: species', 'rank: kind'],
])('a file %s that cannot be read is a fault with a line, not a stack of calls', async (name, find, put) => {
	const root = projectWith({in: `british-isles/${name}`, find, put});
	const {said, complained, exitCode} = await run(['check'], {root});
	expect(said).toMatch(new RegExp(`^flows/british-isles/${name.replace('.', '\\.')}:\\d+: `, 'm'));
	expect(`${said}${complained}`).not.toMatch(/^\s+at /m);
	expect(exitCode).toBe(1);
});

test('a sentence that stands twice in a region is a fault of the second', async () => {
	const again = 'why-keel = Again.\nwhy-keel =';
	const root = projectWith({in: 'british-isles/en.ftl', find: 'why-keel =', put: again});
	const {said, exitCode} = await run(['check'], {root});
	expect(said).toMatch(/british-isles\/en\.ftl:\d+: The sentence "why-keel" stands on line \d+ already\./);
	expect(exitCode).toBe(1);
});

test('a sentence of a region that all regions share already is a fault', async () => {
	const root = projectWith({
		in: 'british-isles/en.ftl',
		find: 'why-keel =',
		put: 'why-alive = No.\nwhy-keel =',
	});
	const {said} = await run(['check'], {root});
	expect(said).toMatch(
		/british-isles\/en\.ftl:\d+: The sentence "why-alive" stands in .*flows\/en\.ftl:\d+ already/,
	);
});

test('a missing sentence around the key is a fault although the region has none', async () => {
	const root = projectWith({in: 'en.ftl', find: /^why-alive =.*\n/m, put: ''});
	const {said, exitCode} = await run(['check', 'british-isles'], {root});
	expect(said).toMatch(/^flows\/around\.yaml:\d+: The sentence "why-alive" is missing in "en"/m);
	expect(said).toContain(clean);
	expect(exitCode).toBe(1);
});

test('missing questions around the key are a fault', async () => {
	const root = projectWith();
	rmSync(join(root, 'flows', 'around.yaml'));
	const {said, exitCode} = await run(['check'], {root});
	expect(said).toContain('flows/around.yaml:1: There is no such file.');
	expect(exitCode).toBe(1);
});

test('a region that is not there is said by name with those that are', async () => {
	const {complained, exitCode} = await run(['check', 'atlantis']);
	expect(complained).toMatch(/^Expected a region under flows\/, one of .*"british-isles".*; got "atlantis"$/);
	expect(exitCode).toBe(1);
});
