import {z} from 'zod';
import {flagField} from '../body.ts';
import {nextChange} from '../core.ts';
import * as limits from '../limits.ts';
import {badRequest} from '../refusal.ts';
import type {Call} from './call.ts';
import {parameters} from './call.ts';

const answerSchema = z.object({
	callback_query_id: z.string(),
	text: z.string().default(''),
	show_alert: flagField.default(false),
});

/** Answers a button press, once and within a minute. */
export function answerCallbackQuery(call: Call): true {
	const fields = parameters(call, answerSchema);
	if (fields.text.length > limits.callbackAnswerMax) throw badRequest('MESSAGE_TOO_LONG');
	const sql =
		'update press set answered = 1, changed = ?, text = ?, alert = ? where id = ? and answered = 0 and at >= ?';
	const answered = call.core.db.run(
		sql,
		nextChange(call.core),
		fields.text,
		fields.show_alert ? 1 : 0,
		fields.callback_query_id,
		call.core.clock.now() - limits.callbackAnswerWithinMs,
	);
	if (answered === 0) {
		throw badRequest('query is too old and response timeout expired or query ID is invalid');
	}
	call.core.changes.tell();
	return true;
}
