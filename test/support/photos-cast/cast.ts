/** Photos with known truth by a second way: lines of sight cast back to the table and to the height of a case. */
import {between, byShare, type Pick, seeded} from '../../../src/key/random.ts';
import {makeCard} from './card.ts';
import {type Laid, layCase, toTable} from './case.ts';
import {castRays} from './cast-rays.ts';
import {makeClutter, makeSand, makeWeed} from './clutter.ts';
import {develop, loadFilm} from './film.ts';
import {type Camera, holdCamera, seenAt} from './framing.ts';
import {type GroundName, makeGround} from './grounds.ts';
import {besideCase, layMany, layOne, roundBody, tipsOf} from './lay-out.ts';
import {makeFallOff, makeLight} from './lighting.ts';
import {makeOdd, type OddName} from './odd-things.ts';
import {makePaper} from './paper.ts';
import {readPrintedSheet} from './printed-sheet.ts';
import type {Light, Thing} from './scene.ts';

type At = readonly [number, number];

/** What a photo shall show; all that is not wished for is made up from the seed. */
export type Wish = {
	readonly seed: number;
	readonly reference: 'a4' | 'card' | 'sheet' | 'letter' | 'coin' | 'none';
	readonly level: 'clean' | 'normal' | 'hard';
	readonly subject?: 'case' | 'stone' | 'shell' | 'leaf' | 'weed' | 'nothing' | 'overlap' | 'tray' | 'cut';
	readonly cardScale?: number;
	readonly printScale?: number;
	readonly ground?: GroundName;
	readonly isCut?: boolean;
	readonly blurPx?: number;
	readonly isDark?: boolean;
	readonly isHornless?: boolean;
	readonly isTilted?: boolean;
	readonly isTiny?: boolean;
};

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
	const camera = frame(wish, points, {laid, pick: chance(7)});
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

type Extras = {
	readonly below: readonly Thing[];
	readonly above: readonly Thing[];
	readonly points: readonly At[];
};

/** A card or a coin beside the case, sand upon it, and what lies there in its place. */
function layExtras(wish: Wish, {laid, light}: {laid: readonly Laid[]; light: Light}, pick: Pick): Extras {
	const below: Thing[] = [];
	const above: Thing[] = [];
	const points: At[] = [];
	const [first] = laid;
	const {subject = 'case', reference} = wish;
	if (subject === 'stone' || subject === 'shell' || subject === 'leaf') {
		const longMm = between(pick, [35, 95]);
		const spot = {
			atMm: [between(pick, [-30, 30]), between(pick, [-40, 40])] as const,
			turn: pick() * 6.3,
			longMm,
		};
		above.push(makeOdd(subject, spot, {light, pick}));
		points.push([-60, -60], [60, 60]);
	}
	if (subject === 'weed') above.push(makeWeed({light, pick, atMm: [between(pick, [-40, 40]), 0]}));
	const beside = first
		? besideCase(first, pick)
		: {atMm: [between(pick, [-5, 5]), 110] as const, turn: pick() * 6.3};
	if (reference === 'card') {
		below.push(makeCard({...beside, scale: wish.cardScale ?? 1}, light, pick));
		points.push(...cornersAt(beside, [43, 27]));
	}
	if (reference === 'coin') {
		const name: OddName = 'coin';
		below.push(makeOdd(name, {...beside, longMm: between(pick, [16, 29])}, {light, pick}));
		points.push(...cornersAt(beside, [14, 14]));
	}
	const sandy = {clean: 0.1, normal: 0.3, hard: 0.5}[wish.level];
	if (first && pick() < sandy)
		above.push(makeSand({light, pick, atMm: first.wish.atMm}, first.shape.lengthMm));
	const weedy = {clean: 0, normal: 0.15, hard: 0.3}[wish.level];
	if (pick() < weedy) {
		above.push(makeWeed({light, pick, atMm: [between(pick, [-1, 1]) * 95, (pick() < 0.5 ? 1 : -1) * 130]}));
	}
	return {below, above, points};
}

