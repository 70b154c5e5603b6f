/** What each command does. */
import type {CommandName} from './command-table.ts';
import {showBowl} from './commands/bowl.ts';
import {cancel} from './commands/cancel.ts';
import {showOwnDays} from './commands/day.ts';
import {showDays} from './commands/days.ts';
import {showDrafts} from './commands/drafts.ts';
import {askForExport} from './commands/export.ts';
import {beginFindCommand} from './commands/find.ts';
import {askToForget} from './commands/forget.ts';
import {showForwarding} from './commands/forwarding.ts';
import {showHelp} from './commands/help.ts';
import {askWhom} from './commands/invite.ts';
import {sendMyData} from './commands/mydata.ts';
import {answerAlone} from './commands/onlyme.ts';
import {showPrivacy} from './commands/privacy.ts';
import {showRegions} from './commands/region.ts';
import {showReview} from './commands/review.ts';
import {showSafety} from './commands/safety.ts';
import {say} from './commands/say.ts';
import {showSeason} from './commands/season.ts';
import {showSettings} from './commands/settings.ts';
import {showSharing} from './commands/sharing.ts';
import {sendSheet} from './commands/sheet.ts';
import {sortBowl} from './commands/sort.ts';
import {start} from './commands/start.ts';
import {showTally} from './commands/tally.ts';
import {showTeam} from './commands/team.ts';
import {showTellMe} from './commands/tellme.ts';
import {layTray} from './commands/tray.ts';
import type {Handler} from './guard.ts';

/** One for each name of the table. */
export const handlers: Readonly<Record<CommandName, Handler>> = {
	start,
	find: beginFindCommand,
	bowl: showBowl,
	sort: sortBowl,
	tray: layTray,
	tally: showTally,
	drafts: showDrafts,
	days: showDays,
	tellme: showTellMe,
	cancel,
	help: showHelp,
	safety: showSafety,
	region: showRegions,
	settings: showSettings,
	sheet: sendSheet,
	sharing: showSharing,
	privacy: showPrivacy,
	mydata: sendMyData,
	forget: askToForget,
	say,
	onlyme: answerAlone,
	day: showOwnDays,
	invite: askWhom,
	team: showTeam,
	review: showReview,
	forwarding: showForwarding,
	export: askForExport,
	season: showSeason,
};
