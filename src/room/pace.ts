import type {Core} from './core.ts';
import * as limits from './limits.ts';
import {refusal} from './refusal.ts';

type Sent = {readonly at: number; readonly chat: number};

/** Counts messages and throws the platform's 429, with the seconds to wait, when there are too many of them. */
export function openPace(core: Core): (chat: number) => void {
	let sent: readonly Sent[] = [];
	return chat => {
		const now = core.clock.now();
		sent = sent.filter(one => one.at > now - 60_000);
		const inChat = sent.filter(one => one.chat === chat);
		const {burst, perSecond} = limits.chatRate;
		const waitMs = Math.max(
			waitFor({list: sent, withinMs: 1000, most: limits.overallPerSecond}, now),
			waitFor({list: inChat, withinMs: (burst * 1000) / perSecond, most: burst}, now),
			chat < 0 ? waitFor({list: inChat, withinMs: 60_000, most: limits.groupPerMinute}, now) : 0,
		);
		const waitS = Math.ceil(waitMs / 1000);
		if (waitS > 0) throw refusal(429, `Too Many Requests: retry after ${waitS}`, {retry_after: waitS});
		sent = [...sent, {at: now, chat}];
	};
}

type Ceiling = {readonly list: readonly Sent[]; readonly withinMs: number; readonly most: number};

/** Milliseconds until the message that is `most` back in the list is old enough. */
function waitFor({list, withinMs, most}: Ceiling, now: number): number {
	const first = list[list.length - most];
	return first === undefined ? 0 : Math.max(0, first.at + withinMs - now);
}
