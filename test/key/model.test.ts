/** Longer than other tests: one large sample of finds is drawn once and asked about from every side. */
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {covers} from '../../src/key/coast.ts';
import {somethingElse} from '../../src/key/evidence.ts';
import {answersOf, drawFind, type SimulatedFind, sharesOf, stateShares} from '../../src/key/model.ts';
import {curvesOf} from '../../src/key/model-sizes.ts';
import {cantTell} from '../../src/key/observed.ts';
import {seeded} from '../../src/key/random.ts';
import {type Measure, type Region, readRegion} from '../../src/key/region.ts';
import {spreadOf} from '../../src/key/size-share.ts';
import {cantTellShare, type Wear, wearLevels, wears} from '../../src/key/wear.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const taxa = Object.entries(region.profiles.taxa);
const characters = Object.entries(region.key.characters);
const count = 6000;

function draw(wear: Wear, seed: number, from: Region = region): readonly SimulatedFind[] {
	const pick = seeded(seed);
	return Array.from({length: count}, () => drawFind(from, pick, wear));
}

const finds = {intact: draw('intact', 1), worn: draw('worn', 2), broken: draw('broken', 3)};
const all = Object.values(finds).flat();

/** Whether a share drawn lies within four standard errors of the share meant. */
function expectShare(of: readonly boolean[], share: number, what: string): void {
	const drawn = of.filter(Boolean).length / of.length;
	const error = Math.sqrt((share * (1 - share)) / of.length);
	expect(Math.abs(drawn - share), `${what}: ${drawn} for ${share}`).toBeLessThanOrEqual(4 * error + 1e-12);
}

test('the same seed draws the same finds, another seed draws others', () => {
	expect(draw('worn', 5)).toEqual(draw('worn', 5));
	expect(draw('worn', 5)).not.toEqual(draw('worn', 6));
});

test('each taxon and something else come as often as the region says', () => {
	const shares = sharesOf(region);
	expect(shares.reduce((sum, [, share]) => sum + share, 0)).toBeCloseTo(1, 12);
	const nowhere: Region = {...region, key: {...region.key, areas: {}}};
	const pick = seeded(5);
	const drawn = Array.from({length: count}, () => drawFind(nowhere, pick, 'intact'));
	for (const [id, share] of shares) {
		expectShare(
			drawn.map(({taxon}) => taxon === id),
			share,
			id,
		);
	}
});

test('at a place each taxon comes as often as that coast has it, and nine finders of ten say where', () => {
	const placed = all.flatMap(({taxon, spot}) =>
		spot ? [{taxon, spot, shares: sharesOf(region, spot)}] : [],
	);
	for (const [index, [id]] of sharesOf(region).entries()) {
		const mean = placed.reduce((sum, {shares}) => sum + (shares[index]?.[1] ?? 0), 0) / placed.length;
		expectShare(
			placed.map(({taxon}) => taxon === id),
			mean,
			id,
		);
	}
	expect(placed.every(({spot}) => covers(region, spot))).toBe(true);
	expectShare(
		all.map(({spot}) => spot !== undefined),
		0.9,
		'placed',
	);
});

test('the true states come as often as the profiles say', () => {
	for (const [id, taxon] of taxa) {
		const own = all.filter(find => find.taxon === id);
		for (const [character, shares] of Object.entries(taxon.states)) {
			for (const [state, share] of Object.entries(shares)) {
				expectShare(
					own.map(({trueStates}) => trueStates[character] === state),
					share,
					`${id}, ${character} ${state}`,
				);
			}
		}
	}
});

test('a taxon that is silent on a character, and something else, have all its states alike', () => {
	const [first] = taxa;
	if (!first) throw new Error('Expected a taxon');
	const [id, taxon] = first;
	const silent: Region = {
		...region,
		profiles: {...region.profiles, taxa: {...region.profiles.taxa, [id]: {...taxon, states: {}}}},
	};
	for (const [character, {states}] of characters) {
		const alike = states.map(state => [state, 1 / states.length]);
		expect(stateShares(silent, id, character)).toEqual(alike);
		expect(stateShares(region, somethingElse, character)).toEqual(alike);
	}
});

