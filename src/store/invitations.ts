/** Roles offered by a code that works once; the code itself is never kept. */
import {createHash} from 'node:crypto';
import {grantRole, type Role} from './roles.ts';
import type {Db, Tx} from './schema.ts';

/** What became of a code. */
export type Redeemed =
	| {readonly kind: 'granted'; readonly role: Role; readonly invitedBy: number | undefined}
	/** This person used it before, and has the role. */
	| {readonly kind: 'again'; readonly role: Role}
	/** Unknown, used by somebody else, or too old: nobody learns which. */
	| {readonly kind: 'refused'};

/** How long an invitation holds. */
export const invitationLivesMs = 7 * 24 * 3_600_000;

/** How long a code holds that a keeper had printed. */
export const ownershipLivesMs = 24 * 3_600_000;

/** A code of 144 bits of chance, in letters that a link may hold (Bot API, deep linking: A-Z a-z 0-9 _ -, at most 64). */
export function newCode(random: (size: number) => Uint8Array): string {
	return Buffer.from(random(18)).toString('base64url');
}

/** Offers a role to whoever brings `code`, for a week and once. */
export async function invite(
	tx: Tx,
	offer: {readonly code: string; readonly role: Role; readonly by: number; readonly now: number},
): Promise<void> {
	const {by, ...rest} = offer;
	await keepOffer(tx, {...rest, invitedBy: by, expiresAt: offer.now + invitationLivesMs});
}

/** Lets whoever brings `code` own the program, unless it has an owner; codes given out before work no more. */
export async function offerClaim(
	tx: Tx,
	offer: {readonly code: string; readonly now: number},
): Promise<'offered' | 'owned'> {
	await dropClaims(tx);
	const owner = await tx.selectFrom('role').select('person').where('role', '=', 'owner').executeTakeFirst();
	if (owner) return 'owned';
	await keepOffer(tx, {...offer, role: 'owner', invitedBy: null, expiresAt: null});
	return 'offered';
}

/** Lets whoever brings `code` within a day own the program, whoever else owns it; codes given out before work no more. */
export async function offerOwnership(
	tx: Tx,
	offer: {readonly code: string; readonly now: number},
): Promise<void> {
	await dropClaims(tx);
	await keepOffer(tx, {...offer, role: 'owner', invitedBy: null, expiresAt: offer.now + ownershipLivesMs});
}

/** Gives the person the role that `code` stands for, once. */
export async function redeem(
	tx: Tx,
	{code, person, now}: {readonly code: string; readonly person: number; readonly now: number},
): Promise<Redeemed> {
	const found = await tx
		.selectFrom('invitation')
		.select(['hash', 'role', 'invitedBy', 'expiresAt', 'usedBy'])
		.where('hash', '=', hashOf(code))
		.executeTakeFirst();
	if (!found) return {kind: 'refused'};
	if (found.usedBy === person && (await has(tx, person, found.role)))
		return {kind: 'again', role: found.role};
	if (found.usedBy !== null || (found.expiresAt !== null && found.expiresAt <= now)) return {kind: 'refused'};
	await tx
		.updateTable('invitation')
		.set({usedBy: person, usedAt: now})
		.where('hash', '=', found.hash)
		.execute();
	const by = found.invitedBy ?? undefined;
	const isNew = await grantRole(tx, {person, role: found.role, by, now});
	return isNew ? {kind: 'granted', role: found.role, invitedBy: by} : {kind: 'again', role: found.role};
}

/** Forgets the invitations a person gave, and that they used one. */
export async function forgetInvitations(tx: Tx, person: number): Promise<void> {
	await tx.deleteFrom('invitation').where('invitedBy', '=', person).execute();
	await tx.deleteFrom('invitation').where('usedBy', '=', person).execute();
}

/** Forgets invitations that were used or ran out before `before`. */
export async function forgetOldInvitations(db: Db | Tx, before: number): Promise<void> {
	await db
		.deleteFrom('invitation')
		.where(({eb, or}) => or([eb('usedAt', '<', before), eb('expiresAt', '<', before)]))
		.execute();
}

/** Codes of nobody's, with which the program is claimed. */
async function dropClaims(tx: Tx): Promise<void> {
	await tx.deleteFrom('invitation').where('invitedBy', 'is', null).where('usedAt', 'is', null).execute();
}

type Offer = {
	readonly code: string;
	readonly role: Role;
	readonly invitedBy: number | null;
	readonly now: number;
	readonly expiresAt: number | null;
};

async function keepOffer(tx: Tx, {code, now, ...offer}: Offer): Promise<void> {
	await tx
		.insertInto('invitation')
		.values({...offer, hash: hashOf(code), createdAt: now, usedBy: null, usedAt: null})
		.execute();
}

async function has(tx: Tx, person: number, role: Role): Promise<boolean> {
	const found = await tx
		.selectFrom('role')
		.select('role')
		.where('person', '=', person)
		.where('role', '=', role)
		.executeTakeFirst();
	return found !== undefined;
}

// A code has 144 bits of chance, so a plain hash cannot be searched.
function hashOf(code: string): string {
	return createHash('sha256').update(code).digest('hex');
}
