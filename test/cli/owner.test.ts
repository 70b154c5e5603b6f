import {randomBytes} from 'node:crypto';
import {mkdtempSync, readdirSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {runOwner} from '../../src/cli/owner-command.ts';
import {offerClaim, ownershipLivesMs, redeem} from '../../src/store/invitations.ts';
import {openStore} from '../../src/store/open.ts';
import {grantRole, rolesOf} from '../../src/store/roles.ts';
import {addPerson} from '../store/rows.ts';

const now = Date.UTC(2026, 4, 2, 9, 30);

/** A database with an owner, and the command called beside it. */
async function keeper() {
	const folder = mkdtempSync(join(tmpdir(), 'owner-'));
	const db = await openStore(join(folder, 'pursekey.db'));
	onTestFinished(async () => {
		await db.destroy();
		rmSync(folder, {recursive: true, force: true});
	});
	const [ada, ben, cato] = [await addPerson(db, 1), await addPerson(db, 2), await addPerson(db, 3)];
	await grantRole(db, {person: ada, role: 'owner', now: 1});
	await grantRole(db, {person: ada, role: 'verifier', now: 1});
	const said: string[] = [];
	const say = (line: string) => void said.push(line);
	const tools = {calledIn: folder, random: randomBytes, now, say, complain: say};
	const owner = (...args: readonly string[]) => runOwner(args, {...tools, environment: {DATA_DIR: folder}});
	const code = () => /: \/start ([\w-]{24})$/.exec(said.at(-1) ?? '')?.[1] ?? 'none';
	const bring = (person: number, brought: string, at = now) =>
		db.transaction().execute(tx => redeem(tx, {code: brought, person, now: at}));
	return {db, folder, said, tools, owner, code, bring, ada, ben, cato};
}

test('the code makes one more owner, once, and the one before stays', async () => {
	const {db, said, owner, code, bring, ada, ben, cato} = await keeper();
	expect(await owner()).toBe(0);
	expect(said).toHaveLength(1);
	expect(said[0]).toContain('by 2026-05-03 09:30 UTC');
	expect(await bring(ben, code())).toEqual({kind: 'granted', role: 'owner', invitedBy: undefined});
	expect(await bring(cato, code())).toEqual({kind: 'refused'});
	expect(await rolesOf(db, ben)).toEqual(['owner']);
	expect(await rolesOf(db, ada)).toEqual(['owner', 'verifier']);
});

test('with --instead those who owned it own it no more, and keep what else they were trusted with', async () => {
	const {db, said, owner, code, bring, ada, ben} = await keeper();
	expect(await owner('--instead')).toBe(0);
	expect(said[0]).toBe('Owners before, who are none any more: 1');
	expect(await rolesOf(db, ada)).toEqual(['verifier']);
	expect(await bring(ben, code())).toMatchObject({kind: 'granted'});
	expect(await rolesOf(db, ben)).toEqual(['owner']);
});

test('a code is good for a day, and only the newest one works until the program starts again', async () => {
	const {db, owner, code, bring, ben, cato} = await keeper();
	await owner();
	const first = code();
	await owner();
	const second = code();
	expect(second).not.toBe(first);
	expect(await bring(ben, first)).toEqual({kind: 'refused'});
	expect(await bring(ben, second, now + ownershipLivesMs)).toEqual({kind: 'refused'});
	expect(await bring(ben, second, now + ownershipLivesMs - 1)).toMatchObject({kind: 'granted'});
	await owner();
	await db.transaction().execute(tx => offerClaim(tx, {code: 'of-the-next-start', now}));
	expect(await bring(cato, code())).toEqual({kind: 'refused'});
});

test('without a database nothing is made, and the command says where it looked', async () => {
	const {folder, said, tools} = await keeper();
	const elsewhere = join(folder, 'elsewhere');
	expect(await runOwner([], {...tools, environment: {DATA_DIR: elsewhere}})).toBe(1);
	expect(said).toEqual([`Expected a database at ${join(elsewhere, 'pursekey.db')}; there is none`]);
	expect(readdirSync(folder)).not.toContain('elsewhere');
});

test('a call that nobody can read changes nothing and leaves with 2, and help says what it does', async () => {
	const {db, said, owner, ada} = await keeper();
	expect(await owner('--insted')).toBe(2);
	expect(await owner('ada')).toBe(2);
	expect(await owner('--help')).toBe(0);
	expect(said.at(-1)).toContain('npm run owner -- --instead');
	expect(await rolesOf(db, ada)).toEqual(['owner', 'verifier']);
	expect(await db.selectFrom('invitation').select('hash').execute()).toEqual([]);
});