test('true sizes lie inside the published range widened by a tenth of it, around the published middle', () => {
	for (const [id, {lengthMm, widthMm}] of taxa) {
		const own = all.filter(({taxon}) => taxon === id);
		for (const [measure, sizes] of [
			[lengthMm, own.map(find => find.trueLengthMm)],
			[widthMm, own.map(find => find.trueWidthMm)],
		] as const) {
			if (!measure) throw new Error(`Expected ${id} to have its sizes published`);
			const [low, high] = measure.range;
			const beyond = (high - low) / 10;
			expect(Math.min(...sizes)).toBeGreaterThanOrEqual(low - beyond);
			expect(Math.max(...sizes)).toBeLessThanOrEqual(high + beyond);
			const mean = sizes.reduce((sum, mm) => sum + mm, 0) / sizes.length;
			// Cutting off both ends moves the middle by less than half a spread.
			const {mean: published, sd} = spreadOf(measure);
			expect(Math.abs(mean - published), id).toBeLessThan(sd / 2 + (4 * sd) / Math.sqrt(sizes.length));
		}
	}
});

test('length and width of one case go together, those of something else do not', () => {
	const [commonest] = sharesOf(region).toSorted(([, one], [, other]) => other - one)[0] ?? [''];
	const own = all.filter(({taxon}) => taxon === commonest);
	// Cut off ends lower the correlation of 0.5 a little.
	expect(correlation(own)).toBeGreaterThan(0.38);
	expect(correlation(own)).toBeLessThan(0.55);
	expect(curvesOf(region, somethingElse).correlation).toBe(0);
	const others = all.filter(({taxon}) => taxon === somethingElse);
	expect(Math.abs(correlation(others))).toBeLessThan(4 / Math.sqrt(others.length));
});

function correlation(own: readonly SimulatedFind[]): number {
	const mean = (of: (find: SimulatedFind) => number) =>
		own.reduce((sum, find) => sum + of(find), 0) / own.length;
	const [length, width] = [mean(find => find.trueLengthMm), mean(find => find.trueWidthMm)];
	const together = mean(find => (find.trueLengthMm - length) * (find.trueWidthMm - width));
	const alone = [
		mean(find => (find.trueLengthMm - length) ** 2),
		mean(find => (find.trueWidthMm - width) ** 2),
	];
	return together / Math.sqrt((alone[0] ?? 0) * (alone[1] ?? 0));
}

test('something else has any possible size', () => {
	const [low, high] = region.key.possibleMm.length;
	const lengths = all.filter(({taxon}) => taxon === somethingElse).map(({trueLengthMm}) => trueLengthMm);
	expect(Math.min(...lengths)).toBeGreaterThanOrEqual(low);
	expect(Math.max(...lengths)).toBeLessThanOrEqual(high);
	expectShare(
		lengths.map(mm => mm < (low + high) / 2),
		0.5,
		'the lower half',
	);
});

test.each(wears)('parts are lost, cases measured dry and not measured as often as %s says', wear => {
	const {lost, dry, unmeasured} = wearLevels[wear];
	for (const [part, share] of Object.entries(lost)) {
		expectShare(
			finds[wear].map(find => find.lost.includes(part)),
			share,
			part,
		);
	}
	expectShare(
		finds[wear].map(({isDry}) => isDry),
		dry,
		'dry',
	);
	expectShare(
		finds[wear].map(({readMm}) => readMm === undefined),
		unmeasured,
		'not measured',
	);
});

test('the levels of wear make up all finds, and an intact find has lost nothing', () => {
	expect(wears.reduce((sum, wear) => sum + wearLevels[wear].share, 0)).toBeCloseTo(1, 12);
	expect(wearLevels.intact.lost).toEqual({horns: 0, surface: 0, aprons: 0, sides: 0});
});

test('what needs a lost part cannot be told; the rest cannot be told now and then, and slips come as the key says', () => {
	for (const [id, {needs, error}] of characters) {
		const isHidden = ({lost}: SimulatedFind) => needs.some(part => lost.includes(part));
		expect(all.filter(find => isHidden(find) && find.seen[id] !== cantTell)).toEqual([]);
		const shown = all.filter(find => !isHidden(find));
		expectShare(
			shown.map(({seen}) => seen[id] === cantTell),
			cantTellShare,
			`${id} cannot be told`,
		);
		const told = shown.filter(({seen}) => seen[id] !== cantTell);
		expectShare(
			told.map(({seen, trueStates}) => seen[id] !== trueStates[id]),
			error,
			`${id} slips`,
		);
	}
});

