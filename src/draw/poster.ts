/** The poster of a survey day, on one page of A4. */
import {z} from 'zod';
import type {Say} from '../text/text.ts';
import {flowInto, type Paragraph} from './flow.ts';
import {a4, type Page} from './page.ts';
import {colours} from './palette.ts';
import {drawCode} from './qr.ts';

const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'expected a time such as 09:30');
const words = z.string().trim().min(1);

/** A survey day as a coordinator describes it. Times are those of the beach's own clocks. */
export const posterSchema = z.strictObject({
	title: words,
	date: z.iso.date('expected a day such as 2026-05-02'),
	from: clockTime,
	to: clockTime,
	meetingPlace: words,
	/** As read by the coordinator: nothing is worked out here. Absent where tides are small. */
	lowWater: z.strictObject({time: clockTime, table: words}).optional(),
	bring: z.array(words).default([]),
	/** Beside the words on safety that every poster has. */
	beware: z.array(words).default([]),
	/** What the QR code opens. */
	link: z.url({protocol: /^https$/, error: 'expected a link that begins with https://'}),
	contact: words,
});

/** What a poster says. */
export type Poster = z.output<typeof posterSchema>;

const marginMm = 16;
const codeMm = 52;
const widthMm = a4.widthMm - 2 * marginMm;
const bandTopMm = a4.heightMm - marginMm - codeMm;

/** Lays out a poster; throws when its words do not fit at letters of 3.5 mm (title 8 mm), saying which are too long. */
export function posterPage(poster: Poster, say: Say): Page {
	const column = {xMm: marginMm, topMm: marginMm, widthMm, heightMm: bandTopMm - marginMm - 8};
	const line = `<rect x="0" y="0" width="${widthMm}" height="0.6" fill="${colours.ink}"/>`;
	const box = {left: 0, top: 0, right: widthMm, bottom: 0.6};
	const above = {
		kind: 'drawing',
		svg: line,
		box,
		xMm: marginMm,
		yMm: bandTopMm - 5,
		widthMm,
		heightMm: 0.6,
	} as const;
	return {
		...a4,
		items: [...flowInto(paragraphsOf(poster, say), column), above, ...joinBand(poster, say)],
	};
}

/** What a poster says, as plain text. */
export function posterWords(poster: Poster, say: Say): string {
	const above = paragraphsOf(poster, say).map(({words, isPoint}) => (isPoint ? `• ${words}` : words));
	return [...above, say.say('poster-join'), poster.link, poster.contact].join('\n');
}

function paragraphsOf(poster: Poster, say: Say): readonly Paragraph[] {
	const {title, date, from, to, meetingPlace, lowWater, bring, beware} = poster;
	// English without a country would put the month first.
	const tag = say.language === 'en' ? 'en-GB' : say.language;
	const day = new Intl.DateTimeFormat(tag, {dateStyle: 'full', timeZone: 'UTC'}).format(Date.parse(date));
	const body = {sizeMm: 5.6, leastMm: 3.5, gapMm: 1} as const;
	const heading = {sizeMm: 6.4, leastMm: 4, gapMm: 5, weight: 'bold', role: 'heading'} as const;
	const points = (name: string, lines: readonly string[]): readonly Paragraph[] =>
		lines.map(words => ({...body, name, words, isPoint: true}));
	const [safetyHead = '', ...safety] = say.say('safety').split('\n');
	const rules = safety.map(rule => rule.replace(/^\s*•\s*/, ''));
	return [
		{name: 'title', words: title, sizeMm: 16, leastMm: 8, gapMm: 0, weight: 'bold', role: 'title'},
		{...heading, name: 'date', words: say.say('poster-when', {day, from, to}), sizeMm: 8, leastMm: 5},
		{...heading, name: 'meetingPlace', words: say.say('poster-where', {place: meetingPlace}), gapMm: 3},
		...(lowWater
			? [{...body, name: 'lowWater', words: say.say('poster-low-water', lowWater), gapMm: 3}]
			: []),
		...(bring.length > 0 ? [{...heading, name: 'bring', words: say.say('poster-bring')}] : []),
		...points('bring', bring),
		{...heading, name: 'beware', words: safetyHead},
		...points('beware', [...beware, ...rules]),
	];
}

/** The code with the way to join beside it. */
function joinBand({link, contact}: Poster, say: Say): Page['items'] {
	const code = drawCode(link);
	const xMm = marginMm + codeMm + 8;
	const column = {xMm, topMm: bandTopMm, widthMm: widthMm - codeMm - 8, heightMm: codeMm};
	const at = {xMm: marginMm, yMm: bandTopMm, widthMm: codeMm, heightMm: codeMm};
	const paragraphs: readonly Paragraph[] = [
		{
			name: 'link',
			words: say.say('poster-join'),
			sizeMm: 8,
			leastMm: 5,
			gapMm: 0,
			weight: 'bold',
			role: 'heading',
		},
		{name: 'link', words: link, sizeMm: 4.6, leastMm: 3.5, gapMm: 2},
		{name: 'contact', words: say.say('poster-contact', {contact}), sizeMm: 5.6, leastMm: 3.5, gapMm: 3},
	];
	const drawing = {
		kind: 'drawing',
		svg: code.svg,
		box: code.box,
		...at,
		alt: say.say('poster-code', {link}),
	} as const;
	return [drawing, ...flowInto(paragraphs, column)];
}
