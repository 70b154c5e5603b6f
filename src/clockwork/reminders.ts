/** Bowls that are due: each is told once, out of the quiet hours, also after the program was down. */
import {outOfQuiet} from '../place/quiet-hours.ts';
import {markReminded, moveReminder, type Reminder, remindersDueBy} from '../store/reminders.ts';
import type {Db, Tx} from '../store/schema.ts';

/** What reminding works with. */
export type ReminderTools = {
	readonly db: Db;
	readonly now: () => number;
	/** Lets all due finds of one bowl wake. */
	readonly onDue: (tx: Tx, reminders: readonly Reminder[]) => Promise<void>;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

const atOnce = 50;

/** Wakes the bowls that are due; false when none is. */
export async function wakeDueBowls(tools: ReminderTools): Promise<boolean> {
	const {db, now, onDue, log} = tools;
	const due = await remindersDueBy(db, now(), atOnce);
	for (const reminders of byBowl(due)) {
		try {
			await db.transaction().execute(async tx => {
				const awake: Reminder[] = [];
				for (const reminder of reminders) {
					const allowedAt = outOfQuiet(now(), reminder.zone);
					if (allowedAt > now()) await moveReminder(tx, {id: reminder.id, dueAt: allowedAt});
					else if (await markReminded(tx, reminder.id, now())) awake.push(reminder);
				}
				if (awake.length > 0) await onDue(tx, awake);
			});
		} catch (error) {
			log({
				level: 'error',
				what: 'reminder failed',
				finds: reminders.map(({find}) => find),
				error: String(error),
			});
			for (const {id} of reminders) await moveReminder(db, {id, dueAt: now() + 600_000});
		}
	}
	return due.length === atOnce;
}

function byBowl(due: readonly Reminder[]): readonly (readonly Reminder[])[] {
	const bowls = new Map<string, Reminder[]>();
	for (const reminder of due) {
		// Cases of one bowl may be spoken of in two chats, and each is told.
		const bowl = `${reminder.bowl ?? reminder.find} ${reminder.chat}`;
		bowls.set(bowl, [...(bowls.get(bowl) ?? []), reminder]);
	}
	return [...bowls.values()];
}
