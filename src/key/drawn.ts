/** Shapes of a region: of its taxa, and of the states that its questions offer. */
import type {Character, Region, Taxon} from './region.ts';
import {leavesOf, type PartialShape, plainShape, type Shape, withParts} from './shape.ts';

/** The shape of a taxon, and whether its size is a stand-in because none was published. */
export type TaxonShape = {readonly shape: Shape; readonly isStandIn: boolean};

/** A taxon as it is drawn: a plain case with what its commonest states draw, its own shape and its sizes. */
export function taxonShape(region: Region, id: string): TaxonShape {
	const taxon = region.profiles.taxa[id];
	if (!taxon) {
		const known = Object.keys(region.profiles.taxa).join(', ');
		throw new Error(`Expected a taxon of ${region.id} to draw; got "${id}", and there are ${known}`);
	}
	const drawn = commonestStates(region, taxon).map(({character, state}) =>
		sizeless(character.draws?.[state]),
	);
	const own = ownShape(taxon);
	const size = sizesOf(taxon);
	return {
		shape: withParts(plainShape, ...drawn, own, ...(size ? [{size}] : [])),
		isStandIn: size === undefined,
	};
}

/** One state as it is drawn beside the others of its character. */
export function stateShape(character: Character, state: string): Shape {
	return withParts(plainShape, character.on ?? {}, character.draws?.[state] ?? {});
}

/** The states that most cases of a taxon show, where its profile speaks of them. */
export function commonestStates(
	region: Region,
	taxon: Taxon,
): readonly {readonly id: string; readonly character: Character; readonly state: string}[] {
	return Object.entries(region.key.characters).flatMap(([id, character]) => {
		const shares = taxon.states[id] ?? {};
		const [state] = Object.entries(shares).toSorted(([, one], [, other]) => other - one)[0] ?? [];
		return state === undefined ? [] : [{id, character, state}];
	});
}

/** The state of a character that a shape looks most like; more than one where it lies between them. */
export function nearestStates(character: Character, shape: Shape): readonly string[] {
	const mine = leavesOf(shape);
	const states = drawnStates(character);
	const telling = [...mine.keys()].filter(
		leaf => new Set(states.map(({leaves}) => leaves.get(leaf))).size > 1,
	);
	const distances = states.map(({state, leaves}) => ({
		state,
		distance: telling.reduce((sum, leaf) => sum + apart(leaf, {mine, leaves, states}), 0),
	}));
	const least = Math.min(...distances.map(({distance}) => distance));
	return distances.filter(({distance}) => distance - least < 1e-9).map(({state}) => state);
}

type Leaves = ReturnType<typeof leavesOf>;
type DrawnStates = readonly {readonly state: string; readonly leaves: Leaves}[];

// The check of a region holds every taxon against the same states.
const drawnBefore = new WeakMap<Character, DrawnStates>();

function drawnStates(character: Character): DrawnStates {
	const known = drawnBefore.get(character);
	if (known) return known;
	const drawn = character.states.map(state => ({
		state,
		leaves: leavesOf(withParts(plainShape, character.draws?.[state] ?? {})),
	}));
	drawnBefore.set(character, drawn);
	return drawn;
}

/** How far a value is from that of a state: 1 for two states at the ends of what the character draws. */
function apart(
	leaf: string,
	{mine, leaves, states}: {mine: Leaves; leaves: Leaves; states: DrawnStates},
): number {
	const [one, other] = [mine.get(leaf), leaves.get(leaf)];
	if (typeof one !== 'number' || typeof other !== 'number') return one === other ? 0 : 1;
	const all = states.map(state => Number(state.leaves.get(leaf)));
	const [low, high] = [Math.min(...all), Math.max(...all)];
	// Beyond what the states draw, a value is as good as at their end.
	const within = Math.min(high, Math.max(low, one));
	return Math.abs(within - other) / (high - low);
}

function ownShape({shape}: Taxon): PartialShape {
	const {source: _source, page: _page, basis: _basis, ...own} = shape ?? {};
	return own;
}

function sizeless(part: PartialShape | undefined): PartialShape {
	const {size: _size, ...rest} = part ?? {};
	return rest;
}

/** The published mean, or the middle of the range. */
function sizesOf({lengthMm, widthMm}: Taxon): Shape['size'] | undefined {
	if (!lengthMm || !widthMm) return undefined;
	const middle = ({range: [low, high], mean}: typeof lengthMm) => mean ?? (low + high) / 2;
	return {lengthMm: middle(lengthMm), widthMm: middle(widthMm)};
}
