/** The regions of a project, read and checked for the commands of key authors. */
import {existsSync, readdirSync} from 'node:fs';
import {join} from 'node:path';
import {checkFolder} from '../key/check.ts';
import {type Region, readRegion} from '../key/region.ts';
import type {Fault} from '../key/yaml.ts';
import {readTexts, type Say, type Texts} from '../text/text.ts';
import {checkSentenceFiles} from './sentence-files.ts';

/** A region without a fault and its sentences, English ones at hand, the shared ones among them; else its faults. */
export type RegionRead =
	| {readonly kind: 'read'; readonly region: Region; readonly texts: Texts; readonly say: Say}
	| {readonly kind: 'faults'; readonly faults: readonly Fault[]};

/** The ids of all regions of a project. */
export function regionsIn(root: string): readonly string[] {
	return readdirSync(flowsOf(root), {withFileTypes: true})
		.filter(entry => entry.isDirectory())
		.map(({name}) => name)
		.sort();
}

/** The folder of a project that holds the regions. */
export function flowsOf(root: string): string {
	return join(root, 'flows');
}

/** Folders with sentences that every region shares, in the order they are read. */
export function sharedFolders(root: string): readonly string[] {
	return [join(root, 'src', 'text'), flowsOf(root)].filter(existsSync);
}

/** Reads and checks one region; throws an Error when the project has none of that name. */
export function readChecked(root: string, regionId: string): RegionRead {
	const known = regionsIn(root);
	if (!known.includes(regionId)) {
		const names = known.map(name => `"${name}"`).join(', ');
		throw new Error(`Expected a region under flows/, one of ${names}; got "${regionId}"`);
	}
	const folder = join(flowsOf(root), regionId);
	const shared = sharedFolders(root);
	const faults = [...checkFiles(folder), ...checkSentenceFiles([...shared, folder])];
	if (faults.length > 0) return {kind: 'faults', faults};
	const found = checkFolder(flowsOf(root), regionId, readTexts([folder]));
	if (found.length > 0) return {kind: 'faults', faults: found};
	const texts = readTexts([...shared, folder]);
	return {kind: 'read', region: readRegion(flowsOf(root), regionId), texts, say: texts.in('en')};
}

function checkFiles(folder: string): readonly Fault[] {
	return ['key.yaml', 'profiles.yaml']
		.map(name => join(folder, name))
		.filter(file => !existsSync(file))
		.map(file => ({
			file,
			line: 1,
			what: 'There is no such file.',
			todo: 'Write it as in another region.',
		}));
}
