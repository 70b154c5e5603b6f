import {join} from 'node:path';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {arrowsOf} from '../../src/key/arrows.ts';
import {cantTell, nothingObserved, type Observed} from '../../src/key/observed.ts';
import {type Key, readRegion} from '../../src/key/region.ts';
import {type Specimen, typicalSpecimens, walkKey} from '../../src/key/specimen.ts';
import {beginKey, compileKey, type KeySnapshot, stepKey, wantedBy} from '../../src/key/states.ts';

const region = readRegion(join(import.meta.dirname, '../../flows'), 'british-isles');
const machine = compileKey(region);
const {key, profiles} = region;
const questions = Object.entries(key.questions);
const unknown = {kind: 'unknown'} as const;

/** How a walk ended: what was asked in order, and the taxa reached. */
type Walked = {readonly asked: readonly string[]; readonly leaves: readonly string[]};

/** Walks the machine to its end; `answer` picks a state for a character. */
function walk(observed: Observed, answer: (character: string) => string, width = observed.width): Walked {
	const asked: string[] = [];
	let snapshot: KeySnapshot = beginKey(machine, {...observed, width: undefined});
	// One step more than there are questions shows a walk that does not end.
	for (let step = 0; step <= questions.length; step++) {
		const wanted = wantedBy(region, snapshot);
		if (wanted.kind === 'done') return {asked, leaves: snapshot.context.leaves};
		asked.push(wanted.kind === 'look' ? wanted.character : 'width');
		snapshot =
			wanted.kind === 'look'
				? stepKey(machine, snapshot, {type: 'seen', state: answer(wanted.character)})
				: stepKey(machine, snapshot, {type: 'measured', sized: width ?? unknown});
	}
	throw new Error(`Expected an end after ${questions.length} questions; asked ${asked.join(', ')}`);
}

function exactly(mm: number | undefined) {
	return mm === undefined ? unknown : ({kind: 'exact', mm, uncertaintyMm: 0} as const);
}

function walkSpecimen({seen, lengthMm, widthMm, lost = []}: Specimen): Walked {
	const observed = {...nothingObserved, length: exactly(lengthMm), width: exactly(widthMm), lost};
	return walk(observed, character => seen[character] ?? cantTell);
}

const observedArbitrary = fc.record({
	answers: fc.record(
		Object.fromEntries(
			Object.entries(key.characters).map(([id, {states}]) => [id, fc.constantFrom(...states, cantTell)]),
		),
	),
	lost: fc.subarray(['horns', 'sides', 'surface', 'aprons']),
	length: fc.oneof(fc.constant(unknown), sizedWithin(key.possibleMm.length)),
	width: fc.oneof(fc.constant(unknown), sizedWithin(key.possibleMm.width)),
});

function sizedWithin([low, high]: readonly [number, number]) {
	return fc.record({
		kind: fc.constantFrom('exact' as const, 'at-least' as const),
		mm: fc.double({min: low, max: high, noNaN: true}),
		uncertaintyMm: fc.double({min: 0, max: 10, noNaN: true}),
	});
}

test('the machine has one state for each question and each taxon, and three of its own', () => {
	const expected = [...Object.keys(key.questions), ...Object.keys(profiles.taxa)];
	expect(Object.keys(machine.states).sort()).toEqual([...expected, 'waiting', 'crossing', 'done'].sort());
});

test.each(questions)('the state of "%s" has the arrows that the key writes', (id, question) => {
	const arrows = machine.states[id]?.always ?? [];
	const targets = arrows.flatMap(({target}) => target?.map(state => state.key) ?? []);
	const written = arrowsOf(id, question).map(({leads}) => leads);
	// A look question has one more arrow, for what cannot be told; it begins with the first way.
	expect(targets).toEqual('look' in question ? [...written, written[0]] : written);
});

test.each(Object.entries(profiles.taxa))(
	'typical specimens of %s come to the same taxa by the machine and by a plain walk',
	(_, taxon) => {
		for (const specimen of Object.values(typicalSpecimens(taxon))) {
			for (const lost of [[], ['horns'], ['sides', 'surface'], ['aprons']]) {
				const {leaves} = walkKey(key, {...specimen, lost});
				const walked = walkSpecimen({...specimen, lost});
				expect([...walked.leaves].sort()).toEqual([...leaves].sort());
				expect(leaves.length).toBeGreaterThan(0);
			}
		}
	},
);

