import {randomBytes} from 'node:crypto';
import {expect, vi} from 'vitest';
import {runOwner} from '../../src/cli/owner-command.ts';
import {groups} from '../../src/room/people.ts';
import {type Journey, journeyTest} from '../support/journey.ts';
import {codeIn, commandsListed, idOf, trust} from '../support/team.ts';

vi.setConfig({testTimeout: 60_000});

const weekMs = 7 * 24 * 3_600_000;
const quickWays = ['plain', 'delivered twice'] as const;

/** Ada owns the program, Ben coordinates, Cato checks: each by a code that was passed on. */
async function team({person, ownerCode}: Journey) {
	const [ada, ben, cato] = [person('Ada'), person('Ben'), person('Cato')];
	await ada.sends(`/start ${ownerCode()}`);
	await ada.sends('/invite');
	await ada.presses('A coordinator');
	await ben.sends(`/start ${codeIn(ada)}`);
	await ben.sends('/invite');
	expect(ben.labels()).toEqual(['A verifier']);
	await ben.presses('A verifier');
	await cato.sends(`/start ${codeIn(ben)}`);
	return {ada, ben, cato};
}

journeyTest(
	'roles are handed down by codes that work once, and each sees the commands of their role',
	async journey => {
		const {room, person} = journey;
		const {ada, ben, cato} = await team(journey);
		expect(cato.sees.text).toContain('You are a verifier now.');
		expect(ben.sees.text).toContain('there is a new verifier');
		expect(await commandsListed(room, ada)).toEqual(
			expect.arrayContaining(['invite', 'team', 'find', 'help']),
		);
		expect(await commandsListed(room, cato)).not.toContain('invite');
		expect(await commandsListed(room, cato)).toEqual(expect.arrayContaining(['review', 'find', 'help']));
		await cato.sends('/help');
		expect(cato.sees.text).toContain('/review – Finds to be checked');
		expect(cato.sees.text).not.toContain('/invite');
		const dora = person('Dora');
		await dora.sends('/start nobody-made-this-code');
		expect(dora.sees.text).toContain('This link does not work.');
		expect(await commandsListed(room, dora)).toEqual([]);
		for (const command of ['/invite', '/team']) {
			await dora.sends(command);
			expect(dora.sees.text).toContain('only for people who help to run the survey');
		}
	},
	quickWays,
);

journeyTest(
	'a code that was used or is a week old gives nothing to anybody else',
	async ({person, db, forward}) => {
		const [ada, ben, cato] = [person('Ada'), person('Ben'), person('Cato')];
		await trust(db, ada, 'coordinator');
		await ada.sends('/invite');
		await ada.presses('A verifier');
		const code = codeIn(ada);
		await ben.sends(`/start ${code}`);
		await cato.sends(`/start ${code}`);
		expect(cato.sees.text).toContain('This link does not work.');
		await ben.sends(`/start ${code}`);
		expect(ben.sees.text).toContain('You have done this already');
		await ada.sends('/invite');
		await ada.presses('A verifier');
		const late = codeIn(ada);
		await forward(weekMs);
		await cato.sends(`/start ${late}`);
		expect(cato.sees.text).toContain('This link does not work.');
		expect(await db.selectFrom('role').select('role').execute()).toEqual([
			{role: 'coordinator'},
			{role: 'verifier'},
		]);
	},
	['plain'],
);

journeyTest(
	'a role taken back takes its commands along, and only those may take it who may give it',
	async journey => {
		const {room, db} = journey;
		const {ada, ben, cato} = await team(journey);
		await ben.sends('/team');
		expect(ben.sees.text).toContain('1. Somebody without a name, owner since 2 May 2026');
		expect(ben.labels()).toEqual(['Withdraw no. 3']);
		await ada.sends('/team');
		expect(ada.labels()).toEqual(['Withdraw no. 2', 'Withdraw no. 3']);
		await ada.presses('Withdraw no. 2');
		expect(ada.sees.text).toContain('is a coordinator now. Shall I take that back?');
		const question = ada.sees;
		await ada.presses('No, leave it');
		expect(await db.selectFrom('role').select('role').execute()).toHaveLength(3);
		await ada.presses('Yes, take it back', {on: question});
		expect(ada.sees.text).toContain('is not a coordinator any more');
		expect(ben.sees.text).toContain('You are not a coordinator here any more.');
		expect(await commandsListed(room, ben)).toEqual([]);
		// His old list still has its button.
		const old = ben.all.find(({buttons}) => buttons.flat().some(({text}) => text === 'Withdraw no. 3'));
		await ben.presses('Withdraw no. 3', old ? {on: old} : {});
		expect(ben.sees.text).toContain('only for people who help to run the survey');
		expect(cato.sees.text).not.toContain('any more');
		await ada.presses('Yes, take it back', {on: question});
		expect(ada.sees.text).toContain('taken back already');
	},
	quickWays,
);

journeyTest(
	'a group learns nothing of roles, and no code is taken there',
	async ({person, db, ownerCode}) => {
		const [ada, ben] = [person('Ada', groups[0].id), person('Ben', groups[0].id)];
		await trust(db, person('Ada'), 'coordinator');
		await ben.sends('/team');
		expect(ben.sees.text).toBe('I cannot do this for you here. /help shows what I can do.');
		await ada.sends('/team');
		expect(ada.sees.text).toContain('Let us do this in our private chat');
		await ben.sends(`/start ${ownerCode()}`);
		expect(ben.sees.text).toContain('Please bring this code to our private chat');
		expect(await db.selectFrom('role').select('role').execute()).toEqual([{role: 'coordinator'}]);
	},
	['plain'],
);

journeyTest(
	'when the owner lost their account, a code from the machine makes another owner while the program runs',
	async journey => {
		const {folder, clock, person} = journey;
		const {ada} = await team(journey);
		const said: string[] = [];
		const say = (line: string) => void said.push(line);
		const tools = {
			calledIn: folder,
			environment: {DATA_DIR: folder},
			random: randomBytes,
			say,
			complain: say,
		};
		expect(await runOwner(['--instead'], {...tools, now: clock.now()})).toBe(0);
		const dora = person('Dora');
		await dora.sends(`/start ${/\/start ([\w-]+)$/.exec(said.at(-1) ?? '')?.[1]}`);
		expect(dora.sees.text).toContain('You are the owner of this survey now.');
		await dora.sends('/team');
		expect(dora.labels()).toHaveLength(2);
		await ada.sends('/team');
		expect(ada.sees.text).toContain('only for people who help to run the survey');
		journey.check();
	},
	['plain'],
);

journeyTest(
	'buttons under /invite and /team that an earlier program sent still do what they did, for those who may',
	async journey => {
		const {db} = journey;
		const {ada, ben, cato} = await team(journey);
		const [bens, catos] = [await idOf(db, ben), await idOf(db, cato)];
		await ada.makesUp('i.coordinator');
		expect(codeIn(ada)).toMatch(/^[\w-]{24}$/);
		for (const theirs of ['i.coordinator', `t.ask.coordinator.${bens.toString(36)}`]) {
			await ben.makesUp(theirs);
			expect(ben.sees.text).toContain('I cannot do this for you here.');
		}
		await ben.makesUp(`t.ask.verifier.${catos.toString(36)}`);
		await ben.presses('Yes, take it back');
		expect(cato.sees.text).toContain('You are not a verifier here any more.');
		await ada.makesUp('tp.0');
		expect(ada.labels()).toHaveLength(1);
		await cato.makesUp('tp.0');
		expect(cato.sees.text).toContain('only for people who help to run the survey');
		journey.check();
	},
	['plain'],
);
