import {z} from 'zod';
import * as limits from './limits.ts';
import type {InlineKeyboard} from './message.ts';
import {inlineButtonSchema, inlineKeyboardSchema} from './message.ts';
import {badRequest} from './refusal.ts';

const keyboardButtonSchema = z.object({text: z.string(), requestLocation: z.boolean()});

/** What comes with a message for the person to answer with. */
export const replyMarkupSchema = z.discriminatedUnion('kind', [
	z.object({kind: z.literal('inline'), keyboard: inlineKeyboardSchema}),
	z.object({
		kind: z.literal('keyboard'),
		rows: z.array(z.array(keyboardButtonSchema)),
		once: z.boolean(),
		placeholder: z.string().optional(),
	}),
	z.object({kind: z.literal('remove')}),
	z.object({kind: z.literal('force'), selective: z.boolean(), placeholder: z.string().optional()}),
]);

/** What comes with a message for the person to answer with. */
export type ReplyMarkup = z.infer<typeof replyMarkupSchema>;

const flag = z.boolean().optional();
const sentButtonSchema = z.union([
	z.string(),
	z.object({text: z.string(), request_location: flag, request_contact: flag}),
]);
const looseButtonSchema = inlineButtonSchema.loose();

/** The `reply_markup` of a call, as bots write it. */
export const sentMarkupSchema = z.union([
	z.object({inline_keyboard: z.array(z.array(looseButtonSchema))}),
	z.object({
		keyboard: z.array(z.array(sentButtonSchema)),
		one_time_keyboard: flag,
		input_field_placeholder: z.string().optional(),
	}),
	z.object({remove_keyboard: z.literal(true)}),
	z.object({force_reply: z.literal(true), selective: flag, input_field_placeholder: z.string().optional()}),
]);

type SentMarkup = z.infer<typeof sentMarkupSchema>;
type SentInline = Extract<SentMarkup, {inline_keyboard: unknown}>;
type SentKeyboard = Extract<SentMarkup, {keyboard: unknown}>;

/** Checks a `reply_markup` against the platform's limits; throws the platform's refusal. */
export function checkMarkup(sent: SentMarkup, isPrivate: boolean): ReplyMarkup {
	if ('inline_keyboard' in sent) return {kind: 'inline', keyboard: checkInline(sent)};
	if ('keyboard' in sent) return checkKeyboard(sent, isPrivate);
	if ('remove_keyboard' in sent) return {kind: 'remove'};
	const placeholder = checkPlaceholder(sent.input_field_placeholder);
	return {kind: 'force', selective: sent.selective === true, placeholder};
}

function checkInline(sent: SentInline): InlineKeyboard {
	const rows = sent.inline_keyboard.filter(row => row.length > 0);
	if (rows.flat().length > limits.inlineButtonsMax) throw badRequest('reply markup is too long');
	for (const button of rows.flat()) checkButton(button);
	return inlineKeyboardSchema.parse({inline_keyboard: rows});
}

const actions = ['callback_data', 'url', 'copy_text'] as const;

function checkButton(button: z.infer<typeof looseButtonSchema>): void {
	if (button.text.trim() === '') throw badRequest("can't parse inline keyboard button: Text can't be empty");
	const asked = actions.filter(action => button[action] !== undefined);
	if (asked.length === 0) throw badRequest('Text buttons are unallowed in the inline keyboard');
	if (asked.length > 1) throw badRequest('BUTTON_TYPE_INVALID');
	if (button.callback_data !== undefined) {
		const bytes = Buffer.byteLength(button.callback_data, 'utf8');
		if (bytes < 1 || bytes > limits.callbackDataBytesMax) throw badRequest('BUTTON_DATA_INVALID');
	}
	if (button.url !== undefined) checkUrl(button.url);
	const copied = button.copy_text?.text.length;
	if (copied !== undefined && (copied < 1 || copied > limits.copyTextMax)) {
		throw badRequest('BUTTON_COPY_TEXT_INVALID');
	}
}

function checkUrl(url: string): void {
	if (!/^(https?|tg):\/\//.test(url) || !URL.canParse(url)) throw badRequest('BUTTON_URL_INVALID');
	const payload = new URL(url).searchParams.get('start');
	const isDeepLink = new URL(url).hostname === 't.me' && payload !== null;
	// The platform lets such a button through and drops the payload; here it fails where it is written.
	if (isDeepLink && !limits.startPayload.test(payload)) throw badRequest('BUTTON_URL_INVALID');
}

function checkKeyboard(sent: SentKeyboard, isPrivate: boolean): ReplyMarkup {
	const rows = sent.keyboard.map(row =>
		row.map(button => {
			const full = typeof button === 'string' ? {text: button} : button;
			return {text: full.text, requestLocation: 'request_location' in full && full.request_location === true};
		}),
	);
	const buttons = rows.flat();
	if (buttons.some(button => button.text.trim() === '')) {
		throw badRequest("can't parse keyboard button: Text can't be empty");
	}
	if (!isPrivate && buttons.some(button => button.requestLocation)) {
		throw badRequest('location can be requested in private chats only');
	}
	const placeholder = checkPlaceholder(sent.input_field_placeholder);
	return {kind: 'keyboard', rows, once: sent.one_time_keyboard === true, placeholder};
}

function checkPlaceholder(placeholder: string | undefined): string | undefined {
	if (placeholder !== undefined && placeholder.length > limits.placeholderMax) {
		throw badRequest('input field placeholder is too long');
	}
	return placeholder === '' ? undefined : placeholder;
}
