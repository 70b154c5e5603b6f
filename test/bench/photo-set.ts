/** The sets of made-up photos, by name and seed; drawn once into a folder and kept there. */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {z} from 'zod';
import {inventPhoto, type Wish} from '../support/photos/invent.ts';
import {shoot} from '../support/photos/shoot.ts';

/** One photo of a set. */
export type Shot = {readonly set: string; readonly file: string; readonly truth: Known};

const knownSchema = z.object({
	wish: z.object({
		seed: z.number(),
		reference: z.string(),
		level: z.string(),
		subject: z.string().optional(),
	}),
	cases: z.array(
		z.object({
			lengthMm: z.number(),
			widthMm: z.number(),
			heightMm: z.number(),
			atMm: z.tuple([z.number(), z.number()]),
		}),
	),
	tilt: z.number(),
});

/** What is known of a photo. */
export type Known = z.infer<typeof knownSchema>;

type Set = {readonly name: string; readonly count: number; readonly wish: Omit<Wish, 'seed'>};

const references = ['a4', 'sheet', 'card'] as const;
const levels = ['clean', 'normal', 'hard'] as const;

/** Every set: three references at three levels, trays, and traps. */
export function photoSets(perSet: number): readonly Set[] {
	const few = Math.max(2, Math.round(perSet / 6));
	const trap = (name: string, wish: Omit<Wish, 'seed' | 'level'>) => ({
		name: `trap ${name}`,
		count: few,
		wish: {level: 'clean', ...wish} as const,
	});
	return [
		...references.flatMap(reference =>
			levels.map(level => ({
				name: `${reference} ${level}`,
				count: level === 'hard' ? Math.ceil(perSet / 2) : perSet,
				wish: {reference, level} as const,
			})),
		),
		{name: 'tray clean', count: few, wish: {reference: 'sheet', level: 'clean', subject: 'tray'}},
		{name: 'tray normal', count: few, wish: {reference: 'a4', level: 'normal', subject: 'tray'}},
		trap('no reference', {reference: 'none'}),
		trap('coin', {reference: 'coin'}),
		trap('letter', {reference: 'letter'}),
		trap('wrong card', {reference: 'card', cardScale: 0.93}),
		trap('cut sheet', {reference: 'a4', isCut: true}),
		trap('overlap', {reference: 'a4', subject: 'overlap'}),
		trap('dark', {reference: 'a4', isDark: true}),
		trap('blur', {reference: 'a4', blurPx: 9}),
		trap('no case', {reference: 'a4', subject: 'nothing'}),
		trap('stone', {reference: 'a4', subject: 'stone'}),
		trap('print 94 %', {reference: 'sheet', printScale: 0.94}),
		trap('print 103 %', {reference: 'sheet', printScale: 1.03}),
	];
}

/** Draws what is not there yet and gives the photos of the sets whose name begins with `only`. */
export async function* shotsOf(
	folder: string,
	wanted: {perSet: number; from: number; only: string},
): AsyncGenerator<Shot> {
	mkdirSync(folder, {recursive: true});
	for (const [order, {name, count, wish}] of photoSets(wanted.perSet).entries()) {
		if (!name.startsWith(wanted.only)) continue;
		for (let index = 0; index < count; index += 1) {
			const seed = wanted.from + order * 1000 + index;
			yield {set: name, ...(await drawOnce(folder, {...wish, seed}))};
		}
	}
}

async function drawOnce(folder: string, wish: Wish): Promise<Omit<Shot, 'set'>> {
	const stem = join(folder, `${wish.reference}-${wish.seed}`);
	if (!existsSync(`${stem}.json`)) {
		const {scene, cases, pick} = await inventPhoto(wish);
		writeFileSync(`${stem}.jpg`, await shoot(scene, pick));
		writeFileSync(`${stem}.json`, JSON.stringify({wish, cases, tilt: scene.stand.tilt}));
	}
	return {file: `${stem}.jpg`, truth: knownSchema.parse(JSON.parse(readFileSync(`${stem}.json`, 'utf8')))};
}
