/** What each command does. */
import type {CommandName} from './command-table.ts';
import {showBowl} from './commands/bowl.ts';
import {cancel} from './commands/cancel.ts';
import {showDrafts} from './commands/drafts.ts';
import {beginFindCommand} from './commands/find.ts';
import {askToForget} from './commands/forget.ts';
import {showForwarding} from './commands/forwarding.ts';
import {showHelp} from './commands/help.ts';
import {askWhom} from './commands/invite.ts';
import {sendMyData} from './commands/mydata.ts';
import {answerAlone} from './commands/onlyme.ts';
import {showRegions} from './commands/region.ts';
import {showSafety} from './commands/safety.ts';
import {say} from './commands/say.ts';
import {showSettings} from './commands/settings.ts';
import {start} from './commands/start.ts';
import {showTally} from './commands/tally.ts';
import {showTeam} from './commands/team.ts';
import type {Handler} from './guard.ts';

/** One for each name of the table. */
export const handlers: Readonly<Record<CommandName, Handler>> = {
	start,
	find: beginFindCommand,
	bowl: showBowl,
	tally: showTally,
	drafts: showDrafts,
	cancel,
	help: showHelp,
	safety: showSafety,
	region: showRegions,
	settings: showSettings,
	mydata: sendMyData,
	forget: askToForget,
	say,
	onlyme: answerAlone,
	invite: askWhom,
	team: showTeam,
	forwarding: showForwarding,
};
