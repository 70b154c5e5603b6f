/** What an answer of the platform means for the message that was sent. */
import type {GrammyError} from 'grammy';

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

/** What a refusal means: as it should be, later, elsewhere, nobody there, or never. */
export function judge(error: GrammyError): Sent {
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
