/** A made-up region of two made-up animals, in which faults are seeded. */

import {mkdirSync, writeFileSync} from 'node:fs';
import {basename, join} from 'node:path';
import {checkFolder} from '../../src/key/check.ts';
import {readTexts} from '../../src/text/text.ts';
import {ownFolder} from '../support/folder.ts';

const keyFile = `begins: spots
possibleMm: {length: [20, 300], width: [10, 180]}
characters:
  spots: {needs: [surface], states: [many, few], error: 0.1, draws: {many: {surface: {net: true}}, few: {surface: {net: false}}}}
  rim: {needs: [], states: [sharp, dull], error: 0.1, draws: {sharp: {rim: {hairs: true}}, dull: {rim: {hairs: false}}}}
questions:
  spots:
    look: spots
    options: {many: {leads: size}, few: {leads: rim}}
  size:
    measure: length
    bands:
      - {belowMm: 50, leads: testa-minor}
      - {fromMm: 50, leads: testa-major}
  rim:
    look: rim
    options: {sharp: {leads: testa-minor}, dull: {leads: testa-major}}
moved: []
howCommon: {common: 5}
somethingElse: 0.02
`;
const profilesFile = `sources:
  made-up: {citation: Nobody 2000, fromMemory: true}
taxa:
  testa-minor:
    scientificName: Testa minor
    authorship: Nobody, 2000
    family: Testidae
    rank: species
    howCommon: common
    lengthMm: {range: [30, 45], mean: 40, source: made-up}
    widthMm: {range: [15, 20], source: made-up}
    states:
      spots: {many: 0.9, few: 0.1}
      rim: {sharp: 0.8, dull: 0.2}
    described: {source: made-up}
    fact: {source: made-up}
    lookalikes: [testa-major]
    shape: {source: made-up, page: '1'}
  testa-major:
    scientificName: Testa major
    authorship: Nobody, 2000
    family: Testidae
    rank: species
    leaveIt: true
    howCommon: common
    lengthMm: {range: [60, 90], source: made-up}
    widthMm: {range: [25, 40], source: made-up}
    states:
      spots: {many: 0.2, few: 0.8}
      rim: {sharp: 0.1, dull: 0.9}
    described: {source: made-up}
    fact: {source: made-up}
    shape: {basis: made up}
`;
const textFile = `region-name = Testland
region-safety = Take care.
region-emergency = Call for help.
region-tides = Look at the tables.
question-spots = Are there many spots?
option-spots-many = Many
option-spots-few = Few
seen-spots-many = many spots
seen-spots-few = few spots
why-spots = Spots differ.
question-rim = Is the rim sharp?
option-rim-sharp = Sharp
option-rim-dull = Dull
seen-rim-sharp = a sharp rim
seen-rim-dull = a dull rim
why-rim = Rims differ.
taxon-testa-minor = Small tester
fact-testa-minor = It is small.
taxon-testa-major = Large tester
fact-testa-major = It is large.
leave-testa-major = Leave it there.
name-spots = Spots
name-rim = Rim
`;

const files = {'key.yaml': keyFile, 'profiles.yaml': profilesFile, 'en.ftl': textFile};
type File = keyof typeof files;
/** A change to one file of the made-up region. */
export type Seed = {readonly in: File; readonly find: string; readonly put: string};

/** The faults of the made-up region with these changes, as `file:line: what`. */
export function faultsOf(seeds: readonly Seed[]): readonly string[] {
	const folder = ownFolder('region');
	mkdirSync(join(folder, 'testland'));
	for (const [name, whole] of Object.entries(files)) {
		const seeded = seeds
			.filter(seed => seed.in === name)
			.reduce((text, {find, put}) => replaced(text, find, put), whole);
		writeFileSync(join(folder, 'testland', name), seeded);
	}
	const texts = readTexts([join(folder, 'testland')]);
	return checkFolder(folder, 'testland', texts).map(
		({file, line, what}) => `${basename(file)}:${line}: ${what}`,
	);
}

function replaced(text: string, find: string, put: string): string {
	if (text.split(find).length !== 2) throw new Error(`Expected "${find}" once in the made-up region`);
	return text.replace(find, put);
}
