/** The result as data: names, how sure, what spoke for and against, and what would settle it. */

import type {Length} from '../capsule/length.ts';
import {isUnusual} from '../key/coast.ts';
import type {Sureness} from '../key/conclude.ts';
import {type Ranked, somethingElse, stateShare} from '../key/evidence.ts';
import type {Found} from '../key/follow.ts';
import {cantTell, type Observed, type Sized} from '../key/observed.ts';
import type {Measure, Region, Taxon} from '../key/region.ts';
import {factorOf} from '../key/shrink.ts';
import {spreadOf} from '../key/size-share.ts';
import {lowerBoundOf, narrowedBy} from './facts.ts';
import type {Flow} from './flow.ts';
import type {Standing} from './stand.ts';

/** A character and the state in which it was seen. */
export type Seen = {readonly character: string; readonly state: string};

/** A size against the range of each candidate, in millimetres, and whether that range is from memory. */
export type SizeView = {
	readonly mm: number;
	readonly plusMinusMm: number;
	/** Why it counts as a lower bound; empty when it counts as it is. */
	readonly lowerBound: readonly ('dry' | 'aprons' | 'sides')[];
	/** Of several cases on one photo, of which this is the middle: how many, and from which to which. */
	readonly each?: {readonly count: number; readonly leastMm: number; readonly mostMm: number};
	readonly candidates: readonly {
		readonly taxon: string;
		readonly lowMm: number;
		readonly highMm: number;
		readonly fits: boolean;
		readonly fromMemory: boolean;
	}[];
};

/** A name and how likely it is, in 100. */
export type NameView = {
	readonly taxon: string;
	readonly scientificName: string;
	readonly percent: number;
};

/** Everything a result shows, before any words are put in. */
export type ResultView = {
	readonly sure: Sureness;
	readonly names: readonly NameView[];
	/** Less likely names that are possible still; beside none of ours those that come nearest. */
	readonly also: readonly NameView[];
	/** In 100 for something that no profile holds, where that is worth a word. */
	readonly elsePercent: number | undefined;
	readonly seenFor: readonly Seen[];
	readonly seenAgainst: readonly Seen[];
	readonly length: SizeView | undefined;
	readonly width: SizeView | undefined;
	/** What would tell the first two names apart: a character, `length`, `width`, or `photo` when nothing else is left. */
	readonly settles: string | undefined;
	readonly fact:
		| {
				readonly taxon: string;
				readonly citation: string;
				readonly page: string | undefined;
				readonly fromMemory: boolean;
		  }
		| undefined;
	/** Names that are unusual on this coast. */
	readonly unusual: readonly string[];
	/** Rather photographed than kept. */
	readonly leaveIt: string | undefined;
	/** The finder was not sure that it is an egg case. */
	readonly doubt: boolean;
};

/** A state counts as speaking for a name from this share of its cases on … */
const speaksFor = 0.5;
/** … and against it up to this one. */
const speaksAgainst = 0.2;

/** What the result shows. */
export function viewResult(flow: Flow, standing: Standing, found: Found): ResultView {
	const {region} = flow;
	const {conclusion, observed} = found;
	const best = conclusion.names[0]?.taxon;
	const taxon = best === undefined ? undefined : region.profiles.taxa[best];
	const seen = Object.entries(observed.seen)
		.filter(([, state]) => state !== cantTell)
		.map(([character, state]) => ({character, state}));
	const share = (one: Seen) => (taxon ? stateShare(region, taxon, one) : 0);
	return {
		sure: conclusion.sure,
		names: conclusion.names.map(name => named(region, name)),
		also: conclusion.also.map(name => named(region, name)),
		elsePercent: elsePercent(found),
		seenFor: seen.filter(one => share(one) >= speaksFor),
		seenAgainst: taxon ? seen.filter(one => share(one) <= speaksAgainst) : [],
		length: viewSize(region, standing, found, 'length'),
		width: viewSize(region, standing, found, 'width'),
		settles: conclusion.sure === 'shortlist' ? settling(region, found) : undefined,
		// Among several names a word about one of them would sound like a choice.
		fact: best === undefined || conclusion.sure === 'shortlist' ? undefined : factOf(region, best),
		unusual: conclusion.names.map(({taxon: id}) => id).filter(id => isUnusualAt(region, id, observed)),
		leaveIt: conclusion.names.find(({taxon: id}) => region.profiles.taxa[id]?.leaveIt)?.taxon,
		doubt: standing.facts.doubt,
	};
}