function cornersAt({atMm: [x, y], turn}: {atMm: At; turn: number}, [a, b]: At): readonly At[] {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	return [1, -1].flatMap(i => [1, -1].map((j): At => [x + i * a * c - j * b * s, y + i * a * s + j * b * c]));
}

/** Things round about: beside a sheet or partly below it, beside cases and card that lie on the bare table. */
function clutterRound({level}: Wish, {points, light, isOnPaper}: Surroundings, pick: Pick): readonly Thing[] {
	const count = level === 'hard' ? Math.floor(pick() * 4) : level === 'normal' && pick() < 0.3 ? 1 : 0;
	const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))];
	const [top, foot] = [Math.min(...points.map(([, y]) => y)), Math.max(...points.map(([, y]) => y))];
	return Array.from({length: points.length > 0 ? count : 0}, () => {
		const turn = pick() * 2 * Math.PI;
		const [c, s] = [Math.cos(turn), Math.sin(turn)];
		const edge = Math.min((right - left) / 2 / Math.abs(c), (foot - top) / 2 / Math.abs(s));
		const away = edge + between(pick, isOnPaper ? [20, 90] : [85, 120]);
		return makeClutter({light, pick, atMm: [(left + right) / 2 + c * away, (top + foot) / 2 + s * away]});
	});
}

type Surroundings = {readonly points: readonly At[]; readonly light: Light; readonly isOnPaper: boolean};

function groundFor({level, reference}: Wish, pick: Pick): GroundName {
	const isOnPaper = ['a4', 'sheet', 'letter'].includes(reference);
	const shares: readonly (readonly [GroundName, number])[] = isOnPaper
		? [
				['plain', 3],
				['wood', 3],
				['speckled stone', 1.5],
				['veined stone', level === 'clean' ? 0.5 : 1],
				['linen', 1],
				['board', level === 'clean' ? 0 : 0.6],
				['towel', level === 'clean' ? 0 : 0.7],
				['tiles', level === 'clean' ? 0.3 : 1],
			]
		: [
				['board', {clean: 8, normal: 5, hard: 3}[level]],
				['plain', 2],
				['wood', {clean: 0, normal: 1.5, hard: 2}[level]],
				['speckled stone', level === 'clean' ? 0 : 1],
				['veined stone', level === 'clean' ? 0 : 1],
				['linen', level === 'clean' ? 0.5 : 1],
			];
	const name = byShare(pick, shares);
	return shares.find(([one]) => one === name)?.[0] ?? 'plain';
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

/** Holds the camera so that all is seen; where something shall be cut off, it comes nearer until it is. */
function frame(wish: Wish, points: readonly At[], {laid, pick}: {laid: readonly Laid[]; pick: Pick}): Camera {
	const [first] = laid;
	const isCut = wish.subject === 'cut';
	const bodies = laid.flatMap(one => [...roundBody(one), ...(isCut ? [] : tipsOf(one))]);
	const kept =
		isCut && first ? [...points, toTable(first.wish, -first.shape.lengthMm / 2, 0)] : [...points, ...bodies];
	const margin = wish.reference === 'card' ? ([0.03, 0.12] as const) : ([0.012, 0.06] as const);
	const {level, isTilted = false} = wish;
	const away = wish.isTiny ? 2.4 : 1;
	const camera = holdCamera(
		{
			points:
				kept.length > 0
					? kept
					: [
							[-90, -90],
							[90, 90],
						],
			level,
			isTilted,
			margin,
			away,
		},
		pick,
	);
	const cut: At | undefined = isCut && first ? toTable(first.wish, first.shape.lengthMm / 2, 0) : undefined;
	return nearerUntilCut(camera, cut ?? (wish.isCut ? points.at(-1) : undefined));
}

function nearerUntilCut(camera: Camera, cut: At | undefined): Camera {
	let {stand} = camera;
	if (!cut) return camera;
	for (let round = 0; round < 40; round += 1) {
		const [x, y] = seenAt({...camera, stand, enlarged: 1}, cut, 0);
		const over = 0.02 * stand.widthPx;
		if (x < -over || y < -over || x > stand.widthPx + over || y > stand.heightPx + over) break;
		stand = {...stand, distanceMm: stand.distanceMm * 0.96};
	}
	return {...camera, stand};
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