test('a case read soaked and whole is read within the error of the ruler', () => {
	const errors = finds.intact.flatMap(({readMm, trueLengthMm}) =>
		readMm ? [(readMm.length - trueLengthMm) / Math.hypot(1.5, 0.02 * trueLengthMm)] : [],
	);
	const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
	const square = errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length;
	expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(errors.length));
	// Rounding to whole millimetres adds at most 1/12 over 1.5² to the square.
	expect(square).toBeGreaterThan(1 - 4 * Math.sqrt(2 / errors.length));
	expect(square).toBeLessThan(1 + 1 / 12 / 2.25 + 4 * Math.sqrt(2 / errors.length));
});

test('a case with large aprons that lost one or both reads a tenth to two fifths shorter, others at most a tenth', () => {
	const soaked = all.filter(({isDry, lost}) => !isDry && lost.includes('aprons'));
	for (const {taxon, trueLengthMm, readMm} of soaked) {
		if (!readMm || taxon === somethingElse) continue;
		const [from, to] = region.profiles.taxa[taxon]?.largeAprons ? [0.6, 0.9] : [0.9, 1];
		const error = 6 * Math.hypot(1.5, 0.02 * trueLengthMm) + 0.5;
		expect(readMm.length).toBeGreaterThan(trueLengthMm * from - error);
		expect(readMm.length).toBeLessThan(trueLengthMm * to + error);
	}
	expect(soaked.some(({taxon}) => region.profiles.taxa[taxon]?.largeAprons)).toBe(true);
	expect(soaked.some(({taxon}) => !region.profiles.taxa[taxon]?.largeAprons)).toBe(true);
});

test('answers hold what was read, as a lower bound with its reasons where a case was dry or had lost what is measured', () => {
	for (const find of all.slice(0, 12_000)) {
		const {length, width, seen, lost} = answersOf(find);
		expect({seen, lost}).toEqual({seen: find.seen, lost: find.lost});
		if (!find.readMm) {
			expect([length, width]).toEqual([{kind: 'unknown'}, {kind: 'unknown'}]);
			continue;
		}
		const counts = (part: string) => {
			const shortBy = [...(find.isDry ? ['dry'] : []), ...(find.lost.includes(part) ? [part] : [])];
			return shortBy.length > 0 ? {kind: 'at-least', shortBy} : {kind: 'exact'};
		};
		expect(length).toEqual({...counts('aprons'), mm: find.readMm.length, uncertaintyMm: 1});
		expect(width).toEqual({...counts('sides'), mm: find.readMm.width, uncertaintyMm: 1});
	}
});

test('whole millimetres are read, and none that the bot would refuse', () => {
	const [low, high] = region.key.possibleMm.length;
	const lengths = all.flatMap(({readMm}) => (readMm ? [readMm.length] : []));
	expect(lengths.length).toBeGreaterThan(count);
	expect(lengths.filter(mm => !Number.isInteger(mm) || mm < low || mm > high)).toEqual([]);
});

test('a single published size is drawn within two of its judged spreads', () => {
	const [first] = taxa;
	if (!first) throw new Error('Expected a taxon in the region');
	const [id, taxon] = first;
	const lengthMm = {range: [92, 92], sd: 4, source: 'nobody', basis: 'judged'} satisfies Measure;
	const single = {...region, profiles: {...region.profiles, taxa: {[id]: {...taxon, lengthMm}}}};
	const lengths = draw('intact', 9, single)
		.filter(find => find.taxon === id)
		.map(({trueLengthMm}) => trueLengthMm);
	expect(Math.min(...lengths)).toBeGreaterThanOrEqual(84);
	expect(Math.max(...lengths)).toBeLessThanOrEqual(100);
	expect(Math.max(...lengths) - Math.min(...lengths)).toBeGreaterThan(12);
});
