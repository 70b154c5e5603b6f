/** A year of records in words, and the pictures that follow. */
import type {Season} from '../record/season.ts';
import type {Total} from '../record/totals.ts';
import type {CallPicture} from '../store/picture.ts';
import {menuButton} from './button.ts';
import {type Desk, postHere, readerAt, regionOf, sayHere, shelfOf} from './desk.ts';
import {escaped} from './words.ts';

/** So many kinds and so many places fit a phone. */
const mostLines = 8;

/** Says the numbers, and has bars, months and a map follow by themselves. */
export async function tellSeason(desk: Desk, season: Season): Promise<void> {
	const {say} = readerAt(desk);
	const {year} = season;
	const before = String(year - 1);
	const keyboard = [[{text: say.say('season-before', {year: before}), data: menuButton('season', before)}]];
	await sayHere(desk, seasonText(desk, season), keyboard);
	for (const picture of picturesOf(desk, season)) {
		const html = escaped(say.say('season-heading', {year: String(year)}));
		await postHere(desk, {kind: 'send', html, keyboard: [], picture, follows: true}, {role: 'say'});
	}
}

function seasonText(desk: Desk, {year, totals, notEggCases}: Season): string {
	const {say} = readerAt(desk);
	if (totals.all.finds === 0) return say.say('season-empty', {year: String(year)});
	const kinds = Object.entries(totals.species).map(([name, total]) => [kindName(desk, name), total] as const);
	const places = Object.entries(totals.places).map(
		([name, total]) => [name === 'not told' ? say.say('season-hidden') : name, total] as const,
	);
	const statuses = Object.entries(totals.statuses).map(
		([status, total]) => [say.say('season-status', {status}), total] as const,
	);
	return [
		say.say('season', {year: String(year), ...totals.all}),
		say.say('season-kinds'),
		...linesOf(desk, kinds),
		say.say('season-places'),
		...linesOf(desk, places),
		say.say('season-statuses'),
		...linesOf(desk, statuses),
		...(notEggCases > 0 ? [say.say('season-rejected', {count: notEggCases})] : []),
	].join('\n');
}

function linesOf(desk: Desk, named: readonly (readonly [string, Total])[]): readonly string[] {
	const {say} = readerAt(desk);
	const sorted = named.toSorted(([, one], [, other]) => other.finds - one.finds);
	const lines = sorted
		.slice(0, mostLines)
		.map(([name, total]) => `• ${say.say('season-line', {name, ...total})}`);
	const rest = sorted.length - lines.length;
	return rest > 0 ? [...lines, say.say('season-more', {count: rest})] : lines;
}

function picturesOf(desk: Desk, {year, totals, months, places, region}: Season): readonly CallPicture[] {
	const {say} = readerAt(desk);
	if (totals.all.finds === 0) return [];
	const of = {region: region ?? regionOf(desk), language: say.language};
	const heading = say.say('season-heading', {year: String(year)});
	const bars = Object.entries(totals.species).flatMap(([name, {cases}]) =>
		cases === 0
			? []
			: [{label: kindName(desk, name), count: cases, ...taxonOf(desk, {name, region: of.region})}],
	);
	return [
		...(bars.length > 0 ? [{kind: 'bars' as const, ...of, heading, bars}] : []),
		{
			kind: 'months',
			...of,
			heading,
			year,
			label: say.say('season-cases'),
			counts: [...months],
		},
		...(places.length > 0 ? [{kind: 'map' as const, ...of, heading, places: [...places]}] : []),
	];
}

/** What a kind is called in everyday words, or its scientific name where it has no other. */
function kindName(desk: Desk, scientificName: string): string {
	const {say} = readerAt(desk);
	if (scientificName === 'none') return say.say('season-unnamed');
	for (const id of desk.house.shelves.keys()) {
		const own = shelfOf(desk.house, id).texts.in(desk.person.language);
		const taxon = idOf(desk, {name: scientificName, region: id});
		if (taxon !== undefined && own.has(`taxon-${taxon}`)) return own.say(`taxon-${taxon}`);
	}
	return scientificName;
}

function taxonOf(
	desk: Desk,
	kind: {readonly name: string; readonly region: string},
): {readonly taxon?: string; readonly scientificName?: string} {
	const taxon = idOf(desk, kind);
	return taxon === undefined ? {} : {taxon, scientificName: kind.name};
}

function idOf(
	desk: Desk,
	{name, region}: {readonly name: string; readonly region: string},
): string | undefined {
	const taxa = Object.entries(shelfOf(desk.house, region).flow.region.profiles.taxa);
	return taxa.find(([, {scientificName}]) => scientificName === name)?.[0];
}
