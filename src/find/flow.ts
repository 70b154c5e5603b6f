/** Everything a find needs to go on: a region's key and the questions around it, built once at the start. */
import {join} from 'node:path';
import {type Region, readRegion} from '../key/region.ts';
import {compileKey, type KeyMachine} from '../key/states.ts';
import {type Read, readYaml} from '../key/yaml.ts';
import {type Around, aroundSchema} from './around.ts';
import {type AroundMachine, compileAround} from './machine.ts';

/** A region with the questions around its key, each with its machine, built once. */
export type Flow = {
	readonly region: Region;
	readonly key: KeyMachine;
	readonly around: Around;
	readonly machine: AroundMachine;
};

/** Reads `flows/around.yaml` and one region; throws an Error naming file and line where they do not fit. */
export function readFlow(flowsFolder: string, regionId: string): Flow {
	return flowOf(readRegion(flowsFolder, regionId), readAround(flowsFolder).value);
}

/** Reads the questions around the key, with the lines on which they stand. */
export function readAround(flowsFolder: string): Read<Around> {
	return readYaml(join(flowsFolder, 'around.yaml'), aroundSchema);
}

/** Builds the machines of a region that was read. */
export function flowOf(region: Region, around: Around): Flow {
	return {region, key: compileKey(region), around, machine: compileAround(around)};
}
