import {createHash} from 'node:crypto';
import {expect, test} from 'vitest';
import {
	forgetInvitations,
	forgetOldInvitations,
	invitationLivesMs,
	invite,
	offerClaim,
	redeem,
} from '../../src/store/invitations.ts';
import {openStore} from '../../src/store/open.ts';
import {grantRole, rolesOf, withdrawRole} from '../../src/store/roles.ts';
import type {Db, Tx} from '../../src/store/schema.ts';
import {newFile} from '../record/kept.ts';
import {addPerson} from './rows.ts';

const within = <T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> => db.transaction().execute(work);
const code = 'a-code-that-nobody-guesses';

async function opened() {
	const db = await openStore(newFile());
	const [ada, ben, cato] = [await addPerson(db, 1), await addPerson(db, 2), await addPerson(db, 3)];
	await grantRole(db, {person: ada, role: 'owner', now: 1});
	const bring = (person: number, now: number, brought = code) =>
		within(db, tx => redeem(tx, {code: brought, person, now}));
	return {db, ada, ben, cato, bring};
}

test('an invitation gives its role to the first who brings it and to nobody else', async () => {
	const {db, ada, ben, cato, bring} = await opened();
	await within(db, tx => invite(tx, {code, role: 'verifier', by: ada, now: 10}));
	expect(await bring(ben, 11)).toEqual({kind: 'granted', role: 'verifier', invitedBy: ada});
	expect(await bring(ben, 12)).toEqual({kind: 'again', role: 'verifier'});
	expect(await bring(cato, 13)).toEqual({kind: 'refused'});
	expect(await rolesOf(db, ben)).toEqual(['verifier']);
	expect(await rolesOf(db, cato)).toEqual([]);
});

test('an invitation is good for a week', async () => {
	const {db, ada, ben, cato, bring} = await opened();
	await within(db, tx => invite(tx, {code, role: 'verifier', by: ada, now: 10}));
	expect(await bring(ben, 10 + invitationLivesMs)).toEqual({kind: 'refused'});
	expect(await bring(cato, 9 + invitationLivesMs)).toMatchObject({kind: 'granted'});
});

test('a link that was used does not bring back a role that was taken away', async () => {
	const {db, ada, ben, bring} = await opened();
	await within(db, tx => invite(tx, {code, role: 'verifier', by: ada, now: 10}));
	await bring(ben, 11);
	await withdrawRole(db, {person: ben, role: 'verifier'});
	expect(await bring(ben, 12)).toEqual({kind: 'refused'});
	expect(await rolesOf(db, ben)).toEqual([]);
});

test('a code is kept as its SHA-256 and nowhere as itself', async () => {
	const {db, ada} = await opened();
	await within(db, tx => invite(tx, {code, role: 'verifier', by: ada, now: 10}));
	const rows = await db.selectFrom('invitation').selectAll().execute();
	expect(rows.map(({hash}) => hash)).toEqual([createHash('sha256').update(code).digest('hex')]);
	expect(JSON.stringify(rows)).not.toContain(code);
});

test('the newest code owns a program that has no owner, once', async () => {
	const db = await openStore(newFile());
	const [ada, ben] = [await addPerson(db, 1), await addPerson(db, 2)];
	const offer = (brought: string) => within(db, tx => offerClaim(tx, {code: brought, now: 5}));
	const bring = (person: number, brought: string) =>
		within(db, tx => redeem(tx, {code: brought, person, now: 6}));
	expect(await offer('first')).toBe('offered');
	expect(await offer('second')).toBe('offered');
	expect(await bring(ada, 'first')).toEqual({kind: 'refused'});
	expect(await bring(ada, 'second')).toEqual({kind: 'granted', role: 'owner', invitedBy: undefined});
	expect(await bring(ben, 'second')).toEqual({kind: 'refused'});
	expect(await offer('third')).toBe('owned');
	expect(await bring(ben, 'third')).toEqual({kind: 'refused'});
	expect(await rolesOf(db, ada)).toEqual(['owner']);
});

test('of a person who is forgotten no invitation stays, and old ones go by themselves', async () => {
	const {db, ada, ben, bring} = await opened();
	const offers = {verifier: 'one', coordinator: 'two'} as const;
	for (const [role, brought] of Object.entries(offers)) {
		const wanted = role === 'verifier' ? 'verifier' : 'coordinator';
		await within(db, tx => invite(tx, {code: brought, role: wanted, by: ada, now: 10}));
	}
	await bring(ben, 11, 'one');
	await forgetOldInvitations(db, 11);
	expect(await db.selectFrom('invitation').select('role').execute()).toHaveLength(2);
	await within(db, tx => forgetInvitations(tx, ben));
	expect(await db.selectFrom('invitation').select('role').execute()).toEqual([{role: 'coordinator'}]);
	await forgetOldInvitations(db, 11 + invitationLivesMs);
	expect(await db.selectFrom('invitation').select('role').execute()).toEqual([]);
});
