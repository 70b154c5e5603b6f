/** What a check of a region looks at, and how it points to a line. */
import {join} from 'node:path';
import type {Written} from '../text/text.ts';
import type {Region} from './region.ts';
import type {Fault} from './yaml.ts';

type Path = readonly (string | number)[];

/** A region read, with the lines of its files and its sentences by language. */
export type Checkable = {
	readonly region: Region;
	readonly keyLine: (path: Path) => number;
	readonly profilesLine: (path: Path) => number;
	/** By language, each message formatted without values. */
	readonly texts: ReadonlyMap<string, Written>;
	/** The line of a message in the region's file of a language, if it stands there. */
	readonly sentenceLine?: (language: string, message: string) => number | undefined;
};

/** What is wrong, and what to do about it. */
export type Remark = {readonly what: string; readonly todo: string};

/** Makes a fault of one taxon from a place in its profile. */
export type At = (path: Path, remark: Remark) => Fault;

/** A fault that stands in key.yaml. */
export function inKey({region, keyLine}: Checkable, path: Path, remark: Remark): Fault {
	return {file: join(region.folder, 'key.yaml'), line: keyLine(path), ...remark};
}

/** A fault that stands in profiles.yaml. */
export function inProfiles({region, profilesLine}: Checkable, path: Path, remark: Remark): Fault {
	return {file: join(region.folder, 'profiles.yaml'), line: profilesLine(path), ...remark};
}

/** Names in a sentence: "a", "b". */
export function quoted(names: Iterable<string>): string {
	return [...names].map(name => `"${name}"`).join(', ');
}
