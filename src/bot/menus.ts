/** What the buttons under the words of a command do; they are for those who may use the command. */
import type {CommandName} from './command-table.ts';
import {actOnPlan} from './commands/day.ts';
import {actOnDay} from './commands/days.ts';
import {listOlder} from './commands/drafts.ts';
import {goOnWithExport} from './commands/export.ts';
import {answerForget} from './commands/forget.ts';
import {retryForwarding} from './commands/forwarding.ts';
import {makeInvitation} from './commands/invite.ts';
import {orderMyData} from './commands/mydata.ts';
import {setRegion} from './commands/region.ts';
import {orderSeason} from './commands/season.ts';
import {setZone} from './commands/settings.ts';
import {setSharing} from './commands/sharing.ts';
import {showTallyOf} from './commands/tally.ts';
import {actOnTeam} from './commands/team.ts';
import {actOnTellMe} from './commands/tellme.ts';
import {actOnCast} from './day-progress.ts';
import {type Desk, readerAt, sayHere} from './desk.ts';
import {mayUse} from './guard.ts';
import {actOnReview} from './review-act.ts';

/** A menu and the command to which it belongs. */
type Menu = {
	readonly of: CommandName;
	readonly act: (desk: Desk, parts: readonly string[]) => Promise<void>;
};

const menus: ReadonlyMap<string, Menu> = new Map<string, Menu>([
	['sharing', {of: 'sharing', act: setSharing}],
	['mydata', {of: 'mydata', act: orderMyData}],
	['forget', {of: 'forget', act: answerForget}],
	['review', {of: 'review', act: actOnReview}],
	['export', {of: 'export', act: goOnWithExport}],
	['season', {of: 'season', act: orderSeason}],
	['forwarding', {of: 'forwarding', act: retryForwarding}],
	['plan', {of: 'day', act: actOnPlan}],
	['cast', {of: 'day', act: actOnCast}],
	['day', {of: 'days', act: actOnDay}],
	['tellme', {of: 'tellme', act: actOnTellMe}],
	['tally', {of: 'tally', act: showTallyOf}],
	['drafts', {of: 'drafts', act: listOlder}],
	['region', {of: 'region', act: setRegion}],
	['settings', {of: 'settings', act: setZone}],
	['invite', {of: 'invite', act: makeInvitation}],
	['team', {of: 'team', act: actOnTeam}],
]);

/** Does what a button of a command asks for; clients can send what no button had, so each is looked at again. */
export async function actOnMenu(
	desk: Desk,
	{menu: name, parts}: {readonly menu: string; readonly parts: readonly string[]},
): Promise<void> {
	const menu = menus.get(name);
	if (!menu) return sayHere(desk, readerAt(desk).say.say('nothing-open'));
	if (await mayUse(desk, menu.of)) await menu.act(desk, parts);
}
