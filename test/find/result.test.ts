import {expect, test} from 'vitest';
import {type ResultView, viewResult} from '../../src/find/result.ts';
import {goingOn, type Place, talked} from '../support/walk.ts';
import {flow} from './turns.ts';

const soft = ['yes', 'empty', 'go-on', 'Gwithian', 'today', '1', 'go-on', 'soft'];
const dry = [...soft.slice(0, -1), 'dry', 'unsoaked'];
const {taxa, sources} = flow.region.profiles;

/** The result after these answers; whatever is asked beyond them cannot be told. */
function resultOf(...said: readonly string[]): ResultView {
	const {
		ask,
		turn: {standing},
	} = endOf(...said);
	if (!standing.found) throw new Error(`Expected a result; the find stands at "${ask.question}"`);
	return viewResult(flow, standing, standing.found);
}

function endOf(...said: readonly string[]): Place {
	let place = talked(flow, ...said);
	while (place.ask.kind === 'look' || place.ask.kind === 'width') place = goingOn(flow, place, 'cant-tell');
	return place;
}

test('a clear case has one name, with what speaks for it and its published range', () => {
	const view = resultOf(...soft, 'both', '75 mm', 'broad', 'blade', 'even');
	expect(view.names).toMatchObject([{taxon: 'raja-clavata', scientificName: 'Raja clavata'}]);
	expect(['very-likely', 'likely']).toContain(view.sure);
	expect(view.seenFor).toEqual([
		{character: 'outline', state: 'broad'},
		{character: 'keel', state: 'blade'},
		{character: 'taper', state: 'even'},
	]);
	expect(view.seenAgainst).toEqual([]);
	expect(view.settles).toBeUndefined();
	const [lowMm, highMm] = taxa['raja-clavata']?.lengthMm?.range ?? [];
	expect(view.length).toEqual({
		mm: 75,
		plusMinusMm: 1,
		lowerBound: [],
		candidates: [{taxon: 'raja-clavata', lowMm, highMm, fits: true, fromMemory: false}],
	});
	expect(view.width).toBeUndefined();
});

test('what does not fit the name is said against it', () => {
	// A slim case with curly strings, and at its length the strings alone speak of another kind.
	const view = resultOf(...soft, 'both', '58 mm', 'slim', 'hooks');
	const against = view.seenAgainst.map(({character}) => character);
	expect(against).toEqual(['corners']);
	const first = taxa[view.names[0]?.taxon ?? ''];
	for (const character of against) {
		const state = view.seenAgainst.find(one => one.character === character)?.state ?? '';
		expect(first?.states[character]?.[state]).toBeLessThanOrEqual(0.2);
	}
	for (const {character, state} of view.seenFor)
		expect(first?.states[character]?.[state]).toBeGreaterThan(0.4);
	expect(view.seenFor.some(({character}) => against.includes(character))).toBe(false);
});

test('what cannot be told speaks neither for nor against, and is not asked for again', () => {
	const view = resultOf(...soft, 'one-gone', '50 mm', 'broad');
	expect(view.sure).toBe('shortlist');
	expect(view.names.length).toBeGreaterThan(1);
	expect([...view.seenFor, ...view.seenAgainst].map(({state}) => state)).not.toContain('cant-tell');
	expect(view.settles).toBeDefined();
	const {seen} = endOf(...soft, 'one-gone', '50 mm', 'broad').turn.standing.facts;
	expect(Object.values(seen)).toContain('cant-tell');
	expect(Object.keys(seen)).not.toContain(view.settles);
});

test('a part that is gone settles nothing', () => {
	for (const part of ['horns', 'sides', 'surface']) {
		const view = resultOf(...soft.slice(0, -2), part, 'go-on', 'soft', 'both', 'cant-tell');
		const needs = flow.region.key.characters[view.settles ?? '']?.needs ?? [];
		expect(needs, `${view.settles} with ${part} gone`).not.toContain(part);
	}
});

