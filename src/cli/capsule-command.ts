/** The verbs of `npm run capsule`: cases measured on photos, and the sheet to measure them on. */
import {writeFileSync} from 'node:fs';
import {readFile} from 'node:fs/promises';
import {basename, resolve} from 'node:path';
import {performance} from 'node:perf_hooks';
import {parseArgs} from 'node:util';
import {measurePhoto} from '../capsule/measure.ts';
import type {MeasuredCase, Outcome, ReferenceKind} from '../capsule/outcome.ts';
import {measuringSheetPdf} from '../survey/measuring-sheet.ts';
import {readTexts} from '../text/text.ts';
import {sharedFolders} from './regions.ts';
import {type ExitCode, pathFrom, type Terminal} from './terminal.ts';

/** What `capsule --help` says. */
export const capsuleHelp = `npm run capsule -- measure FILE… [--reference a4|card|sheet] [--json]
npm run capsule -- sheet OUT.pdf

  measure   the length and width of each case on photos (JPEG, PNG or WebP), by a sheet of A4 below it, a bank card
            beside it or the measuring sheet; what it is measured by is found out
  sheet     the measuring sheet of A4, to print at 100 %

  --reference KIND   take nothing else for a measure
  --json             one array: file, status (measured, choose, declined), reason, reference, ms, cases; millimetres,
                     intervals that hold the true value nine times in ten, points in pixels of the upright photo; by a
                     coin aboutMm, between what the case may be long

A file that cannot be read is declined like any other, and the rest are measured all the same.

Leaves with 0 when all is well, 1 when a file could not be read, 2 when called wrongly.`;

/** What the command may touch, handed in so that tests can hand in their own; `now` in UTC milliseconds. */
export type CapsuleTools = Pick<Terminal, 'root' | 'calledIn' | 'say' | 'complain'> & {
	readonly now: () => number;
};

/** A call that was not understood. */
class Miscalled extends Error {}

/** Measures photos; whatever goes wrong is said in a few lines and never as a stack of calls. */
export async function runCapsule(args: readonly string[], tools: CapsuleTools): Promise<ExitCode> {
	try {
		const {values, positionals} = readCall(args);
		const [verb, ...files] = positionals;
		if (values.help || verb === undefined) {
			tools.say(capsuleHelp);
			return values.help ? 0 : 2;
		}
		if (verb === 'sheet') return await writeSheet(files, tools);
		if (verb !== 'measure') throw new Miscalled(`Expected one of measure, sheet; got "${verb}"`);
		if (files.length === 0) throw new Miscalled('Expected at least one photo after "measure"; got nothing');
		const {reports, isAllRead} = await measureAll(files, {tools, wanted: referenceOf(values.reference)});
		if (values.json) tools.say(JSON.stringify(reports));
		else for (const report of reports) tools.say(inWords(report));
		return isAllRead ? 0 : 1;
	} catch (error) {
		tools.complain(error instanceof Error ? error.message : String(error));
		return error instanceof Miscalled ? 2 : 1;
	}
}

async function writeSheet(files: readonly string[], tools: CapsuleTools): Promise<ExitCode> {
	const [file] = files;
	if (file === undefined || files.length > 1 || !file.toLowerCase().endsWith('.pdf')) {
		throw new Miscalled(
			`Expected one name that ends in .pdf after "sheet"; got ${files.join(' ') || 'nothing'}`,
		);
	}
	const say = readTexts(sharedFolders(tools.root)).in('en');
	const bytes = await measuringSheetPdf(say, tools.now());
	const path = resolve(tools.calledIn, file);
	writeFileSync(path, bytes);
	tools.say(pathFrom(tools.calledIn, path));
	return 0;
}

function readCall(args: readonly string[]) {
	const options = {
		help: {type: 'boolean', short: 'h'},
		json: {type: 'boolean'},
		reference: {type: 'string'},
	} as const;
	try {
		return parseArgs({args: [...args], options, allowPositionals: true});
	} catch (error) {
		throw new Miscalled(error instanceof Error ? error.message : String(error), {cause: error});
	}
}

function referenceOf(name: string | undefined): ReferenceKind | undefined {
	if (name === undefined || name === 'a4' || name === 'card' || name === 'sheet') return name;
	throw new Miscalled(`Expected --reference a4, card or sheet; got "${name}"`);
}

type Job = {readonly tools: CapsuleTools; readonly wanted: ReferenceKind | undefined};
type Report = ReturnType<typeof reportOf>;

async function measureAll(
	files: readonly string[],
	{tools, wanted}: Job,
): Promise<{readonly reports: readonly Report[]; readonly isAllRead: boolean}> {
	const reports: Report[] = [];
	let isAllRead = true;
	for (const file of files) {
		const start = performance.now();
		const outcome = await measureFile(resolve(tools.calledIn, file), wanted).catch((error: unknown) => {
			isAllRead = false;
			tools.complain(`${file}: ${error instanceof Error ? error.message : String(error)}`);
			return {kind: 'declined', why: 'no-photo'} as const;
		});
		reports.push(reportOf(file, outcome, performance.now() - start));
	}
	return {reports, isAllRead};
}

async function measureFile(path: string, wanted: ReferenceKind | undefined): Promise<Outcome> {
	return measurePhoto(await readFile(path), wanted);
}

function reportOf(file: string, outcome: Outcome, ms: number) {
	const declined = outcome.kind === 'declined';
	return {
		file,
		status: outcome.kind,
		...(declined ? {reason: outcome.why} : {}),
		...(declined && outcome.aboutMm ? {aboutMm: outcome.aboutMm} : {}),
		...(outcome.reference === undefined ? {} : {reference: outcome.reference}),
		ms: Math.round(ms * 10) / 10,
		cases: declined ? [] : outcome.cases.map(caseOf),
	};
}

function caseOf({widthMm, widthIntervalMm, ...sizes}: MeasuredCase) {
	const tenth = (value: number) => Math.round(value * 100) / 100;
	const pair = ([from, to]: readonly [number, number]) => [tenth(from), tenth(to)] as const;
	return {
		lengthMm: tenth(sizes.lengthMm),
		...(widthMm === undefined ? {} : {widthMm: tenth(widthMm)}),
		lengthIntervalMm: pair(sizes.lengthIntervalMm),
		...(widthIntervalMm === undefined ? {} : {widthIntervalMm: pair(widthIntervalMm)}),
		lengthLinePx: sizes.lengthLinePx.map(pair),
	};
}

function inWords({file, status, reason, aboutMm, reference, cases}: Report): string {
	const by = reference === undefined ? '' : ` by ${reference}`;
	if (status === 'declined') {
		const about = aboutMm ? `, about ${aboutMm[0]} to ${aboutMm[1]} mm` : '';
		return `${basename(file)}: declined${by}: ${reason}${about}`;
	}
	const sizes = cases.map(({lengthMm, widthMm, lengthIntervalMm: [from, to]}) => {
		const across = widthMm === undefined ? '' : ` × ${widthMm.toFixed(1)}`;
		return `${lengthMm.toFixed(1)}${across} mm (${from.toFixed(1)} to ${to.toFixed(1)})`;
	});
	return `${basename(file)}: ${status}${by}: ${sizes.join(status === 'choose' ? ' or ' : ', ')}`;
}
