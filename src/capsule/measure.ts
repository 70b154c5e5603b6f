/** From the bytes of one photo to the sizes of the cases on it, or to the reason why not. */
import {aboutMm, asIfFlat, findRound} from './coin.ts';
import type {Found} from './flat-fit.ts';
import type {Reading} from './judged.ts';
import {measureBodies} from './measure-bodies.ts';
import {asMeasuringSheet, findByMarks} from './measuring-sheet.ts';
import type {Outcome, ReferenceKind} from './outcome.ts';
import {makePaperTest} from './paper.ts';
import {type Photo, readPhoto} from './photo.ts';
import {halve, type Point, type Raster} from './raster.ts';
import {findFlats, isPlain} from './reference.ts';

/** Measures every case on a photo by the best reference in it, or by the one asked for; never throws for a bad photo. */
export async function measurePhoto(bytes: Uint8Array, wanted?: ReferenceKind): Promise<Outcome> {
	const photo = await readPhoto(bytes);
	if (photo.kind === 'unreadable') return {kind: 'declined', why: photo.why};
	return measureUpright(photo, wanted);
}

/** Measures a decoded photo. */
export function measureUpright(photo: Photo, wanted?: ReferenceKind): Outcome {
	const {raster} = photo;
	const half = halve(raster);
	const flats = findFlats(raster, half);
	const paper = flats.find(({flat}) => flat.kind === 'a4');
	const marked = paper
		? (asMeasuringSheet(raster, paper) ?? (isPoor(paper) ? findByMarks(raster, half) : undefined))
		: flats.some(isSurelyCard(raster))
			? undefined
			: findByMarks(raster, half);
	// The sheet is plain A4 as well, so whoever asks for that may have it.
	const all = marked && wanted !== 'a4' ? [marked, ...flats.filter(({flat}) => flat.kind === 'card')] : flats;
	const [best] = all.filter(({flat}) => wanted === undefined || flat.kind === wanted);
	if (!best && all.length > 0 && !flats.some(isLetter)) return {kind: 'declined', why: 'other-reference'};
	if (!best) return declineBare({...photo, half}, flats);
	const {kind} = best.flat;
	return kind === 'letter' ? {kind: 'declined', why: 'letter'} : measureBy({...photo, half}, best, kind);
}

type Halved = Photo & {readonly half: Raster};

/** Paper whose corners lie badly does not show where its marks should be (our choice; a good sheet has less than 3). */
function isPoor({pose}: Found): boolean {
	return pose.misfit > 3;
}

/** The outline of a card that is printed on the measuring sheet has paper inside. */
function isSurelyCard(raster: Raster): (found: Found) => boolean {
	const isPaper = makePaperTest(raster);
	return found => isPlain(found) && !isPaper(found.placed.corners);
}

function isLetter({flat}: Found): boolean {
	return flat.kind === 'letter';
}

/** What to say of a photo without a measure: the most that is seen of why, and by a coin a class of size. */
function declineBare(photo: Halved, flats: readonly Found[]): Outcome {
	if (flats.some(isLetter)) return {kind: 'declined', why: 'letter'};
	const round = findRound(photo.half);
	const lengths = round
		? measureBodies(photo, asIfFlat(round, photo.raster)).flatMap(one =>
				one.kind === 'read' ? one.either.map(({lengthMm}) => lengthMm) : [],
			)
		: [];
	if (lengths.length > 0) return {kind: 'declined', why: 'coin', aboutMm: aboutMm(Math.max(...lengths))};
	return {kind: 'declined', why: isDark(photo) ? 'dark' : 'no-reference'};
}

/** Measures the cases on a photo by a reference that was found in it. */
function measureBy(photo: Halved, found: Found, reference: ReferenceKind): Outcome {
	const judged = measureBodies(photo, found);
	const toUpright = ([x, y]: Point): Point => [(x + 0.5) * photo.scale - 0.5, (y + 0.5) * photo.scale - 0.5];
	const referencePx = found.placed.corners.map(toUpright);
	const base = {reference, referencePx};
	const read = judged.flatMap(one => (one.kind === 'read' ? [one] : []));
	const doubted = judged.flatMap(one => (one.kind === 'doubted' ? [one] : []));
	const unsure = (list: typeof doubted) => {
		const told = list.map(({at, why}) => ({atPx: toUpright(at), why}));
		return told.length > 0 ? {unsure: told} : {};
	};
	const [first] = read;
	if (!first) {
		return {kind: 'declined', why: doubted[0]?.why ?? (isDark(photo) ? 'dark' : 'no-case'), ...base};
	}
	const inPx = ({either}: typeof first) => either.map(one => inPixels(one, toUpright));
	// Two readings of one case are a question; nobody can be asked about each of several.
	if (read.length === 1 && first.either.length > 1) {
		return {kind: 'choose', ...base, cases: inPx(first), ...unsure(doubted)};
	}
	const told = read.map(({either, isLikely, symmetry, at}) => ({
		// Where both halves are alike, horns between which nothing shows are hardly taken for a part of the body.
		one: isLikely ? either[0] : symmetry >= even ? tellBetween(either) : undefined,
		at,
	}));
	const cases = told.flatMap(({one}) => (one ? [inPixels(one, toUpright)] : []));
	if (cases.length === 0) return {kind: 'declined', why: 'unclear-ends', ...base};
	const left = told.flatMap(({one, at}) =>
		one ? [] : [{kind: 'doubted', why: 'unclear-ends', at} as const],
	);
	return {kind: 'measured', ...base, cases, ...unsure([...left, ...doubted])};
}

function inPixels({lines, outline, ...sizes}: Reading, toUpright: (point: Point) => Point) {
	const [from, to] = lines.length;
	const width = lines.width && {widthLinePx: [toUpright(lines.width[0]), toUpright(lines.width[1])] as const};
	const lengthLinePx = [toUpright(from), toUpright(to)] as const;
	return {...sizes, lengthLinePx, ...width, outlinePx: outline.map(toUpright)};
}

/** The least symmetry of a body whose two halves are alike (tuned on made-up trays). */
const even = 0.9;
/** Two readings farther apart than this share of the longer are not told as one (our choice). */
const mostApart = 0.06;

/** What holds two readings of one case, the middle of both for its length; undefined when they are far apart. */
export function tellBetween([first, other]: readonly Reading[]): Reading | undefined {
	if (!first || !other) return first;
	const lengthMm = (first.lengthMm + other.lengthMm) / 2;
	if (Math.abs(first.lengthMm - other.lengthMm) > mostApart * Math.max(first.lengthMm, other.lengthMm))
		return undefined;
	const middle = ([x, y]: Point, [otherX, otherY]: Point): Point => [(x + otherX) / 2, (y + otherY) / 2];
	const [[from, to], [otherFrom, otherTo]] = [first.lines.length, other.lines.length];
	return {
		...first,
		lengthMm,
		lengthIntervalMm: [
			Math.min(first.lengthIntervalMm[0], other.lengthIntervalMm[0]),
			Math.max(first.lengthIntervalMm[1], other.lengthIntervalMm[1]),
		],
		lines: {...first.lines, length: [middle(from, otherFrom), middle(to, otherTo)]},
	};
}

/** Paper or table should be the brightest there is. */
function isDark({raster}: Photo): boolean {
	const greens = raster.rgb.filter((_, index) => index % 97 === 1).toSorted();
	return (greens[Math.floor(greens.length * 0.9)] ?? 0) < 60;
}
