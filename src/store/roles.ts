/** Who may do what besides looking at finds of their own. */
import type {Db, Tables, Tx} from './schema.ts';

/** What somebody is trusted with. */
export type Role = Tables['role']['role'];

/** Somebody with a role. */
export type Holder = {
	readonly person: number;
	readonly role: Role;
	/** UTC milliseconds. */
	readonly grantedAt: number;
	/** The name they chose. */
	readonly publicName: string | undefined;
};

/** Every role, the one trusted with most first. */
export const everyRole: readonly Role[] = ['owner', 'coordinator', 'verifier'];

/** The roles of a person, the one trusted with most first. */
export async function rolesOf(db: Db | Tx, person: number): Promise<readonly Role[]> {
	const rows = await db.selectFrom('role').select('role').where('person', '=', person).execute();
	return everyRole.filter(role => rows.some(row => row.role === role));
}

/** Gives a person a role; false when they had it before. */
export async function grantRole(
	tx: Tx | Db,
	granted: {
		readonly person: number;
		readonly role: Role;
		readonly by?: number | undefined;
		readonly now: number;
	},
): Promise<boolean> {
	const {numInsertedOrUpdatedRows} = await tx
		.insertInto('role')
		.values({
			person: granted.person,
			role: granted.role,
			grantedBy: granted.by ?? null,
			grantedAt: granted.now,
		})
		.onConflict(conflict => conflict.columns(['person', 'role']).doNothing())
		.executeTakeFirst();
	return (numInsertedOrUpdatedRows ?? 0n) > 0n;
}

/** Takes a role from a person; false when they did not have it. */
export async function withdrawRole(
	tx: Tx | Db,
	{person, role}: {readonly person: number; readonly role: Role},
): Promise<boolean> {
	const {numDeletedRows} = await tx
		.deleteFrom('role')
		.where('person', '=', person)
		.where('role', '=', role)
		.executeTakeFirst();
	return numDeletedRows > 0n;
}

/** Takes a role from everybody who has it, and says from how many. */
export async function withdrawFromAll(tx: Tx, role: Role): Promise<number> {
	const {numDeletedRows} = await tx.deleteFrom('role').where('role', '=', role).executeTakeFirst();
	return Number(numDeletedRows);
}

/** Everybody with a role, first come first. */
export async function peopleWith(db: Db | Tx, role: Role): Promise<readonly Holder[]> {
	const rows = await db
		.selectFrom('role')
		.innerJoin('person', 'person.id', 'role.person')
		.select(['role.person', 'role.role', 'role.grantedAt', 'person.publicName'])
		.where('role.role', '=', role)
		.orderBy('role.grantedAt')
		.orderBy('role.person')
		.execute();
	return rows.map(({publicName, ...row}) => ({...row, publicName: publicName ?? undefined}));
}

/** Forgets the roles of a person, and that they gave roles to others. */
export async function forgetRoles(tx: Tx, person: number): Promise<void> {
	await tx.deleteFrom('role').where('person', '=', person).execute();
	await tx.updateTable('role').set({grantedBy: null}).where('grantedBy', '=', person).execute();
}
