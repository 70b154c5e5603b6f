/** Photos with known truth by a second way: lines of sight cast back to the table and to the height of a case. */
import {type Pick, seeded} from '../../../src/key/random.ts';
import {type Laid, layCase, toTable} from './case.ts';
import {castRays} from './cast-rays.ts';
import {develop, loadFilm} from './film.ts';
import {frameScene} from './frame-scene.ts';
import {type Camera, seenAt} from './framing.ts';
import {makeGround} from './grounds.ts';
import {layMany, layOne, roundBody, tipsOf} from './lay-out.ts';
import {makeFallOff, makeLight} from './lighting.ts';
import {makePaper} from './paper.ts';
import {readPrintedSheet} from './printed-sheet.ts';
import {clutterRound, groundFor, layExtras} from './surroundings.ts';
import type {Wish} from './wish.ts';

type At = readonly [number, number];

/** The truth about one case of a photo. */
export type Truth = {
	/** From apron border to apron border on the middle line, horns and tendrils left out. */
	readonly lengthMm: number;
	/** The greatest width in the middle four fifths, keels included. */
	readonly widthMm: number;
	/** How high the outline lies above the ground. */
	readonly heightMm: number;
	/** The middle of the case, from the middle of the sheet or, beside a card, of the picture's table. */
	readonly atMm: At;
	/** The two ends in pixels of the upright photo; the middle of the first pixel is 0. */
	readonly lengthLinePx: readonly [At, At];
};

/** A photo and what is true of it; `cornersPx` are those of a sheet of paper, clockwise, counted as the ends are. */
export type Photographed = {
	readonly jpeg: Uint8Array;
	readonly cases: readonly Truth[];
	readonly tilt: number;
	readonly camera: Camera;
	readonly cornersPx: readonly At[];
};

/** Makes one photo; the same wish gives the same bytes. */
export async function castPhoto(wish: Wish): Promise<Photographed> {
	const chance = (part: number) => seeded(wish.seed * 8191 + part * 131071 + 5);
	const light = makeLight(wish.level, chance(1));
	const papers = await paperOn(wish);
	const laid = layCases(wish, papers, chance(2));
	const extra = layExtras(wish, {laid, light}, chance(3));
	const pick = chance(4);
	const cases = laid.map(one => layCase(one, light, pick));
	const paper = papers ? [makePaper({...papers, level: wish.level}, light, chance(5))] : [];
	const points = [...extra.points, ...(papers ? cornersOf(papers) : [])];
	const around = papers ? points : [...points, ...laid.flatMap(one => [...roundBody(one), ...tipsOf(one)])];
	const clutter = clutterRound(wish, {points: around, light, isOnPaper: papers !== undefined}, chance(6));
	const camera = frameScene(wish, points, {laid, pick: chance(7)});
	const ground = makeGround(wish.ground ?? groundFor(wish, chance(8)), chance(9));
	const things = [...clutter, ...paper, ...extra.below, ...cases, ...extra.above];
	const fallOff = makeFallOff(wish.level, papers ? 180 : 120, chance(10));
	const cast = castRays({camera, ground, things, fallOff});
	const filmWish = {level: wish.level, isDark: wish.isDark ?? false, blurPx: wish.blurPx ?? 0};
	const film = loadFilm(filmWish, chance(11));
	const jpeg = await develop(cast, film, {enlarged: camera.enlarged, pick: chance(12)});
	return {
		jpeg,
		cases: laid.map(one => truthOf(one, camera)),
		tilt: camera.stand.tilt,
		camera,
		cornersPx: papers ? cornersOf(papers).map(at => countedFromZero(seenAt(camera, at, 0))) : [],
	};
}

type Papers = {readonly wideMm: number; readonly highMm: number; readonly print?: PaperPrint};
type PaperPrint = Awaited<ReturnType<typeof readPrintedSheet>>;

async function paperOn({reference, printScale}: Wish): Promise<Papers | undefined> {
	const a4 = {wideMm: 210, highMm: 297};
	if (reference === 'a4') return a4;
	if (reference === 'letter') return {wideMm: 215.9, highMm: 279.4};
	return reference === 'sheet' ? {...a4, print: await readPrintedSheet(printScale ?? 1)} : undefined;
}

function layCases(wish: Wish, papers: Papers | undefined, pick: Pick): readonly Laid[] {
	const subject = wish.subject ?? 'case';
	if (!['case', 'overlap', 'tray', 'cut'].includes(subject)) return [];
	const {level} = wish;
	const lay = {level, isHornless: wish.isHornless ?? false, ...(wish.isTiny ? {lengthMm: 26} : {})};
	// On the measuring sheet the marks stay free.
	const room: At = !papers
		? [90, 90]
		: papers.print
			? [88, 104]
			: [papers.wideMm / 2 - 6, papers.highMm / 2 - 7];
	if (subject === 'tray') return layMany(room, {wish: lay, pick});
	const one = layOne(room, papers ? [25, 150] : [25, 130], {wish: lay, pick});
	if (subject !== 'overlap') return [one];
	const other = layOne(room, [25, 110], {wish: lay, pick});
	const [x, y] = one.wish.atMm;
	const off = 0.45 * Math.min(one.shape.widthMm, other.shape.widthMm);
	const away = pick() * 2 * Math.PI;
	const atMm: At = [x + off * Math.cos(away), y + off * Math.sin(away)];
	return [one, {...other, wish: {...other.wish, atMm}}];
}

function cornersOf({wideMm, highMm}: Papers): readonly At[] {
	const [x, y] = [wideMm / 2, highMm / 2];
	return [
		[-x, -y],
		[x, -y],
		[x, y],
		[-x, y],
	];
}

function truthOf({wish, shape}: Laid, camera: Camera): Truth {
	const end = (u: number): At => countedFromZero(seenAt(camera, toTable(wish, u, 0), shape.rim(u)));
	const half = shape.lengthMm / 2;
	return {
		lengthMm: shape.lengthMm,
		widthMm: shape.widthMm,
		heightMm: shape.riseMm,
		atMm: wish.atMm,
		lengthLinePx: [end(-half), end(half)],
	};
}

/** The camera has the middle of the first pixel at a half, the program at zero. */
function countedFromZero([x, y]: At): At {
	return [x - 0.5, y - 0.5];
}
