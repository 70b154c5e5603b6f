import {z} from 'zod';
import {jsonField} from '../body.ts';
import {nextNumber} from '../core.ts';
import {documentWithId, keepDocument, keepPhoto, photoSizes} from '../files.ts';
import {captionText} from '../format.ts';
import {imageSize} from '../image-size.ts';
import * as limits from '../limits.ts';
import type {ChatMessage, MessageContent} from '../message.ts';
import {entitySchema} from '../message.ts';
import {addMessage} from '../messages.ts';
import {bot} from '../people.ts';
import {badRequest, refusal} from '../refusal.ts';
import type {Call} from './call.ts';
import {markedShape, openTarget, parameters} from './call.ts';

const captionSchema = z.object({caption: z.string().default(''), ...markedShape});
const albumItemSchema = z.object({
	type: z.enum(['photo', 'document']),
	media: z.string(),
	caption: z.string().default(''),
	parse_mode: z.string().optional(),
	caption_entities: z.array(entitySchema).optional(),
});
const albumSchema = z.object({media: jsonField(z.array(albumItemSchema))});

type Kind = 'photo' | 'document';
type Caption = Pick<z.infer<typeof albumItemSchema>, 'caption' | 'parse_mode' | 'caption_entities'>;

/** Puts a photo from the bot into a chat. */
export function sendPhoto(call: Call): ChatMessage {
	return sendOne(call, 'photo');
}

/** Puts a file from the bot into a chat. */
export function sendDocument(call: Call): ChatMessage {
	return sendOne(call, 'document');
}

/** Puts two to ten photos or files into a chat as one album. */
export function sendMediaGroup(call: Call): readonly ChatMessage[] {
	const target = openTarget(call);
	const {media} = parameters(call, albumSchema);
	if ('reply_markup' in call.fields) throw badRequest('an album cannot carry buttons');
	const {min, max} = limits.albumSize;
	if (media.length < min || media.length > max) {
		throw badRequest(`an album has ${min} to ${max} items, got ${media.length}`);
	}
	if (new Set(media.map(item => item.type)).size > 1) {
		throw badRequest("document can't be mixed with other media types");
	}
	return call.core.db.together(() => {
		const album = String(nextNumber(call.core, 'album', 1));
		const contents = media.map(item => ({
			...readMedia(call, item.type, item.media),
			...readCaption(call, item),
		}));
		return contents.map(content =>
			addMessage(call.core, {
				chat: target.chat,
				from: bot,
				content: {...target.reply, ...content, media_group_id: album},
			}),
		);
	});
}

function sendOne(call: Call, kind: Kind): ChatMessage {
	const target = openTarget(call);
	const caption = readCaption(call, parameters(call, captionSchema));
	const reference = call.uploads.has(kind) ? `attach://${kind}` : call.fields[kind];
	return call.core.db.together(() => {
		const content = {...target.reply, ...readMedia(call, kind, reference), ...caption};
		return addMessage(call.core, {chat: target.chat, from: bot, content, markup: target.markup});
	});
}

function readCaption(call: Call, sent: Caption): MessageContent {
	const {text, entities} = captionText(call.core, {
		text: sent.caption,
		parseMode: sent.parse_mode,
		entities: sent.caption_entities,
	});
	if (text === '') return {};
	return entities.length === 0 ? {caption: text} : {caption: text, caption_entities: [...entities]};
}

function readMedia(call: Call, kind: Kind, reference: unknown): MessageContent {
	if (typeof reference !== 'string' || reference === '')
		throw badRequest(`there is no ${kind} in the request`);
	if (reference.startsWith('attach://')) return keepUpload(call, kind, reference.slice('attach://'.length));
	const photo = photoSizes(call.core, reference);
	const document = documentWithId(call.core, reference);
	if (photo.length === 0 && document === undefined) {
		throw badRequest('wrong file identifier/HTTP URL specified');
	}
	if (kind === 'photo' && document !== undefined)
		throw badRequest("can't use file of type Document as Photo");
	if (kind === 'document' && document === undefined)
		throw badRequest("can't use file of type Photo as Document");
	return document === undefined ? {photo} : {document};
}

function keepUpload(call: Call, kind: Kind, name: string): MessageContent {
	const upload = call.uploads.get(name);
	if (upload === undefined) throw badRequest(`there is no file "${name}" in the request`);
	if (upload.bytes.length === 0) throw badRequest('file must be non-empty');
	if (kind === 'document') {
		if (upload.bytes.length > limits.documentBytesMax) throw refusal(413, 'Request Entity Too Large');
		return {document: keepDocument(call.core, upload)};
	}
	if (upload.bytes.length > limits.photoBytesMax) {
		throw badRequest(`file of size ${upload.bytes.length} bytes is too big for a photo`);
	}
	const size = imageSize(upload.bytes);
	if (size === undefined) throw badRequest('IMAGE_PROCESS_FAILED');
	const {width, height} = size;
	const ratio = Math.max(width, height) / Math.max(1, Math.min(width, height));
	if (width + height > limits.photoSidesMax || ratio > limits.photoRatioMax) {
		throw badRequest('PHOTO_INVALID_DIMENSIONS');
	}
	return {photo: keepPhoto(call.core, upload.bytes, size)};
}
