/** Somebody leaves for good: what they did for others stays, without them. */
import {forgetVerifier} from './decisions.ts';
import {forgetInvitations} from './invitations.ts';
import {forgetLetterWriter} from './letters.ts';
import {releaseClaims} from './review.ts';
import {forgetRoles} from './roles.ts';
import type {Tx} from './schema.ts';

/** Forgets a person's roles and invitations; their decisions and letters stay with the finds they are about, nameless. */
export async function forgetInReview(tx: Tx, person: number): Promise<void> {
	await releaseClaims(tx, {person});
	await forgetVerifier(tx, person);
	await forgetLetterWriter(tx, person);
	await forgetInvitations(tx, person);
	await forgetRoles(tx, person);
}
