/** One call made to the platform, and what became of it: every failure comes back as a value. */
import {GrammyError, HttpError} from 'grammy';
import {z} from 'zod';
import {judge, type Sent} from './judge.ts';
import {makeCall, type Sending} from './platform-call.ts';

const longestPauseMs = 300_000;
const codeSchema = z.object({code: z.string()});

/** Sends one call; every failure comes back as a value. */
export async function sendCall(sending: Sending): Promise<Sent> {
	try {
		return {kind: 'sent', messageId: await makeCall(sending)};
	} catch (error) {
		if (error instanceof GrammyError) return judge(error);
		if (error instanceof HttpError) {
			return {
				kind: 'later',
				afterMs: Math.min(1000 * 2 ** sending.attempts, longestPauseMs),
				isLimited: false,
				mayHaveLeft: !cannotHaveLeft(error.error),
			};
		}
		throw error;
	}
}

const neverConnected = ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'EHOSTUNREACH', 'ENETUNREACH'];

/** There was nobody to hear the call. */
function cannotHaveLeft(error: unknown): boolean {
	const parsed = codeSchema.safeParse(error);
	return parsed.success && neverConnected.includes(parsed.data.code);
}
