/** A question as a message: words and buttons out of what the conversation says. */
import {type QuestionPicture, questionTitle} from '../draw/title.ts';
import type {Ask, AskPicture, Line, Option} from '../find/question.ts';
import {cantTell} from '../key/observed.ts';
import type {Call, Keyboard} from '../store/call.ts';
import {packButton} from './button.ts';
import {measuredPicture, type PhotoPicture, trayPicture} from './photo-picture.ts';
import {resultText} from './result-screen.ts';
import {escaped, lineText, type Reader} from './words.ts';

/** Where a question is shown: its find and turn, and in a group the line that says whose find it is. */
export type Shown = {
	readonly find: number;
	readonly turn: number;
	readonly reader: Reader;
	readonly head: string | undefined;
	/** The region whose key asks. */
	readonly region: string;
};

type SendCall = Extract<Call, {kind: 'send'}>;

/** Labels up to this long stand two in a row on a phone. */
const shortLabel = 15;
/** A label up to this long may stand in the last row, beside *Back* and *Why?*. */
const lastRowLabel = 12;

/** The message of a question. */
export function askScreen(ask: Ask, shown: Shown): SendCall {
	const {reader} = shown;
	const text = ask.result
		? resultText(ask.result, reader.say, ask.isBrief ? 'brief' : 'whole')
		: lineText(numbered(ask.text, shown), reader, ask.times);
	const html = framed([ask.lead ? lineText(ask.lead, reader, ask.times) : '', text], ask, shown);
	return {
		kind: 'send',
		html: ask.result ? withBoldStart(html, text) : html,
		keyboard: keyboardOf(ask, shown),
		...(ask.shows ? {picture: pictureOf(ask.shows, shown)} : {}),
	};
}

/** Under the card of a result, where it goes by itself. */
export function cardCaption(ask: Ask, shown: Shown): string {
	return framed([shown.reader.say.say('card-alone', {number: String(shown.find)})], ask, shown);
}

/** The name of a find stands out. */
function withBoldStart(html: string, text: string): string {
	const first = escaped(text.split('\n')[0] ?? '');
	return html.replace(first, `<b>${first}</b>`);
}

/** The explanation of a question, with its picture, what there is to be seen on it, and its buttons. */
export function whyScreen(ask: Ask, shown: Shown): SendCall {
	const {reader} = shown;
	const why = reader.say.say(ask.why ?? ask.text.message);
	return {
		kind: 'send',
		html: framed([why, ...pictureWords(ask, shown)], ask, shown),
		keyboard: keyboardOf(ask, shown, 'explained'),
		...(ask.picture ? {picture: pictureOf(ask.picture, shown)} : {}),
	};
}

/** What the pictures of a question show, for those who do not see them. */
function pictureWords({shows, picture}: Ask, shown: Shown): readonly string[] {
	return [picture, shows].flatMap(one => {
		if (!one) return [];
		const wanted = pictureOf(one, shown);
		return ['title' in wanted ? wanted.title : questionTitle(wanted, shown.reader.say)];
	});
}

function pictureOf(picture: AskPicture, {region, reader}: Shown): QuestionPicture | PhotoPicture {
	if (picture.kind === 'measured') return measuredPicture(picture.proposal, reader);
	if (picture.kind === 'tray') return trayPicture(picture.tray, reader);
	const of = {region, language: reader.say.language};
	return picture.kind === 'choices'
		? {...picture, ...of, options: [...picture.options]}
		: {...picture, ...of};
}

/** The rows of buttons under a question. */
export function keyboardOf(
	ask: Ask,
	{find, turn, reader}: Shown,
	state: 'asked' | 'explained' = 'asked',
): Keyboard {
	const button = (option: string, text: string) => ({
		text,
		data: packButton({kind: 'find', find, turn, option}),
	});
	const options = ask.options.map(option => ({id: option.id, text: labelOf(option, reader)}));
	// The last row is alike under every question, so that a thumb finds it.
	const isLast = ({id, text}: {id: string; text: string}) =>
		id === cantTell && [...text].length <= lastRowLabel;
	const last = [
		...options.filter(isLast),
		...(ask.canBack ? [{id: 'back', text: reader.say.say('option-back')}] : []),
		...(ask.why !== undefined && state === 'asked' ? [{id: 'why', text: reader.say.say('option-why')}] : []),
	].map(({id, text}) => button(id, text));
	const isSmall = (id: string) => ask.options.some(option => option.id === id && option.isSmall === true);
	const first = options.filter(option => !isLast(option));
	const numbers = first.filter(({id}) => isSmall(id)).map(({id, text}) => button(id, text));
	const before = first.slice(
		0,
		Math.max(
			0,
			first.findIndex(({id}) => isSmall(id)),
		),
	);
	const after = first.filter(option => !isSmall(option.id) && !before.includes(option));
	const rows = [before, after].map(list => rowsOf(list.map(({id, text}) => button(id, text))));
	return [
		...(rows[0] ?? []),
		...evenRowsOf(5, numbers),
		...(rows[1] ?? []),
		...(last.length > 0 ? [last] : []),
	];
}

function labelOf({label, letter}: Option, reader: Reader): string {
	const text = lineText(label, reader);
	return letter === undefined ? text : reader.say.say('option-lettered', {letter, label: text});
}

/** Buttons in rows: short ones in threes or twos, long ones alone. */
export function rowsOf(buttons: Keyboard[number]): Keyboard {
	const longest = Math.max(0, ...buttons.map(({text}) => [...text].length));
	return inRowsOf(longest <= 6 ? 3 : longest <= shortLabel ? 2 : 1, buttons);
}

/** As few rows as hold them, about equally long. */
function evenRowsOf(mostPerRow: number, buttons: Keyboard[number]): Keyboard {
	const rows = Math.max(1, Math.ceil(buttons.length / mostPerRow));
	return inRowsOf(Math.ceil(buttons.length / rows), buttons);
}

function inRowsOf(perRow: number, buttons: Keyboard[number]): Keyboard {
	const rows: Keyboard = [];
	for (let from = 0; from < buttons.length; from += perRow) rows.push(buttons.slice(from, from + perRow));
	return rows;
}

/** Every question may name its find. */
function numbered(line: Line, {find}: Shown): Line {
	return {message: line.message, values: {...line.values, number: String(find)}};
}

function framed(paragraphs: readonly string[], ask: Ask, {head = '', reader}: Shown): string {
	const isWritten = ask.takes !== undefined && head !== '';
	const foot = isWritten ? reader.say.say('in-group-reply') : '';
	const body = [...paragraphs, foot].filter(line => line !== '').join('\n\n');
	return escaped(head === '' ? body : `${head}\n${body}`);
}
