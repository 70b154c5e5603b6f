/** A tally in words, and as the picture that goes with it. */
import type {Tally} from '../record/tally.ts';
import type {CallPicture} from '../store/picture.ts';
import {type Desk, readerAt, regionOf, shelfOf} from './desk.ts';

/** A tally with what stands round it. */
export type ToldTally = {
	readonly tally: Tally;
	/** Over the words and over the picture. */
	readonly heading: string;
	/** Names that people chose to be called by in public, and how many others chose none. */
	readonly sharers: {readonly names: readonly string[]; readonly nameless: number};
	/** Finds that were begun and are not saved yet. */
	readonly unfinished: number;
};

/** So many names fit a phone. */
const mostNames = 8;

/** The words of a tally. */
export function tallyText(desk: Desk, told: ToldTally): string {
	const {say} = readerAt(desk);
	const {tally, heading, unfinished} = told;
	const lines = barsOf(desk, tally).map(({label, count}) => `• ${say.say('tally-line', {label, count})}`);
	return [
		heading,
		say.say('tally-count', {cases: tally.cases, finds: tally.finds}),
		...lines,
		...(unfinished > 0 ? [say.say('tally-unfinished', {count: unfinished})] : []),
		...(tally.finds > 0 ? [say.say('tally-shared', {names: sharersText(desk, told.sharers)})] : []),
		...(tally.unchecked > 0 ? [say.say('tally-unchecked')] : []),
	].join('\n');
}

/** The picture of a tally; nothing where nothing was counted. */
export function tallyPicture(desk: Desk, {tally, heading}: ToldTally): CallPicture | undefined {
	const bars = barsOf(desk, tally);
	if (bars.length === 0) return undefined;
	const {language} = readerAt(desk).say;
	return {kind: 'bars', region: regionOf(desk), language, heading, bars: [...bars]};
}

type Bar = Extract<CallPicture, {kind: 'bars'}>['bars'][number];

/** Kinds, most first, and below them what is not sure. */
function barsOf(desk: Desk, tally: Tally): readonly Bar[] {
	const {say} = readerAt(desk);
	const kinds = tally.kinds.map(({region, taxon, cases}): Bar => {
		const {flow, texts} = shelfOf(desk.house, region);
		const own = texts.in(desk.person.language);
		const scientificName = flow.region.profiles.taxa[taxon]?.scientificName;
		return {
			label: own.has(`taxon-${taxon}`) ? own.say(`taxon-${taxon}`) : (scientificName ?? taxon),
			count: cases,
			// The picture draws from one region; kinds of another stand there by their names alone.
			...(region === regionOf(desk) ? {taxon} : {}),
			...(scientificName === undefined ? {} : {scientificName}),
		};
	});
	const apart: readonly Bar[] = [
		{label: say.say('tally-several'), count: tally.oneOfSeveral},
		{label: say.say('tally-unnamed'), count: tally.unnamed},
		{label: say.say('tally-alive'), count: tally.leftAlive},
	];
	return [...kinds, ...apart.filter(({count}) => count > 0)];
}

function sharersText(desk: Desk, {names, nameless}: ToldTally['sharers']): string {
	const {say} = readerAt(desk);
	const shown = names.slice(0, mostNames);
	const others = nameless + names.length - shown.length;
	const listed = [...shown, ...(others > 0 ? [say.say('tally-someone', {count: others})] : [])];
	return new Intl.ListFormat(say.language, {type: 'conjunction'}).format(listed);
}
