/** Everything a turn shows, put in words and held to the limits of the platform. */
import type {Shelf} from '../../src/bot/desk.ts';
import {askScreen, keyboardOf, whyScreen} from '../../src/bot/screen.ts';
import {lineText} from '../../src/bot/words.ts';
import type {Effect, Turn} from '../../src/find/events.ts';
import type {Ask} from '../../src/find/question.ts';
import type {Call} from '../../src/store/call.ts';

/** Characters of a label, so that two buttons fit side by side on a phone. */
const labelMost = 24;
// @grammyjs/types 5.0.0, methods.d.ts: sendMessage.text, sendPhoto.caption, answerCallbackQuery.text; markup.d.ts: callback_data.
const textMost = 4096;
const captionMost = 1024;
const dataMostBytes = 64;
/** The most characters of the answer to a button. */
export const answerMost = 200;
/** Finds and turns grow; buttons and numbers on the screen with them. */
const largest = {find: 2 ** 31, turn: 9999};
/** A first name may have 64 characters (from memory). */
const names = [undefined, 'N'.repeat(64)];

/** What a screen shows beyond a limit, in any language; empty when all fits. Throws for a sentence that is missing. */
export function screenFaults(shelf: Shelf, turn: Turn, now: number): readonly string[] {
	return shelf.texts.languages.flatMap(language =>
		turn.effects
			.flatMap(effect => effectFaults(shelf, effect, {language, now}))
			.map(fault => `${language}, ${turn.standing.at.id}: ${fault}`),
	);
}

type Seen = {readonly language: string; readonly now: number};

function effectFaults(shelf: Shelf, effect: Effect, {language, now}: Seen): readonly string[] {
	const reader = {say: shelf.texts.in(language), zone: 'Europe/London', now};
	const region = shelf.flow.region.id;
	switch (effect.kind) {
		case 'ask':
		case 'refresh':
		case 'explain':
			return [
				...names.flatMap(name => {
					const head = name && reader.say.say('find-of', {name, number: String(largest.find)});
					return askFaults(effect.ask, {...largest, reader, head, region});
				}),
				...labelFaults(effect.ask, {...largest, reader, head: undefined, region}),
			];
		case 'close':
			return lineText(effect.chosen, reader) === '' ? ['a closed question shows nothing'] : [];
		case 'say':
			return lineText(effect.line, reader) === '' ? ['nothing is said'] : [];
		case 'ask-position':
		case 'measure':
		case 'remind':
		case 'forget-reminder':
		case 'keep':
		case 'throw':
		case 'begin':
		case 'print':
			return [];
	}
}

function askFaults(ask: Ask, shown: Parameters<typeof askScreen>[1]): readonly string[] {
	return [
		...sendFaults(askScreen(ask, shown)),
		...(ask.why === undefined ? [] : sendFaults(whyScreen(ask, shown))),
	];
}

function sendFaults(call: Extract<Call, {kind: 'send'}>): readonly string[] {
	const length = plain(call.html).length;
	const most = call.picture === undefined ? textMost : captionMost;
	const long = call.keyboard.flat().filter(({data}) => Buffer.byteLength(data) > dataMostBytes);
	return [
		...(length === 0 || length > most
			? [`${length} characters, ${most} fit: ${call.html.slice(0, 40)}`]
			: []),
		...long.map(({data}) => `${Buffer.byteLength(data)} bytes on a button: ${data}`),
	];
}

function labelFaults(ask: Ask, shown: Parameters<typeof askScreen>[1]): readonly string[] {
	const typed = new Set(
		ask.options
			.filter(({label: {values = {}}}) => 'typed' in values)
			.map(({label}) => lineText(label, shown.reader)),
	);
	const labels = keyboardOf(ask, shown)
		.flat()
		.map(({text}) => text);
	return [
		...labels
			.filter(label => !typed.has(label) && [...label].length > labelMost)
			.map(label => `long label: ${label}`),
		...(new Set(labels).size < labels.length ? [`two buttons say the same: ${labels.join(' | ')}`] : []),
	];
}

/** The text as it counts: without marks, `&amp;` as one character. */
function plain(html: string): string {
	return html
		.replace(/<[^>]*>/g, '')
		.replaceAll('&lt;', '<')
		.replaceAll('&gt;', '>')
		.replaceAll('&amp;', '&');
}
