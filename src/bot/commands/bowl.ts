/** /bowl: what is soaking, and since when. */
import {standAt} from '../../find/stand.ts';
import {soakingFinds} from '../../store/finds.ts';
import {packButton} from '../button.ts';
import {type Ctx, readerAt, sayHere, shelfOf} from '../desk.ts';
import {readTrail} from '../find-turn.ts';
import {timeText} from '../words.ts';

/** Lists the person's cases in water, each with a button that opens it. */
export async function showBowl({desk}: Ctx): Promise<void> {
	const reader = readerAt(desk);
	const {say} = reader;
	const rows = await soakingFinds(desk.tx, {chat: desk.chat.id, person: desk.person.id});
	if (rows.length === 0) return sayHere(desk, say.say('bowl-empty'));
	const lines = rows.map(row => {
		const {bowl} = standAt(shelfOf(desk.house, row.region).flow, readTrail(row)).facts;
		const isReady = !bowl || bowl.dueAt <= desk.now;
		return say.say(isReady ? 'bowl-ready' : 'bowl-soaking', {
			number: String(row.id),
			since: timeText(bowl?.startedAt ?? row.changedAt, reader),
			due: timeText(bowl?.dueAt ?? desk.now, reader),
		});
	});
	const open = rows.slice(0, 20).map(row => [
		{
			text: say.say('bowl-open', {number: String(row.id)}),
			data: packButton({kind: 'resume', find: row.id}),
		},
	]);
	const newest = rows.at(-1);
	const another = newest
		? [
				{
					text: say.say('bowl-another'),
					data: packButton({kind: 'find', find: newest.id, turn: newest.turn, option: 'another'}),
				},
			]
		: [];
	return sayHere(desk, [say.say('bowl-list'), ...lines.map(line => `• ${line}`)].join('\n'), [
		...open,
		another,
	]);
}
