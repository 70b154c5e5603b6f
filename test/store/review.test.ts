import {expect, test} from 'vitest';
import {decisionsOf, keepDecision, lastDecisions} from '../../src/store/decisions.ts';
import {keepDraft, withdrawDraft} from '../../src/store/drafts.ts';
import {findById} from '../../src/store/finds.ts';
import {forgetInReview} from '../../src/store/forget-in-review.ts';
import {forgetLettersOf, keepLetter, lettersOf} from '../../src/store/letters.ts';
import {
	claimLivesMs,
	claimOf,
	claimReview,
	countToReview,
	nextToReview,
	releaseClaims,
	restUntil,
	settleReview,
	waitForReview,
} from '../../src/store/review.ts';
import {grantRole, rolesOf} from '../../src/store/roles.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {storeWithFinds} from '../record/kept.ts';
import {addPerson} from './rows.ts';

/** Three drafts of person 1, saved one after another, and two people who look at them. */
async function threeDrafts() {
	const db = await storeWithFinds(3);
	for (const [find, isUnusual] of [
		[1, false],
		[2, false],
		[3, true],
	] as const) {
		const row = await findById(db, find);
		await keepDraft(db, {find, person: 1, draft: {id: row?.uuid ?? ''}, now: find});
		await waitForReview(db, {find, isUnusual, now: find});
	}
	const [ben, cato] = [await addPerson(db, 1001), await addPerson(db, 1002)];
	/** The order in which a person is shown what waits, going on from each. */
	const order = async (person: number, now = 100) => {
		const seen: (number | undefined)[] = [await nextToReview(db, {person, now})];
		for (;;) {
			const next = await nextToReview(db, {person, now, after: seen.at(-1)});
			if (next === undefined || seen.includes(next)) return seen;
			seen.push(next);
		}
	};
	return {db, ben, cato, order};
}

test('unusual drafts are shown first, then the oldest, and after the last the first again', async () => {
	const {db, ben, order} = await threeDrafts();
	expect(await order(ben)).toEqual([3, 1, 2]);
	expect(await nextToReview(db, {person: ben, now: 100, after: 2})).toBe(3);
	expect(await countToReview(db, {person: ben, now: 100})).toBe(3);
});

test('nobody is shown their own drafts', async () => {
	const {db} = await threeDrafts();
	expect(await nextToReview(db, {person: 1, now: 100})).toBeUndefined();
	expect(await countToReview(db, {person: 1, now: 100})).toBe(0);
});

test('what one looks at is shown to nobody else for an hour, then again', async () => {
	const {db, ben, cato, order} = await threeDrafts();
	await chooseSharing(db, ben, {publicName: 'Wrack walker'});
	await claimReview(db, {find: 3, person: ben, now: 100});
	expect(await claimOf(db, 3, 101)).toEqual({person: ben, publicName: 'Wrack walker', claimedAt: 100});
	expect(await order(ben, 101)).toEqual([3, 1, 2]);
	expect(await order(cato, 99 + claimLivesMs)).toEqual([1, 2]);
	expect(await order(cato, 100 + claimLivesMs)).toEqual([3, 1, 2]);
	expect(await claimOf(db, 3, 100 + claimLivesMs)).toBeUndefined();
	await claimReview(db, {find: 1, person: ben, now: 100});
	await releaseClaims(db, {person: ben, find: 3});
	expect(await order(cato, 101)).toEqual([3, 2]);
	await releaseClaims(db, {person: ben});
	expect(await order(cato, 101)).toEqual([3, 1, 2]);
});

test('a draft about which its finder was asked rests until the answer or the end of patience', async () => {
	const {db, ben, order} = await threeDrafts();
	await restUntil(db, {find: 3, until: 500});
	expect(await order(ben, 499)).toEqual([1, 2]);
	expect(await order(ben, 500)).toEqual([3, 1, 2]);
	await restUntil(db, {find: 3, until: undefined});
	expect(await order(ben, 101)).toEqual([3, 1, 2]);
});

test('a decided draft and one taken back wait no more', async () => {
	const {db, ben, order} = await threeDrafts();
	await settleReview(db, {find: 3, now: 100});
	await withdrawDraft(db, {find: 1, now: 100});
	expect(await order(ben)).toEqual([2]);
	await waitForReview(db, {find: 3, isUnusual: false, now: 200});
	expect(await order(ben)).toEqual([2]);
});

test('every decision is kept, the newest counts, and a forgotten verifier leaves no name', async () => {
	const {db, ben, cato} = await threeDrafts();
	await chooseSharing(db, ben, {publicName: 'Wrack walker'});
	const of = {find: 3, version: 1};
	await keepDecision(db, {...of, person: ben, said: {outcome: 'agreed'}, now: 5});
	await keepDecision(db, {
		...of,
		person: cato,
		said: {outcome: 'other-name', name: 'testa-minor', reason: 'size', words: 'Too small.'},
		now: 6,
	});
	expect(await decisionsOf(db, 3)).toMatchObject([
		{person: ben, publicName: 'Wrack walker', outcome: 'agreed', at: 5, version: 1},
		{person: cato, publicName: undefined, outcome: 'other-name', words: 'Too small.', at: 6},
	]);
	expect([...(await lastDecisions(db, [1, 3])).entries()]).toMatchObject([[3, {outcome: 'other-name'}]]);
	expect(await lastDecisions(db, [])).toEqual(new Map());
	await db.transaction().execute(tx => forgetInReview(tx, ben));
	expect(await decisionsOf(db, 3)).toMatchObject([
		{person: undefined, publicName: undefined, outcome: 'agreed', at: 5},
		{person: cato, outcome: 'other-name'},
	]);
});

test("of whoever is forgotten no role or claim stays, and their letters are nobody's", async () => {
	const {db, ben, cato, order} = await threeDrafts();
	await grantRole(db, {person: ben, role: 'verifier', now: 1});
	await claimReview(db, {find: 3, person: ben, now: 100});
	const question = await keepLetter(db, {find: 3, person: ben, words: 'Was it wet?', now: 5});
	await keepLetter(db, {find: 3, person: 1, answers: question, photo: 4, now: 6});
	await db.transaction().execute(tx => forgetInReview(tx, ben));
	expect(await rolesOf(db, ben)).toEqual([]);
	expect(await order(cato, 101)).toEqual([3, 1, 2]);
	expect(await lettersOf(db, 3)).toMatchObject([
		{person: undefined, words: 'Was it wet?', answers: undefined},
		{person: 1, words: undefined, photo: 4, answers: question},
	]);
	await forgetLettersOf(db, 3);
	expect(await lettersOf(db, 3)).toEqual([]);
});
