/** What people do with their saved finds. */
import type {Actor} from './actor.ts';

/** Opens the newest draft and presses these buttons. */
export async function changeNewest(person: Actor, ...labels: readonly string[]): Promise<void> {
	await person.sends('/drafts');
	await person.presses(person.labels()[0] ?? '');
	for (const label of labels) await person.presses(label);
}
