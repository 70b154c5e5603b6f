/** What waits in the outbox: one message, edit or answer, in our own words, before it becomes a call. */
import {z} from 'zod';
import {pictureSchema} from './picture.ts';

const buttonSchema = z.object({text: z.string().min(1), data: z.string().min(1).max(64)});

/** Rows of buttons under a message. */
const keyboardSchema = z.array(z.array(buttonSchema));

export const callSchema = z.discriminatedUnion('kind', [
	z.object({
		kind: z.literal('send'),
		/** HTML of the platform, escaped. */
		html: z.string().min(1),
		keyboard: keyboardSchema.default([]),
		/** What goes with the words; drawn when it is sent. */
		picture: pictureSchema.optional(),
		/** Words of the picture where it has to follow by itself, in HTML. */
		alone: z.string().optional(),
		/** A picture that follows its words by itself: nothing waits for it, and without it nothing is said. */
		follows: z.boolean().optional(),
		/** The first photo of this find, once it is stored. */
		photoOf: z.number().int().optional(),
		/** This photo, once it is stored. */
		photo: z.number().int().optional(),
		/** A small file of words that goes with the message where they fit under it. */
		attachment: z.object({name: z.string().min(1), text: z.string().min(1)}).optional(),
		/** A button under the chat that sends the position; private chats only. */
		positionButton: z.string().optional(),
		/** In a group the person is asked to reply to this message. */
		forceReply: z.boolean().optional(),
		replyTo: z.number().int().optional(),
		thread: z.number().int().optional(),
		/** What a reply to this message is, as the data of a button says it. */
		expects: z.string().max(64).optional(),
	}),
	/** The photos of a find side by side, and a picture after them; nothing at all where there is neither. */
	z.object({
		kind: z.literal('album'),
		html: z.string().min(1),
		photosOf: z.number().int(),
		picture: pictureSchema.optional(),
	}),
	/** A file made for somebody, by its place in the folder of parcels; it goes once it is sent. */
	z.object({
		kind: z.literal('document'),
		file: z.string().regex(/^\d+\/\w[\w.-]*$/),
		/** HTML of the platform, escaped; at most 1024 characters are shown under a file. */
		html: z.string(),
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
	/** The commands listed in this chat alone; none to have the common list again. */
	z.object({
		kind: z.literal('commands'),
		list: z.array(z.object({command: z.string(), description: z.string()})),
	}),
]);

/** One call to the platform, as it waits in the outbox. */
export type Call = z.output<typeof callSchema>;
/** Rows of buttons under a message. */
export type Keyboard = z.output<typeof keyboardSchema>;

/** A call as it was stored; nothing when it cannot be read, as a row of an older program may not. */
export function readCall(content: string): Call | undefined {
	try {
		return callSchema.parse(JSON.parse(content));
	} catch {
		return undefined;
	}
}
