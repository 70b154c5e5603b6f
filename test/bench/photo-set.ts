/** The sets of made-up photos, by name and seed; drawn once into a folder and kept there. */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {z} from 'zod';
import type {Made, Maker, SetWish} from './photo-makers.ts';

/** One photo of a set. */
export type Shot = {readonly set: string; readonly file: string; readonly truth: Known};

const point = z.tuple([z.number(), z.number()]);

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
			atMm: point,
			/** The ends in pixels of the upright photo; one maker tells them. */
			lengthLinePx: z.tuple([point, point]).optional(),
		}),
	),
	tilt: z.number(),
});

/** What is known of a photo. */
export type Known = z.infer<typeof knownSchema>;

type Set = {
	readonly name: string;
	readonly count: number;
	/** How its files are told from those of other sets. */
	readonly mark: string;
	readonly make: (seed: number) => Promise<Made>;
};

const references = ['a4', 'sheet', 'card'] as const;
const levels = ['clean', 'normal', 'hard'] as const;

/** Every set that a maker can make: three references at three levels, trays, and traps, its own last. */
export function photoSets(perSet: number, {make, traps}: Maker): readonly Set[] {
	const few = Math.max(2, Math.round(perSet / 6));
	const set = (name: string, count: number, wish: SetWish): Set => ({
		name,
		count,
		mark: wish.reference,
		make: seed => make({...wish, seed}),
	});
	const trap = (name: string, wish: Omit<SetWish, 'level'>) =>
		set(`trap ${name}`, few, {level: 'clean', ...wish});
	return [
		...references.flatMap(reference =>
			levels.map(level =>
				set(`${reference} ${level}`, level === 'hard' ? Math.ceil(perSet / 2) : perSet, {reference, level}),
			),
		),
		set('tray clean', few, {reference: 'sheet', level: 'clean', subject: 'tray'}),
		set('tray normal', few, {reference: 'a4', level: 'normal', subject: 'tray'}),
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
		...traps.map(own => ({
			name: `trap ${own.name}`,
			count: few,
			mark: own.name.replace(' ', '-'),
			make: own.make,
		})),
	];
}

/** Draws what is not there yet and gives the photos of the sets whose name begins with `only`. */
export async function* shotsOf(
	folder: string,
	wanted: {perSet: number; from: number; only: string; by: Maker},
): AsyncGenerator<Shot> {
	mkdirSync(folder, {recursive: true});
	for (const [order, {name, count, mark, make}] of photoSets(wanted.perSet, wanted.by).entries()) {
		if (!name.startsWith(wanted.only)) continue;
		for (let index = 0; index < count; index += 1) {
			const seed = wanted.from + order * 1000 + index;
			yield {
				set: name,
				...(await drawOnce(join(folder, `${wanted.by.stem}${mark}-${seed}`), () => make(seed))),
			};
		}
	}
}

async function drawOnce(stem: string, make: () => Promise<Made>): Promise<Omit<Shot, 'set'>> {
	if (!existsSync(`${stem}.json`)) {
		const {jpeg, wish, cases, tilt} = await make();
		writeFileSync(`${stem}.jpg`, jpeg);
		writeFileSync(`${stem}.json`, JSON.stringify({wish, cases, tilt}));
	}
	return {file: `${stem}.jpg`, truth: knownSchema.parse(JSON.parse(readFileSync(`${stem}.json`, 'utf8')))};
}
