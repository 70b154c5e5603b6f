import {z} from 'zod';

// The part of the platform's message that the room can hold, in the platform's own field names.

const userSchema = z.object({
	id: z.number(),
	is_bot: z.boolean(),
	first_name: z.string(),
	username: z.string().optional(),
	language_code: z.string().optional(),
});

const chatSchema = z.object({
	id: z.number(),
	type: z.enum(['private', 'supergroup']),
	first_name: z.string().optional(),
	title: z.string().optional(),
});

/** A stretch of text with a meaning: bold, a link, a command. */
export const entitySchema = z.object({
	type: z.string(),
	offset: z.int().min(0),
	length: z.int().min(1),
	url: z.string().optional(),
	user: userSchema.optional(),
	language: z.string().optional(),
});

const fileSchema = z.object({
	file_id: z.string(),
	file_unique_id: z.string(),
	file_size: z.number().optional(),
});

const photoSizeSchema = fileSchema.extend({width: z.number(), height: z.number()});
const documentSchema = fileSchema.extend({
	file_name: z.string().optional(),
	mime_type: z.string().optional(),
});

const locationSchema = z.object({
	latitude: z.number(),
	longitude: z.number(),
	horizontal_accuracy: z.number().optional(),
});

/** One button under a message: it calls the bot back, opens a link or copies a text. */
export const inlineButtonSchema = z.object({
	text: z.string(),
	callback_data: z.string().optional(),
	url: z.string().optional(),
	copy_text: z.object({text: z.string()}).optional(),
});

/** Rows of buttons under a message. */
export const inlineKeyboardSchema = z.object({inline_keyboard: z.array(z.array(inlineButtonSchema))});

const bareMessageSchema = z.object({
	message_id: z.number(),
	date: z.number(),
	chat: chatSchema,
	from: userSchema,
	edit_date: z.number().optional(),
	media_group_id: z.string().optional(),
	text: z.string().optional(),
	entities: z.array(entitySchema).optional(),
	caption: z.string().optional(),
	caption_entities: z.array(entitySchema).optional(),
	photo: z.array(photoSizeSchema).optional(),
	document: documentSchema.optional(),
	location: locationSchema.optional(),
	voice: fileSchema.extend({duration: z.number(), mime_type: z.string().optional()}).optional(),
	video: photoSizeSchema.extend({duration: z.number(), mime_type: z.string().optional()}).optional(),
	sticker: photoSizeSchema
		.extend({type: z.string(), is_animated: z.boolean(), is_video: z.boolean(), emoji: z.string().optional()})
		.optional(),
	new_chat_members: z.array(userSchema).optional(),
	left_chat_member: userSchema.optional(),
	reply_markup: inlineKeyboardSchema.optional(),
});

/** A message as the platform hands it to a bot. */
export const chatMessageSchema = bareMessageSchema.extend({reply_to_message: bareMessageSchema.optional()});

/** Who wrote or is spoken of. */
export type User = z.infer<typeof userSchema>;
/** Where it was written. */
export type Chat = z.infer<typeof chatSchema>;
/** A stretch of text with a meaning. */
export type Entity = z.infer<typeof entitySchema>;
/** One size of a photo. */
export type PhotoSize = z.infer<typeof photoSizeSchema>;
/** A file that was sent as it is. */
export type SentDocument = z.infer<typeof documentSchema>;
/** Rows of buttons under a message. */
export type InlineKeyboard = z.infer<typeof inlineKeyboardSchema>;
/** A message as the platform hands it to a bot. */
export type ChatMessage = z.infer<typeof chatMessageSchema>;
/** What a message says, before it has a number and a time. */
export type MessageContent = Omit<ChatMessage, 'message_id' | 'date' | 'chat' | 'from'>;
