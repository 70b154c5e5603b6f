/** What waits in the outbox: one message, edit or answer, in our own words, before it becomes a call. */
import {z} from 'zod';

const buttonSchema = z.object({text: z.string().min(1), data: z.string().min(1).max(64)});

/** Rows of buttons under a message. */
const keyboardSchema = z.array(z.array(buttonSchema));

export const callSchema = z.discriminatedUnion('kind', [
	z.object({
		kind: z.literal('send'),
		/** HTML of the platform, escaped. */
		html: z.string().min(1),
		keyboard: keyboardSchema.default([]),
		/** A drawing of ours, as a path under `flows/`. */
		picture: z.string().optional(),
		/** The first photo of this find, once it is stored. */
		photoOf: z.number().int().optional(),
		/** A button under the chat that sends the position; private chats only. */
		positionButton: z.string().optional(),
		/** In a group the person is asked to reply to this message. */
		forceReply: z.boolean().optional(),
		replyTo: z.number().int().optional(),
		thread: z.number().int().optional(),
	}),
	/** The message of another row, shown anew. */
	z.object({
		kind: z.literal('edit'),
		row: z.number().int(),
		html: z.string().min(1),
		keyboard: keyboardSchema,
	}),
	/** A button press answered, so that the phone stops waiting. */
	z.object({kind: z.literal('answer'), callback: z.string(), text: z.string().max(200).optional()}),
]);

/** One call to the platform, as it waits in the outbox. */
export type Call = z.output<typeof callSchema>;
/** Rows of buttons under a message. */
export type Keyboard = z.output<typeof keyboardSchema>;
