import type {Core} from './core.ts';
import {openPace} from './pace.ts';
import {refusal} from './refusal.ts';

/** Calls of one method that the room refuses, `times` times. */
export type RefuseRule = {
	readonly method: string;
	readonly chat?: number;
	readonly times: number;
	readonly error: {
		readonly error_code: number;
		readonly description: string;
		readonly parameters?: Readonly<Record<string, unknown>>;
	};
};

/** Calls of one method whose connection breaks, before or after the room has done what was asked. */
export type DropRule = {readonly method: string; readonly times: number; readonly when: 'before' | 'after'};

/** A call the bot made; `at` is UTC milliseconds. */
export type CallMade = {readonly method: string; readonly at: number; readonly chat?: number};

/** Trouble on demand, and the list of calls made. */
export type Faults = {
	readonly refuse: (rule: RefuseRule) => void;
	readonly drop: (rule: DropRule) => void;
	readonly calls: () => readonly CallMade[];
	/** Notes a call; throws the refusal that is due, and says when the connection breaks. */
	readonly meet: (method: string, chat: number | undefined) => 'before' | 'after' | undefined;
};

const callsKept = 5000;
const paced = new Set(['sendmessage', 'sendphoto', 'senddocument', 'sendmediagroup', 'sendlocation']);

/** Makes a place for trouble; with `limited`, too many messages are refused as on the platform. */
export function openFaults(core: Core, limited: boolean): Faults {
	const refusals: {rule: RefuseRule; left: number}[] = [];
	const drops: {rule: DropRule; left: number}[] = [];
	const calls: CallMade[] = [];
	const pace = openPace(core);

	return {
		refuse: rule => {
			refusals.push({rule, left: rule.times});
		},
		drop: rule => {
			drops.push({rule, left: rule.times});
		},
		calls: () => [...calls],
		meet: (method, chat) => {
			calls.push({method, at: core.clock.now(), ...(chat === undefined ? {} : {chat})});
			if (calls.length > callsKept) calls.shift();
			const refused = refusals.find(
				({rule, left}) =>
					left > 0 && rule.method === method && (rule.chat === undefined || rule.chat === chat),
			);
			if (refused !== undefined) {
				refused.left -= 1;
				const {error_code, description, parameters} = refused.rule.error;
				throw refusal(error_code, description, parameters);
			}
			if (limited && chat !== undefined && paced.has(method.toLowerCase())) pace(chat);
			const dropped = drops.find(({rule, left}) => left > 0 && rule.method === method);
			if (dropped !== undefined) dropped.left -= 1;
			return dropped?.rule.when;
		},
	};
}
