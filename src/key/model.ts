/**
 * A model of finds, drawn from a region's own profiles and from the assumptions of `wear.ts`.
 *
 * Suspect published values: the model draws from what the profiles use, which is an envelope of other
 * authors' ranges where a figure is flagged; what stands under `notUsed` is never drawn. So the model
 * proves how well names are found if the profiles are right, and nothing about whether they are.
 */
import {coastShare, type Spot} from './coast.ts';
import {somethingElse} from './evidence.ts';
import {drawSpot} from './model-places.ts';
import {curvesOf, drawSizes, factorsOf, readOff, type Shrunk} from './model-sizes.ts';
import {cantTell, type Observed, type Sized} from './observed.ts';
import {between, byShare, oneOf, type Pick} from './random.ts';
import type {Character, Region} from './region.ts';
import type {Shortening} from './shrink.ts';
import {cantTellShare, placedShare, recordedUncertaintyMm, type Wear, wearLevels} from './wear.ts';

/** A find with the truth that nobody sees, and with what its finder would say. */
export type SimulatedFind = {
	/** A taxon of the region, or something else. */
	readonly taxon: string;
	readonly wear: Wear;
	readonly isDry: boolean;
	readonly lost: readonly string[];
	/** Where it was found, when its finder says so. */
	readonly spot: Spot | undefined;
	readonly trueStates: Readonly<Record<string, string>>;
	readonly trueLengthMm: number;
	readonly trueWidthMm: number;
	/** To every character the answer a person would give, slips among them. */
	readonly seen: Readonly<Record<string, string>>;
	/** Whole millimetres read off a ruler; nothing when it could not be measured. */
	readonly readMm: {readonly length: number; readonly width: number} | undefined;
};

/** Each taxon and something else with its share of all finds, or of those at a place; sums to 1. */
export function sharesOf({key, profiles}: Region, spot?: Spot): readonly (readonly [string, number])[] {
	const weights = Object.entries(profiles.taxa).map(
		([id, taxon]) => [id, (key.howCommon[taxon.howCommon] ?? 0) * coastShare(key, taxon, spot)] as const,
	);
	const total = weights.reduce((sum, [, weight]) => sum + weight, 0);
	return [
		...weights.map(([id, weight]) => [id, (weight / total) * (1 - key.somethingElse)] as const),
		[somethingElse, key.somethingElse],
	];
}

/** The shares of the states of one character; alike where the profile is silent or there is none. */
export function stateShares(
	region: Region,
	taxon: string,
	character: string,
): readonly (readonly [string, number])[] {
	const states = region.key.characters[character]?.states ?? [];
	const shares = region.profiles.taxa[taxon]?.states[character];
	return states.map(state => [state, shares ? (shares[state] ?? 0) : 1 / states.length] as const);
}

/** One find of this level of wear; the same run of chance draws the same find. */
export function drawFind(region: Region, pick: Pick, wear: Wear): SimulatedFind {
	const level = wearLevels[wear];
	const spot = drawSpot(region.key, pick);
	const isPlaced = pick() < placedShare;
	const taxon = byShare(pick, sharesOf(region, spot));
	const characters = Object.entries(region.key.characters);
	const trueStates = Object.fromEntries(
		characters.map(([id]) => [id, byShare(pick, stateShares(region, taxon, id))]),
	);
	const lost = Object.entries(level.lost)
		.filter(([, chance]) => pick() < chance)
		.map(([part]) => part);
	const isDry = pick() < level.dry;
	const sizes = drawSizes(curvesOf(region, taxon), pick);
	const seen = Object.fromEntries(
		characters.map(([id, character]) => [
			id,
			answerTo(character, {state: trueStates[id] ?? cantTell, lost, pick}),
		]),
	);
	const readMm = read(region, {taxon, sizes, shrunk: {isDry, lost}}, pick);
	return {
		...{taxon, wear, isDry, lost, trueStates, seen},
		spot: isPlaced ? spot : undefined,
		trueLengthMm: sizes.length,
		trueWidthMm: sizes.width,
		readMm: pick() < level.unmeasured ? undefined : readMm,
	};
}

/** What the person would answer to everything. */
export function answersOf({seen, readMm, isDry, lost, spot}: SimulatedFind): Observed {
	const dry = isDry ? ['dry' as const] : [];
	const sized = (mm: number, shortBy: readonly Shortening[]): Sized => ({
		kind: shortBy.length > 0 ? 'at-least' : 'exact',
		mm,
		uncertaintyMm: recordedUncertaintyMm,
		...(shortBy.length > 0 ? {shortBy} : {}),
	});
	return {
		seen,
		lost,
		spot,
		length: readMm
			? sized(readMm.length, lost.includes('aprons') ? [...dry, 'aprons'] : dry)
			: {kind: 'unknown'},
		width: readMm ? sized(readMm.width, lost.includes('sides') ? [...dry, 'sides'] : dry) : {kind: 'unknown'},
	};
}

function answerTo(
	{needs, states, error}: Character,
	found: {state: string; lost: readonly string[]; pick: Pick},
): string {
	const {state, lost, pick} = found;
	if (needs.some(part => lost.includes(part)) || pick() < cantTellShare) return cantTell;
	if (pick() >= error) return state;
	return oneOf(
		pick,
		states.filter(other => other !== state),
	);
}

function read(
	region: Region,
	{taxon, sizes, shrunk}: {taxon: string; sizes: {length: number; width: number}; shrunk: Shrunk},
	pick: Pick,
): {length: number; width: number} {
	const factors = factorsOf(region, taxon, shrunk);
	const {possibleMm} = region.key;
	const dry = between(pick, factors.dry);
	return {
		length: readOff(sizes.length * dry * between(pick, factors.length), possibleMm.length, pick),
		width: readOff(sizes.width * dry * between(pick, factors.width), possibleMm.width, pick),
	};
}
