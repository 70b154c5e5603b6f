/** /bowl: what is soaking, and since when; a group has one bowl together. */
import {standAt} from '../../find/stand.ts';
import type {Trail} from '../../find/trail.ts';
import {type FindRow, soakingFinds} from '../../store/finds.ts';
import {packButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere, shelfOf} from '../desk.ts';
import {trailIfSound} from '../stored-trail.ts';
import {mayAnswer} from '../whose.ts';
import {timeText} from '../words.ts';

/** So many cases fit a phone. */
const mostShown = 8;

/** Lists the cases in water, each with a button that opens it: the group's here, or a person's own. */
export async function showBowl({desk}: Ctx): Promise<void> {
	const {say} = readerAt(desk);
	const isGroup = desk.chat.kind === 'group';
	const rows = await soakingFinds(desk.tx, isGroup ? {chat: desk.chat.id} : {person: desk.person.id});
	if (rows.length === 0) return sayHere(desk, say.say('bowl-empty'));
	const cases = rows.map(row => ({row, trail: trailIfSound(desk, row)}));
	const shown = cases.slice(0, mostShown);
	const more = cases.length - shown.length;
	const isUsable = ({row, trail}: Case) => trail !== undefined && mayAnswer(desk, row);
	const open = shown.filter(isUsable).map(({row}) => [
		{
			text: say.say('bowl-open', {number: String(row.id)}),
			data: packButton({kind: 'resume', find: row.id}),
		},
	]);
	const newest = cases.findLast(one => one.row.chat === desk.chat.id && isUsable(one))?.row;
	const another = newest
		? [
				{
					text: say.say('bowl-another'),
					data: packButton({kind: 'find', find: newest.id, turn: newest.turn, option: 'another'}),
				},
			]
		: [];
	const text = [
		say.say(isGroup ? 'bowl-list-group' : 'bowl-list'),
		...shown.map(one => `• ${lineOf(desk, one)}`),
		...(more > 0 ? [say.say('bowl-more', {count: more})] : []),
	];
	return sayHere(desk, text.join('\n'), [...open, another]);
}

type Case = {readonly row: FindRow; readonly trail: Trail | undefined};

function lineOf(desk: Desk, {row, trail}: Case): string {
	const reader = readerAt(desk);
	const {say} = reader;
	const number = String(row.id);
	if (!trail) return say.say('bowl-broken', {number});
	const {bowl} = standAt(shelfOf(desk.house, row.region).flow, trail).facts;
	const isReady = !bowl || bowl.dueAt <= desk.now;
	return say.say(isReady ? 'bowl-ready' : 'bowl-soaking', {
		number,
		since: timeText(bowl?.startedAt ?? row.changedAt, reader),
		due: timeText(bowl?.dueAt ?? desk.now, reader),
	});
}