test.each([
	['a soaked case with both aprons', [...soft, 'both', '66 mm'], []],
	['a dry case', [...dry, 'both', '66 mm'], ['dry']],
	['a case with an apron gone', [...soft, 'one-gone', '66 mm'], ['aprons']],
	['a case whose aprons cannot be told', [...soft, 'cant-tell', '66 mm'], ['aprons']],
	['a dry case with both aprons gone', [...dry, 'both-gone', '66 mm'], ['dry', 'aprons']],
])('the length of %s counts for what it is', (_, said, lowerBound) => {
	expect(resultOf(...said, 'broad', 'lines', 'blade').length?.lowerBound).toEqual(lowerBound);
});

test('a dry length fits the kinds that drying may have brought down to it, an exact one only those whose range it meets', () => {
	const least = resultOf(...dry, 'both', '45 mm', 'broad').length?.candidates ?? [];
	// 45 mm, give or take 1, of a case that shows at least 0.85 of its length.
	for (const {fits, lowMm, highMm} of least) expect(fits).toBe(46 >= lowMm * 0.85 && 44 <= highMm);
	expect(least.map(({fits}) => fits)).toContain(true);
	expect(least.map(({fits}) => fits)).toContain(false);
	const exact = resultOf(...soft, 'both', '96 mm', 'broad').length?.candidates ?? [];
	expect(exact.length).toBeGreaterThan(0);
	for (const {fits, lowMm, highMm} of exact) expect(fits).toBe(97 >= lowMm && 95 <= highMm);
});

test('a case that could not be measured shows no length', () => {
	const view = resultOf(...soft, 'both', 'cant-tell', 'slim', 'strings');
	expect(view.length).toBeUndefined();
	expect(view.names[0]?.taxon).toBe('scyliorhinus-canicula');
});

test('a width is shown when it was asked for, and torn sides make it a lower bound', () => {
	const whole = resultOf(...soft, 'both', '150 mm', 'broad', 'bark', '120 mm');
	expect(whole.width).toMatchObject({mm: 120, lowerBound: []});
	const torn = resultOf(
		...soft.slice(0, -2),
		'sides',
		'go-on',
		'soft',
		'both',
		'150 mm',
		'broad',
		'bark',
		'120 mm',
	);
	expect(torn.width).toMatchObject({mm: 120, lowerBound: ['sides']});
	expect(torn.length).toMatchObject({mm: 150, lowerBound: []});
});

test('a kind that is better left alone is said so, as long as it is among the names', () => {
	const large = resultOf(...soft, 'both', '150 mm', 'broad', 'bark', '120 mm');
	expect(large.names.map(({taxon}) => taxon)).toContain(large.leaveIt);
	expect(taxa[large.leaveIt ?? '']?.leaveIt).toBe(true);
	expect(resultOf(...soft, 'both', '66 mm', 'slim', 'strings').leaveIt).toBeUndefined();
});

test('a fact is told of the first name, with the source where it can be read', () => {
	for (const said of [
		['66 mm', 'slim', 'strings'],
		['150 mm', 'broad', 'bark', '120 mm'],
	]) {
		const {fact, names} = resultOf(...soft, 'both', ...said);
		const cited = taxa[names[0]?.taxon ?? '']?.fact;
		expect(fact).toEqual({
			taxon: names[0]?.taxon,
			citation: sources[cited?.source ?? '']?.citation,
			page: cited?.page,
			fromMemory: false,
		});
	}
});

test('the doubt whether it is an egg case at all goes with the result', () => {
	const doubtful = resultOf('cant-tell', 'cant-tell', ...soft.slice(1), 'both', '66 mm', 'broad');
	expect(doubtful.doubt).toBe(true);
	expect(resultOf(...soft, 'both', '66 mm', 'broad').doubt).toBe(false);
});

test('shares are whole numbers in a hundred, best first, and never more than a hundred together', () => {
	const view = resultOf(...soft, 'both', 'cant-tell');
	const shares = view.names.map(({percent}) => percent);
	expect(shares.every(Number.isInteger)).toBe(true);
	expect(shares).toEqual(shares.toSorted((one, other) => other - one));
	expect(shares.reduce((sum, share) => sum + share, view.elsePercent ?? 0)).toBeLessThanOrEqual(102);
});
