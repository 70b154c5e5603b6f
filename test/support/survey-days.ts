/** A coordinator who plans survey days in a journey, and people who asked to hear of them. */
import ICAL from 'ical.js';
import type {Room} from '../../src/room/server.ts';
import type {Actor} from './actor.ts';
import type {Journey} from './journey.ts';

/** Every answer to the questions of a plan, in their order, for 16 May 2026 at Example Cove. */
export const planAnswers = [
	'Spring walk',
	'50.103, -5.543',
	'Example Cove',
	'16 May',
	'11:00',
	'14:00',
	'12:28',
	'0.9',
	'Official tables, Example Harbour',
	'At the slip below the car park',
	'Boots and a bag',
	'the beach hut',
	'The far end is cut off by the tide.',
] as const;

/** When the day of these answers begins (UTC ms): eleven in the morning in London. */
export const startsAt = Date.UTC(2026, 4, 16, 10);

/** Dora owns the program and may call for days, and Cato asked to hear of days on the coast of the British Isles. */
export async function surveyTeam({ownerCode, person}: Journey) {
	const [dora, cato] = [person('Dora'), person('Cato')];
	await dora.sends(`/start ${ownerCode()}`);
	await cato.sends('/start');
	await cato.sends('/tellme');
	await cato.presses('British Isles');
	return {dora, cato};
}

/** Answers every question of a new plan, up to the day as people will see it. */
export async function planDay(coordinator: Actor, answers: readonly string[] = planAnswers): Promise<void> {
	await coordinator.sends('/day');
	await coordinator.presses('Plan a new day');
	for (const answer of answers) await coordinator.sends(answer);
}

/** The calendar file under the last message that has one. */
export function calendarOf(room: Room, person: Actor) {
	const file = person.all.findLast(({document}) => document !== undefined)?.document;
	const bytes = file && room.fileBytes(file.fileId);
	if (!bytes) throw new Error('Expected a message with a file; there is none');
	const calendar = new ICAL.Component(ICAL.parse(Buffer.from(bytes).toString()));
	const part = calendar.getFirstSubcomponent('vevent');
	if (!part) throw new Error('Expected an event in the calendar; there is none');
	const event = new ICAL.Event(part);
	return {
		uid: event.uid,
		sequence: event.sequence,
		startsAt: event.startDate.toJSDate().getTime(),
		summary: event.summary,
		status: part.getFirstPropertyValue('status'),
	};
}
