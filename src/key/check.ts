/** The check of a region: everything in its folder that would stop a conversation, by file and line. */
import {existsSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import type {Texts} from '../text/text.ts';
import {checkAreas} from './check-areas.ts';
import {checkIds} from './check-ids.ts';
import {checkProfiles} from './check-profiles.ts';
import {checkQuestions} from './check-questions.ts';
import {checkSentences} from './check-sentences.ts';
import {checkShapes} from './check-shapes.ts';
import {type Checkable, inKey} from './checkable.ts';
import {type RegionRead, tryRegion} from './region.ts';
import type {Fault} from './yaml.ts';

/** Every fault of a region that has been read, in the order of key, profiles, sentences. */
export function checkRegion(checkable: Checkable): readonly Fault[] {
	return [
		...checkPossible(checkable),
		...checkAreas(checkable),
		...checkIds(checkable),
		...checkQuestions(checkable),
		...checkProfiles(checkable),
		...checkShapes(checkable),
		...checkSentences(checkable),
	];
}

/** Every fault of a region's folder; a file that does not fit its schema is reported alone. */
export function checkFolder(folder: string, regionId: string, texts: Texts): readonly Fault[] {
	const tried = tryRegion(folder, regionId);
	return tried.kind === 'faults' ? tried.faults : checkRead(tried.read, texts);
}

/** Every fault of a region as read from its folder, with its sentences. */
export function checkRead({region, keyLine, profilesLine}: RegionRead, texts: Texts): readonly Fault[] {
	return checkRegion({
		region,
		keyLine,
		profilesLine,
		texts: new Map(texts.languages.map(language => [language, texts.written(language)] as const)),
		sentenceLine: (language, message) => sentenceLine(join(region.folder, `${language}.ftl`), message),
	});
}

function checkPossible(checkable: Checkable): readonly Fault[] {
	const {length, width} = checkable.region.key.possibleMm;
	return [
		{name: 'length', range: length},
		{name: 'width', range: width},
	]
		.filter(({range: [low, high]}) => low >= high)
		.map(({name, range: [low, high]}) =>
			inKey(checkable, ['possibleMm', name], {
				what: `The possible ${name} of ${low} to ${high} mm runs backwards.`,
				todo: 'Write the smaller end first.',
			}),
		);
}

function sentenceLine(file: string, message: string): number | undefined {
	if (!existsSync(file)) return undefined;
	const index = readFileSync(file, 'utf8')
		.split('\n')
		.findIndex(line => line.startsWith(`${message} =`));
	return index < 0 ? undefined : index + 1;
}
