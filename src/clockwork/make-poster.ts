/** The poster of a survey day as a sheet to print, with the code that people point their phones at. */
import {writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import {writePdf} from '../draw/pdf.ts';
import {posterPage, posterSchema} from '../draw/poster.ts';
import {clockAt} from '../survey/clock-time.ts';
import type {Day} from '../survey/day.ts';
import type {Say} from '../text/text.ts';

/** What a poster is made from, and where it goes. */
export type PosterWanted = {
	readonly day: Day;
	readonly link: string;
	readonly folder: string;
	readonly say: Say;
	/** UTC milliseconds. */
	readonly now: number;
};

/** Writes the poster and gives its name in the folder; throws when its words do not fit the page. */
export async function writePoster({day, link, folder, say, now}: PosterWanted): Promise<string> {
	const {title, date, place, meeting, bring, contact, risks, lowWater} = day;
	const time = (at: number) => clockAt(at, day.spot.zone).time;
	const poster = posterSchema.parse({
		title,
		date,
		from: time(day.startsAt),
		to: time(day.endsAt),
		meetingPlace: `${place}: ${meeting}`,
		...(lowWater ? {lowWater: {time: time(lowWater.at), table: lowWater.table}} : {}),
		bring: bring === undefined ? [] : [bring],
		beware: risks === undefined ? [] : [risks],
		link,
		contact,
	});
	const {language} = say;
	const name = `poster-${date}.pdf`;
	const pages = [posterPage(poster, say)];
	await writeFile(join(folder, name), await writePdf({title, language, pages, now}), {mode: 0o600});
	return name;
}
