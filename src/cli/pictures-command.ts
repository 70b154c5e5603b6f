/** The command `npm run pictures`: every picture drawn from the regions, to be looked at or kept for the tests. */
import {mkdirSync, writeFileSync} from 'node:fs';
import {join, resolve} from 'node:path';
import {parseArgs} from 'node:util';
import sharp from 'sharp';
import {picturesOf, type Wanted} from '../draw/title.ts';
import {type DrawnFrom, drawWanted} from '../draw/wanted.ts';
import {readChecked, regionsIn} from './regions.ts';
import {type ExitCode, pathFrom, sayFaults, type Terminal} from './terminal.ts';

/** What `pictures --help` says. */
export const picturesHelp = `npm run pictures -- [region …] --out FOLDER [--width PIXELS]
npm run pictures -- --write

Draws what people are shown, as PNG: each kind, and for each question its options and its part.

  --out FOLDER     where to write
  --width PIXELS   how wide, 1080 without it
  --write          draw those anew that the tests compare with; look at each before it is kept

Leaves with 0 when all is well, 1 when a region has a fault, 2 when called wrongly.`;

/** What the command may touch, handed in so that tests can hand in their own. */
export type PictureTools = Pick<Terminal, 'root' | 'calledIn' | 'say' | 'complain'>;

/** A picture with the name of its file. */
export type NamedPicture = {readonly name: string; readonly wanted: Wanted; readonly from: DrawnFrom};

/** Pixels across of the pictures that the tests compare with. */
export const keptWidthPx = 240;
/** Where the pictures stand that the tests compare with, from the project's folder. */
export const keptFolder = join('test', 'draw', 'golden', 'pictures');

/** Draws pictures into a folder; whatever goes wrong is said in a line. */
export async function runPictures(args: readonly string[], tools: PictureTools): Promise<ExitCode> {
	const call = readCall(args);
	if (call === undefined || call.values.help === true) {
		tools.say(picturesHelp);
		return call === undefined ? 2 : 0;
	}
	const {values, positionals} = call;
	const isKept = values.write === true;
	const folder = isKept ? join(tools.root, keptFolder) : values.out && resolve(tools.calledIn, values.out);
	const width = isKept ? keptWidthPx : Number(values.width ?? 1080);
	const names = positionals.length > 0 ? positionals : regionsIn(tools.root);
	const strangers = names.filter(name => !regionsIn(tools.root).includes(name));
	if (!folder || !Number.isInteger(width) || width < 16 || width > 4000 || strangers.length > 0) {
		const why = strangers.length > 0 ? `; there is no region ${strangers.join(', ')}` : '';
		tools.complain(`Expected --out FOLDER or --write, and a width of 16 to 4000${why}.`);
		return 2;
	}
	mkdirSync(folder, {recursive: true});
	let code: ExitCode = 0;
	for (const region of names) {
		const read = readChecked(tools.root, region);
		if (read.kind === 'faults') {
			sayFaults({...tools, lines: noLines()}, read.faults);
			code = 1;
			continue;
		}
		const pictures = namedPictures(read, isKept);
		for (const {name, wanted, from} of pictures) {
			writeFileSync(join(folder, `${name}.png`), await smallPng(drawWanted(wanted, from).svg, width));
		}
		tools.say(`${region}: ${pictures.length} pictures in ${pathFrom(tools.calledIn, folder)}`);
	}
	return code;
}

/** Every picture of a region; or only those kept for the tests, which leave out where parts are. */
export function namedPictures(from: DrawnFrom, isKept: boolean): readonly NamedPicture[] {
	const {region, say} = from;
	const of = {region: region.id, language: say.language};
	const kinds = Object.keys(region.profiles.taxa).map(
		(taxon): Wanted => ({kind: 'taxon', ...of, taxon, lost: []}),
	);
	const questions = picturesOf(region, say.language);
	// Where parts are follows from what is kept; what all regions share is kept once, beside these.
	return [...kinds, ...questions]
		.filter(({kind}) => !isKept || (kind !== 'part' && kind !== 'around'))
		.map(wanted => ({name: [region.id, wanted.kind, subjectOf(wanted)].join('_'), wanted, from}));
}

/** A PNG of few colours, as small as a drawing needs. */
export function smallPng(svg: string, width: number): Promise<Buffer> {
	return sharp(Buffer.from(svg), {density: 144})
		.resize({width})
		.png(width <= keptWidthPx ? {palette: true, colours: 32, dither: 0} : {})
		.toBuffer();
}

function subjectOf(wanted: Wanted): string {
	switch (wanted.kind) {
		case 'taxon':
			return wanted.taxon;
		case 'measuring':
		case 'around':
			return wanted.which;
		case 'lengths':
			return wanted.taxa.join('+');
		case 'bars':
			return 'tally';
		case 'months':
		case 'map':
			return String(wanted.kind);
		default:
			return wanted.character;
	}
}

function readCall(args: readonly string[]) {
	try {
		return parseArgs({
			args: [...args],
			allowPositionals: true,
			options: {
				out: {type: 'string'},
				width: {type: 'string'},
				write: {type: 'boolean'},
				help: {type: 'boolean'},
			},
		});
	} catch {
		return undefined;
	}
}

async function* noLines(): AsyncGenerator<string> {}