/** What would part the first two names: something not looked at yet, a size not yet exact, else a photo. */
export function settling(region: Region, found: Found): string | undefined {
	const [first, second] = found.conclusion.names.map(({taxon}) => region.profiles.taxa[taxon]);
	if (!first || !second) return undefined;
	const {length, width} = found.observed;
	const gaps = Object.keys(region.key.characters)
		.filter(character => isStillOpen(region, found, character))
		.map(id => ({id, gap: stateGap(region, id, [first, second])}));
	if (length?.kind === 'at-least')
		gaps.push({id: 'length', gap: overlapGap(first.lengthMm, second.lengthMm)});
	if (width === undefined || width.kind === 'at-least') {
		gaps.push({id: 'width', gap: overlapGap(first.widthMm, second.widthMm)});
	}
	const best = gaps.sort((one, other) => other.gap - one.gap)[0];
	return best && best.gap >= speaksAgainst ? best.id : 'photo';
}

/** Neither looked at nor lost; what could not be told once is not asked for again. */
function isStillOpen(region: Region, {observed}: Found, character: string): boolean {
	const needs = region.key.characters[character]?.needs ?? [];
	return observed.seen[character] === undefined && !needs.some(part => observed.lost.includes(part));
}

/** From 0 (seen alike in both) to 1 (never alike). */
function stateGap(region: Region, character: string, [first, second]: readonly [Taxon, Taxon]): number {
	const states = region.key.characters[character]?.states ?? [];
	const share = (taxon: Taxon, state: string) => stateShare(region, taxon, {character, state});
	return states.reduce((sum, state) => sum + Math.abs(share(first, state) - share(second, state)), 0) / 2;
}

/** From 0 (same middle) towards 1 (far apart for their spreads). */
function overlapGap(one: Measure | undefined, other: Measure | undefined): number {
	if (!one || !other) return 0;
	const [first, second] = [spreadOf(one), spreadOf(other)];
	return 1 - Math.exp(-(((first.mean - second.mean) / (first.sd + second.sd)) ** 2));
}

function isUnusualAt({key, profiles}: Region, id: string, {spot}: Observed): boolean {
	const profile = profiles.taxa[id];
	return profile !== undefined && isUnusual(key, profile, spot);
}

function elsePercent({conclusion, ranking}: Found): number | undefined {
	if (!conclusion.elsePossible) return undefined;
	return Math.round((ranking.find(({taxon}) => taxon === somethingElse)?.probability ?? 0) * 100);
}

function named(region: Region, {taxon, probability}: Ranked): NameView {
	const scientificName = region.profiles.taxa[taxon]?.scientificName ?? taxon;
	return {taxon, scientificName, percent: Math.round(probability * 100)};
}

function viewSize(
	region: Region,
	{facts}: Standing,
	found: Found,
	which: 'length' | 'width',
): SizeView | undefined {
	const measured = facts[which];
	const sized = found.observed[which];
	if (measured === undefined || measured === 'unmeasured' || !sized) return undefined;
	const isLowerBound = sized.kind === 'at-least';
	const each = which === 'length' ? facts.each.map(({mm}) => mm) : [];
	return {
		mm: measured.mm,
		plusMinusMm: measured.uncertaintyMm,
		...(each.length > 1
			? {each: {count: each.length, leastMm: Math.min(...each), mostMm: Math.max(...each)}}
			: {}),
		lowerBound: isLowerBound ? (which === 'length' ? lowerBoundOf(facts) : narrowedBy(facts)) : [],
		candidates: found.conclusion.names.flatMap(
			({taxon}) => sizeAgainst(region, taxon, {measured, sized, which}) ?? [],
		),
	};
}

/** A size against the range of a kind; nothing where no range of it is known. */
export function sizeAgainst(
	region: Region,
	taxon: string,
	size: {readonly measured: Length; readonly sized: Sized; readonly which: 'length' | 'width'},
): SizeView['candidates'][number] | undefined {
	const {measured, sized, which} = size;
	const measure = region.profiles.taxa[taxon]?.[which === 'length' ? 'lengthMm' : 'widthMm'];
	if (!measure) return undefined;
	const [lowMm, highMm] = measure.range;
	const isAbove = measured.mm + measured.uncertaintyMm >= lowMm * leastLeft(region, taxon, sized);
	return {
		taxon,
		lowMm,
		highMm,
		fromMemory: isFromMemory(region, measure.source),
		fits: isAbove && measured.mm - measured.uncertaintyMm <= highMm,
	};
}

/** The smallest share of its true size that a case of this kind may show; nothing at all where the reason is not known. */
function leastLeft(region: Region, taxon: string, sized: Sized): number {
	if (sized.kind !== 'at-least') return 1;
	if (!sized.shortBy?.length) return 0;
	const shares = sized.shortBy.map(reason => factorOf(region.profiles.taxa[taxon], reason)[0]);
	return shares.reduce((product, share) => product * share, 1);
}

function factOf(region: Region, taxon: string): ResultView['fact'] {
	const fact = region.profiles.taxa[taxon]?.fact;
	if (!fact) return undefined;
	const citation = region.profiles.sources[fact.source]?.citation ?? fact.source;
	return {taxon, citation, page: fact.page, fromMemory: isFromMemory(region, fact.source)};
}

function isFromMemory({profiles}: Region, source: string): boolean {
	return profiles.sources[source]?.fromMemory ?? false;
}
