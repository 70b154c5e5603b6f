/** Counts what is sent, so that what goes to many stays within the limits of the platform and leaves room for answers. */

/** Keeps count of messages. A message counts from when it leaves until its window has passed since it was answered. */
export type Pace = {
	/** Notes a message that leaves; what it gives is called once the platform has answered. */
	readonly begin: (chat: number) => () => void;
	/** Whether one more message to many may leave now for any chat. */
	readonly isOpen: () => boolean;
	/** Whether one may leave for this chat. */
	readonly isOpenFor: (chat: number, kind: 'private' | 'group') => boolean;
	/** When something will open that is shut now, UTC milliseconds; what is under way opens more when it ends. */
	readonly opensAt: () => number;
	/** The platform wants nothing more for this chat before then. */
	readonly limit: (chat: number, until: number) => void;
	/** Two chats were refused at once: the limit is on us, and nothing leaves. */
	readonly isHeld: () => boolean;
};

const secondMs = 1000;
const minuteMs = 60_000;
/**
 * To many together, a second: one less than the platform's 30 (grammY documentation, advanced/flood), so that an answer
 * to somebody finds room.
 */
const mostPerSecond = 29;
/** To one group, a minute (same source). */
const mostPerGroupMinute = 20;

type Message = {readonly chat: number; endedAt: number | undefined};

/** Opens a count that begins with nothing sent. */
export function openPace(now: () => number): Pace {
	let lastMinute: Message[] = [];
	const limited = new Map<number, number>();
	const counts = (windowMs: number) => {
		const from = now() - windowMs;
		return lastMinute.filter(({endedAt}) => endedAt === undefined || endedAt > from);
	};
	const forget = () => {
		lastMinute = counts(minuteMs);
		for (const [chat, until] of limited) if (until <= now()) limited.delete(chat);
	};
	const isHeld = () => {
		forget();
		return limited.size > 1;
	};
	return {
		begin: chat => {
			const message: Message = {chat, endedAt: undefined};
			lastMinute.push(message);
			return () => {
				message.endedAt = now();
			};
		},
		isHeld,
		isOpen: () => !isHeld() && counts(secondMs).length < mostPerSecond,
		isOpenFor: (chat, kind) => {
			if (limited.has(chat)) return false;
			const toChat = (messages: readonly Message[]) => messages.filter(message => message.chat === chat);
			if (toChat(counts(secondMs)).length > 0) return false;
			return kind === 'private' || toChat(counts(minuteMs)).length < mostPerGroupMinute;
		},
		opensAt: () => {
			forget();
			const ends = counts(secondMs).flatMap(({endedAt}) =>
				endedAt === undefined ? [] : [endedAt + secondMs],
			);
			return Math.min(...ends, ...limited.values(), now() + secondMs);
		},
		limit: (chat, until) => {
			limited.set(chat, until);
		},
	};
}