test('any exact specimen comes to the same taxa by the machine and by a plain walk', () => {
	fc.assert(
		fc.property(
			observedArbitrary,
			fc.double({min: 20, max: 300, noNaN: true}),
			fc.double({min: 10, max: 180, noNaN: true}),
			({answers, lost}, lengthMm, widthMm) => {
				const seen = Object.fromEntries(
					Object.entries(answers).filter(([, state]) => state !== undefined && state !== cantTell),
				);
				const specimen = {seen, lengthMm, widthMm, lost};
				expect([...walkSpecimen(specimen).leaves].sort()).toEqual([...walkKey(key, specimen).leaves].sort());
			},
		),
		{numRuns: 150},
	);
});

test.each(questions.filter(([, question]) => 'look' in question))(
	'where nothing can be told, every way out of "%s" stays open',
	(id, question) => {
		const {leaves} = walk({...nothingObserved, length: unknown, width: unknown}, () => cantTell);
		for (const {leads} of arrowsOf(id, question)) {
			for (const leaf of leavesBelow(key, leads)) expect(leaves).toContain(leaf);
		}
	},
);

test('one character that cannot be told keeps the ways on both sides open', () => {
	const seen = {outline: 'broad', keel: 'blade', 'back-horns': 'upturned'};
	const {leaves} = walkSpecimen({seen, lengthMm: 72});
	expect(leaves).toEqual(['raja-clavata', 'raja-microocellata']);
});

test.each([
	[66.5, ['net', 'keel']],
	[60, ['net']],
	[75, ['keel']],
])('a broad case of %s mm, give or take one, is asked for %j', (mm, expected) => {
	const length = {kind: 'exact', mm, uncertaintyMm: 1} as const;
	const {asked} = walk({...nothingObserved, length}, character =>
		character === 'outline' ? 'broad' : cantTell,
	);
	const firstOfEachBand = asked.filter(character => ['net', 'keel', 'coat'].includes(character));
	expect(firstOfEachBand).toEqual(expect.arrayContaining(expected));
	expect(firstOfEachBand.includes('coat')).toBe(false);
	// Below 67 mm the keel is asked about too, once the net has been looked at.
	expect(asked.includes('net')).toBe(expected.includes('net'));
});

test('a length that reaches over a border comes to the taxa of both sides', () => {
	const answers = {outline: 'slim', corners: 'strings'} as const;
	const leavesAt = (mm: number) =>
		walk(
			{...nothingObserved, length: {kind: 'exact', mm, uncertaintyMm: 1}},
			character => ({...answers})[character === 'outline' ? 'outline' : 'corners'],
		).leaves;
	expect(leavesAt(70)).toEqual(['scyliorhinus-canicula']);
	expect(leavesAt(78)).toEqual(['scyliorhinus-canicula', 'scyliorhinus-stellaris']);
	expect(leavesAt(90)).toEqual(['scyliorhinus-stellaris']);
});

test('a lower bound leaves every larger size open', () => {
	const length = {kind: 'at-least', mm: 70, uncertaintyMm: 1} as const;
	const {leaves} = walk({...nothingObserved, length}, character =>
		character === 'outline' ? 'slim' : 'strings',
	);
	expect(leaves).toEqual(['scyliorhinus-canicula', 'scyliorhinus-stellaris']);
});

test('an answer that fits no option changes nothing', () => {
	const begun = beginKey(machine, {...nothingObserved, length: unknown});
	const after = stepKey(machine, begun, {type: 'seen', state: 'purple'});
	expect(after.value).toBe('outline');
	expect(after.context).toEqual(begun.context);
});

test('whatever is answered, the walk ends, reaches a taxon and asks nothing twice or about a lost part', () => {
	fc.assert(
		fc.property(observedArbitrary, ({answers, lost, length, width}) => {
			const {asked, leaves} = walk(
				{...nothingObserved, lost, length, width},
				character => answers[character] ?? cantTell,
			);
			expect(asked.length).toBeLessThanOrEqual(questions.length);
			expect(new Set(asked).size).toBe(asked.length);
			expect(leaves.length).toBeGreaterThan(0);
			const hidden = asked.filter(character =>
				key.characters[character]?.needs.some(part => lost.includes(part)),
			);
			expect(hidden).toEqual([]);
		}),
		{numRuns: 300},
	);
});

test('a character that is known from the beginning is not asked about', () => {
	const begun = beginKey(machine, {...nothingObserved, seen: {outline: 'broad'}, length: exactly(75)});
	expect(wantedBy(region, begun)).toEqual({kind: 'look', question: 'keel', character: 'keel'});
});

/** Taxa that can be reached from a question or taxon. */
function leavesBelow({questions: all}: Key, id: string): readonly string[] {
	const question = all[id];
	return question ? arrowsOf(id, question).flatMap(({leads}) => leavesBelow(key, leads)) : [id];
}
