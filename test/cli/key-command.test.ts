import {expect, test} from 'vitest';
import {run} from './project.ts';

test.each(['check', 'draw', 'vocabulary', 'name', 'prove'])('%s explains itself', async verb => {
	const {said, exitCode} = await run([verb, '--help']);
	expect(said).toMatch(new RegExp(`^npm run key -- ${verb} `));
	expect(exitCode).toBe(0);
});

test('the command lists its verbs when it is asked, and when it is called without one', async () => {
	const asked = await run(['--help']);
	const bare = await run([]);
	for (const verb of ['check', 'draw', 'vocabulary', 'name', 'prove'])
		expect(asked.said).toContain(`\n  ${verb} `);
	expect(bare.said).toBe(asked.said);
	expect([asked.exitCode, bare.exitCode]).toEqual([0, 2]);
});

test('an unknown verb is refused with those that are known', async () => {
	const {said, complained, exitCode} = await run(['paint']);
	expect(complained).toBe('Expected one of check, draw, vocabulary, name, prove; got "paint"');
	expect(said).toBe('');
	expect(exitCode).toBe(2);
});

test.each(['check', 'draw', 'vocabulary', 'name', 'prove'])(
	'an unknown option of %s is refused in one line',
	async verb => {
		const {complained, exitCode} = await run([verb, 'british-isles', '--paint']);
		expect(complained).toContain("'--paint'");
		expect(complained).not.toMatch(/^\s+at /m);
		expect(exitCode).toBe(2);
	},
);

test.each(['draw', 'vocabulary', 'name', 'prove'])(
	'%s without a region says how it is called',
	async verb => {
		const {said, exitCode} = await run([verb]);
		expect(said).toMatch(new RegExp(`^npm run key -- ${verb} <region>`));
		expect(exitCode).toBe(2);
	},
);

test.each(['draw', 'vocabulary', 'name', 'prove'])('%s refuses a region that is not there', async verb => {
	const {complained, exitCode} = await run([verb, 'atlantis']);
	expect(complained).toContain('got "atlantis"');
	expect(exitCode).toBe(1);
});
