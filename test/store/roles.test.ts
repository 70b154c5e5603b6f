import {expect, test} from 'vitest';
import {openStore} from '../../src/store/open.ts';
import {forgetRoles, grantRole, peopleWith, rolesOf, withdrawRole} from '../../src/store/roles.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {newFile} from '../record/kept.ts';
import {addPerson} from './rows.ts';

test('a role is given once, and who has most trust comes first', async () => {
	const db = await openStore(newFile());
	const ada = await addPerson(db, 1);
	expect(await rolesOf(db, ada)).toEqual([]);
	expect(await grantRole(db, {person: ada, role: 'verifier', now: 5})).toBe(true);
	expect(await grantRole(db, {person: ada, role: 'verifier', now: 6})).toBe(false);
	expect(await grantRole(db, {person: ada, role: 'owner', now: 7})).toBe(true);
	expect(await rolesOf(db, ada)).toEqual(['owner', 'verifier']);
});

test('people with a role are listed by the names they chose, first come first', async () => {
	const db = await openStore(newFile());
	const ada = await addPerson(db, 1);
	const ben = await addPerson(db, 2);
	await chooseSharing(db, ada, {publicName: 'Wrack walker'});
	await grantRole(db, {person: ben, role: 'verifier', by: ada, now: 5});
	await grantRole(db, {person: ada, role: 'verifier', now: 6});
	expect(await peopleWith(db, 'verifier')).toEqual([
		{person: ben, role: 'verifier', grantedAt: 5, publicName: undefined},
		{person: ada, role: 'verifier', grantedAt: 6, publicName: 'Wrack walker'},
	]);
	expect(await peopleWith(db, 'owner')).toEqual([]);
});

test('a role that is taken back leaves the others', async () => {
	const db = await openStore(newFile());
	const ada = await addPerson(db, 1);
	await grantRole(db, {person: ada, role: 'verifier', now: 5});
	await grantRole(db, {person: ada, role: 'coordinator', now: 5});
	expect(await withdrawRole(db, {person: ada, role: 'verifier'})).toBe(true);
	expect(await withdrawRole(db, {person: ada, role: 'verifier'})).toBe(false);
	expect(await rolesOf(db, ada)).toEqual(['coordinator']);
});

test('whoever is forgotten has no role, and those they trusted keep theirs', async () => {
	const db = await openStore(newFile());
	const ada = await addPerson(db, 1);
	const ben = await addPerson(db, 2);
	await grantRole(db, {person: ada, role: 'owner', now: 5});
	await grantRole(db, {person: ben, role: 'verifier', by: ada, now: 6});
	await db.transaction().execute(tx => forgetRoles(tx, ada));
	expect(await rolesOf(db, ada)).toEqual([]);
	expect(await db.selectFrom('role').selectAll().execute()).toEqual([
		{person: ben, role: 'verifier', grantedBy: null, grantedAt: 6},
	]);
});
