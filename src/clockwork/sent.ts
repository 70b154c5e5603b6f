/** What became of a call to the platform, as far as its answer tells. */
import type {GrammyError, HttpError} from 'grammy';
import {z} from 'zod';

/** What became of a call. */
export type Sent =
	| {readonly kind: 'sent'; readonly messageId: number | undefined}
	| {
			readonly kind: 'later';
			readonly afterMs: number;
			readonly isLimited: boolean;
			/** Nobody knows whether it arrived. */
			readonly mayHaveLeft: boolean;
	  }
	| {readonly kind: 'moved'; readonly to: number}
	| {readonly kind: 'gone'}
	| {readonly kind: 'refused'; readonly description: string};

const longestPauseMs = 300_000;
const codeSchema = z.object({code: z.string()});
const neverConnected = ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'EHOSTUNREACH', 'ENETUNREACH'];

/** Refusals that mean: it is as it should be (bot-practice 18). */
const harmless = [
	'message is not modified',
	'query is too old',
	'message to edit not found',
	"message can't be edited",
	'MESSAGE_ID_INVALID',
];
const gone = [
	'chat not found',
	'bot was blocked',
	'user is deactivated',
	"can't initiate conversation",
	'bot was kicked',
	'bot is not a member',
	'group chat was deleted',
];

/** What a refusal means. */
export function judgeRefusal(error: GrammyError): Sent {
	const {description, parameters, error_code: code} = error;
	if (parameters.migrate_to_chat_id !== undefined) return {kind: 'moved', to: parameters.migrate_to_chat_id};
	if (code === 429) {
		const afterMs = (parameters.retry_after ?? 5) * 1000;
		return {kind: 'later', afterMs, isLimited: true, mayHaveLeft: false};
	}
	// What stands between us and the platform may answer with neither code nor words.
	if (!(code < 500)) return {kind: 'later', afterMs: 5000, isLimited: false, mayHaveLeft: code !== 500};
	if (harmless.some(text => description.includes(text))) return {kind: 'sent', messageId: undefined};
	if (code === 403 || gone.some(text => description.includes(text))) return {kind: 'gone'};
	return {kind: 'refused', description};
}

/** What a lost connection means after so many tries: a longer pause each time, and perhaps that the call arrived. */
export function judgeLost({error}: HttpError, attempts: number): Sent {
	const afterMs = Math.min(1000 * 2 ** attempts, longestPauseMs);
	return {kind: 'later', afterMs, isLimited: false, mayHaveLeft: !cannotHaveLeft(error)};
}

/** There was nobody to hear the call. */
function cannotHaveLeft(error: unknown): boolean {
	const parsed = codeSchema.safeParse(error);
	return parsed.success && neverConnected.includes(parsed.data.code);
}
