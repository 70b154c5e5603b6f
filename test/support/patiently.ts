/** A write of a test beside a running program, whose own write may be under way in the same thread. */

/** Tries again while the database is locked: the program finishes its transaction as soon as it gets the thread. */
export async function patiently<T>(write: () => Promise<T>): Promise<T> {
	for (let tries = 1; ; tries++) {
		try {
			return await write();
		} catch (error) {
			if (tries === 5 || !String(error).includes('locked')) throw error;
			await new Promise(resolve => setTimeout(resolve, 20));
		}
	}
}
