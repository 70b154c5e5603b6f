/** The verbs of `npm run sheets`: sheets to print, as PDF or as pictures. */
import {mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {dirname, extname, resolve} from 'node:path';
import {parseArgs} from 'node:util';
import sharp from 'sharp';
import {z} from 'zod';
import {cribPages} from '../draw/crib.ts';
import {type Page, pageSvg} from '../draw/page.ts';
import {writePdf} from '../draw/pdf.ts';
import {posterPage, posterSchema} from '../draw/poster.ts';
import {readTexts, type Say, type Texts} from '../text/text.ts';
import {cribKinds} from './crib-kinds.ts';
import {readChecked, sharedFolders} from './regions.ts';
import {type ExitCode, messageOf, pathFrom, sayFaults, type Terminal} from './terminal.ts';

/** What `sheets --help` says. */
export const sheetsHelp = `npm run sheets -- crib <region> --out FILE [--language LANGUAGE]
npm run sheets -- poster DAY.json --out FILE [--language LANGUAGE]

Sheets of A4 to print. FILE ends in .pdf, or in .png for a picture of each page (FILE-2.png and so on).

  crib     the region's kinds at true size, with the sizes published and where, and a ruler on each page
  poster   a survey day, told by a file like this:

    {
      "title": "Egg case hunt on Larkin Sands",
      "date": "2026-05-02", "from": "09:30", "to": "11:30",
      "meetingPlace": "the car park at the end of Quay Lane",
      "lowWater": {"time": "10:42", "table": "the name of the official table it was read from"},
      "bring": ["boots", "a bucket"],
      "beware": ["the steps are slippery"],
      "link": "https://…", "contact": "whom to ask, and how"
    }

  --out FILE            where to write
  --language LANGUAGE   a language that there are sentences in, such as cy; en without it; "every" writes
                        one sheet for each, those beside English as FILE-cy.pdf and so on

Leaves with 0 when all is well, 1 when something is wrong with what it read, 2 when called wrongly.`;

/** What the command may touch, handed in so that tests can hand in their own; `now` in UTC milliseconds. */
export type SheetTools = Pick<Terminal, 'root' | 'calledIn' | 'say' | 'complain'> & {readonly now: number};

const english = 'en';
const every = 'every';
/** Of a page as a picture: enough to print it. */
const dotsPerInch = 150;

type Made = {readonly title: string; readonly language: string; readonly pages: readonly Page[]};

/** A call that was not understood. */
class Miscalled extends Error {}

/** Makes one sheet; whatever goes wrong is said in a few lines and never as a stack of calls. */
export async function runSheets(args: readonly string[], tools: SheetTools): Promise<ExitCode> {
	try {
		const {values, positionals} = readCall(args);
		if (values.help || positionals.length === 0) {
			tools.say(sheetsHelp);
			return values.help ? 0 : 2;
		}
		const [verb = '', subject] = positionals;
		if (verb !== 'crib' && verb !== 'poster') {
			throw new Miscalled(`Expected one of crib, poster; got "${verb}"`);
		}
		const what = verb === 'crib' ? 'a region' : 'a file that describes the day';
		if (subject === undefined) throw new Miscalled(`Expected ${what} after "${verb}"; got nothing`);
		if (positionals.length > 2) {
			throw new Miscalled(`Expected only ${what} after "${verb}"; got ${positionals.slice(1).join(' ')}`);
		}
		const file = outFile(values.out, tools);
		const source = verb === 'crib' ? cribSource(subject, tools) : posterSource(subject, tools);
		if (source === undefined) return 1;
		for (const language of wantedLanguages(values.language ?? english, source.texts)) {
			const made = source.make(source.texts.in(language));
			for (const path of await write(made, fileFor(file, language, values.language), tools.now)) {
				tools.say(pathFrom(tools.calledIn, path));
			}
		}
		return 0;
	} catch (error) {
		tools.complain(messageOf(error));
		return error instanceof Miscalled ? 2 : 1;
	}
}

function readCall(args: readonly string[]) {
	const options = {
		help: {type: 'boolean', short: 'h'},
		out: {type: 'string'},
		language: {type: 'string'},
	} as const;
	try {
		return parseArgs({args: [...args], options, allowPositionals: true});
	} catch (error) {
		throw new Miscalled(messageOf(error), {cause: error});
	}
}

function outFile(out: string | undefined, {calledIn}: SheetTools): string {
	if (out === undefined || !['.pdf', '.png'].includes(extname(out).toLowerCase())) {
		throw new Miscalled(`Expected --out FILE with a name that ends in .pdf or .png; got ${out ?? 'nothing'}`);
	}
	return resolve(calledIn, out);
}

/** What a sheet is made of, in any of the languages that there are sentences in. */
type Source = {readonly texts: Texts; readonly make: (say: Say) => Made};

function cribSource(regionId: string, tools: SheetTools): Source | undefined {
	const read = readChecked(tools.root, regionId);
	if (read.kind === 'faults') {
		// Nothing is read from standard input here.
		sayFaults({...tools, say: tools.complain, lines: noLines()}, read.faults);
		return undefined;
	}
	const make = (say: Say): Made => {
		const title = say.say('crib-title', {region: say.say('region-name')});
		const pages = cribPages({heading: title, kinds: cribKinds(read.region, say), say});
		return {title, language: say.language, pages};
	};
	return {texts: read.texts, make};
}

async function* noLines(): AsyncGenerator<string> {}

function posterSource(name: string, tools: SheetTools): Source {
	const file = resolve(tools.calledIn, name);
	const tried = posterSchema.safeParse(readJson(file, name));
	if (!tried.success) throw new Error(`${name}:\n${z.prettifyError(tried.error)}`);
	const {data} = tried;
	const make = (say: Say): Made => ({
		title: data.title,
		language: say.language,
		pages: [posterPage(data, say)],
	});
	return {texts: readTexts(sharedFolders(tools.root)), make};
}

function wantedLanguages(asked: string, {languages}: Texts): readonly string[] {
	if (asked === every) return languages;
	if (languages.includes(asked)) return [asked];
	throw new Miscalled(`Expected a language of ${languages.join(', ')}, or "${every}"; got "${asked}"`);
}

/** Of sheets in every language only the English one bears the name that was asked for. */
function fileFor(file: string, language: string, asked: string | undefined): string {
	if (asked !== every || language === english) return file;
	return `${file.slice(0, -extname(file).length)}-${language}${extname(file)}`;
}

function readJson(file: string, name: string): unknown {
	try {
		return JSON.parse(readFileSync(file, 'utf8'));
	} catch (error) {
		const why = messageOf(error);
		throw new Error(`Expected ${name} to be a file of JSON; ${why}`, {cause: error});
	}
}

/** Writes a sheet and gives the files it became. */
async function write({title, language, pages}: Made, file: string, now: number): Promise<readonly string[]> {
	mkdirSync(dirname(file), {recursive: true});
	if (extname(file).toLowerCase() === '.pdf') {
		writeFileSync(file, await writePdf({title, language, pages, now}));
		return [file];
	}
	const stem = file.slice(0, -extname(file).length);
	const files = pages.map((_, index) => (index === 0 ? file : `${stem}-${index + 1}${extname(file)}`));
	for (const [index, page] of pages.entries()) {
		// Drawn larger and then shrunk: sharp reads a drawing's millimetres otherwise than its density.
		const width = Math.round((page.widthMm / 25.4) * dotsPerInch);
		const svg = Buffer.from(pageSvg(page, title));
		const png = sharp(svg, {density: dotsPerInch}).resize({width}).withMetadata({density: dotsPerInch}).png();
		await png.toFile(files[index] ?? file);
	}
	return files;
}
