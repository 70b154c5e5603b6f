/** What lies and stands around the cases: the table, a card or a coin, sand, weed and clutter. */
import {between, byShare, type Pick} from '../../../src/key/random.ts';
import {makeCard} from './card.ts';
import type {Laid} from './case.ts';
import {makeClutter, makeSand, makeWeed} from './clutter.ts';
import type {GroundName} from './grounds.ts';
import {besideCase} from './lay-out.ts';
import {makeOdd, type OddName} from './odd-things.ts';
import type {Light, Thing} from './scene.ts';
import type {Wish} from './wish.ts';

type At = readonly [number, number];

/** Things below and above the cases, and points that must be seen. */
export type Extras = {
	readonly below: readonly Thing[];
	readonly above: readonly Thing[];
	readonly points: readonly At[];
};

/** A card or a coin beside the case, sand upon it, and what lies there in its place. */
export function layExtras(
	wish: Wish,
	{laid, light}: {laid: readonly Laid[]; light: Light},
	pick: Pick,
): Extras {
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
export function clutterRound(
	{level}: Wish,
	{points, light, isOnPaper}: Surroundings,
	pick: Pick,
): readonly Thing[] {
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

/** A table of the kinds that go with the reference and the level. */
export function groundFor({level, reference}: Wish, pick: Pick): GroundName {
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
