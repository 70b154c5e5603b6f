/** What the buttons under the words of a command do; they are for those who may use the command. */
import {type CommandName, isCommand} from './command-table.ts';
import {answerForget} from './commands/forget.ts';
import {retryForwarding} from './commands/forwarding.ts';
import {orderMyData} from './commands/mydata.ts';
import {type Desk, readerAt, sayHere} from './desk.ts';
import {mayUse} from './guard.ts';

type Act = (desk: Desk, parts: readonly string[]) => Promise<void>;

const menus: Readonly<Partial<Record<CommandName, Act>>> = {
	mydata: orderMyData,
	forget: answerForget,
	forwarding: retryForwarding,
};

/** Does what a button of a command asks for; clients can send what no button had, so each is looked at again. */
export async function actOnMenu(
	desk: Desk,
	{menu, parts}: {readonly menu: string; readonly parts: readonly string[]},
): Promise<void> {
	const act = isCommand(menu) ? menus[menu] : undefined;
	if (!isCommand(menu) || !act) return sayHere(desk, readerAt(desk).say.say('nothing-open'));
	if (await mayUse(desk, menu)) await act(desk, parts);
}
