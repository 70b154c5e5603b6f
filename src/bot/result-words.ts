/** The result of a survey day in words, as a chart and as a map. */
import type {CallPicture} from '../store/picture.ts';
import type {Day} from '../survey/day.ts';
import type {Result} from '../survey/result.ts';
import type {Say} from '../text/text.ts';
import {whenValues} from './day-words.ts';
import {type House, shelfOf} from './desk.ts';

/** Who a result is put in words for. */
export type ResultReader = {readonly house: House; readonly say: Say; readonly region: string};
type ToldResult = {readonly day: Day; readonly result: Result};

/** So many kinds fit a phone. */
const mostKinds = 12;

/** What was found, kind by kind, by how many people in how long. */
export function resultText({day, result}: ToldResult, reader: ResultReader): string {
	const {say} = reader;
	const {heads, minutes, finders, finds, cases} = result;
	const lines = barsOf(result, reader).slice(0, mostKinds);
	const hours = Math.round(minutes / 6) / 10;
	const values = {...whenValues(day, say), title: day.title, place: day.place};
	return [
		say.say('day-result', values),
		say.say('day-result-count', {cases, finds, finders}),
		...lines.map(({label, count}) => `• ${say.say('tally-line', {label, count})}`),
		...(heads > 0 ? [say.say('day-result-people', {heads, hours, together: Math.round(hours * heads)})] : []),
		...(result.unchecked > 0 ? [say.say('tally-unchecked')] : []),
	].join('\n');
}

/** The cases of each kind as bars; nothing where nothing was found. */
export function resultBars({day, result}: ToldResult, reader: ResultReader): CallPicture | undefined {
	const bars = barsOf(result, reader);
	if (bars.length === 0) return undefined;
	const {say, region} = reader;
	return {kind: 'bars', region, language: say.language, heading: headingOf(day, say), bars: [...bars]};
}

/** Where it was found; nothing where no place is on a map. */
export function resultMap({day, result}: ToldResult, {say, region}: ResultReader): CallPicture | undefined {
	if (result.places.length === 0) return undefined;
	return {
		kind: 'map',
		region,
		language: say.language,
		heading: headingOf(day, say),
		places: [...result.places],
	};
}

type Bar = Extract<CallPicture, {kind: 'bars'}>['bars'][number];

function barsOf(result: Result, {house, say, region: own}: ResultReader): readonly Bar[] {
	const kinds = result.kinds.map(({region, taxon, cases}): Bar => {
		const {flow, texts} = shelfOf(house, region);
		const words = texts.in(say.language);
		const scientificName = flow.region.profiles.taxa[taxon]?.scientificName;
		return {
			label: words.has(`taxon-${taxon}`) ? words.say(`taxon-${taxon}`) : (scientificName ?? taxon),
			count: cases,
			...(region === own ? {taxon} : {}),
			...(scientificName === undefined ? {} : {scientificName}),
		};
	});
	const apart: readonly Bar[] = [
		{label: say.say('tally-several'), count: result.oneOfSeveral},
		{label: say.say('tally-unnamed'), count: result.unnamed},
		{label: say.say('tally-alive'), count: result.leftAlive},
	];
	return [...kinds, ...apart].filter(({count}) => count > 0);
}

function headingOf(day: Day, say: Say): string {
	return say.say('day-result-heading', {title: day.title, ...whenValues(day, say)});
}
