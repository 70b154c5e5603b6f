/** A key's boxes in layers: each below all that lead to it, ordered so that few arrows cross. */
import type {Diagram, Way} from '../key/diagram.ts';

/** A box, or the place where a long arrow passes through a layer. */
export type Spot = {readonly id: string; readonly isBend: boolean};

/** One arrow between neighbouring layers; a long arrow is a chain of them. */
export type Link = {readonly from: string; readonly to: string};

/** An arrow with the spots it runs through, both ends included, and all labels that share it. */
export type Route = {readonly labels: readonly string[]; readonly through: readonly string[]};

/** Boxes in layers from the top down, with the links between them and the ways those run. */
export type Layers = {
	readonly layers: readonly (readonly Spot[])[];
	readonly links: readonly Link[];
	readonly routes: readonly Route[];
};

/** Passes down and up over the layers; few keys change after the first ten. */
const passes = 24;

/** Places boxes in layers by the longest way to them and orders each layer by the middle of its neighbours. */
export function layersOf(diagram: Diagram): Layers {
	const depths = depthsOf(diagram);
	const routes = routesOf(diagram, depths);
	const links = routes.flatMap(({through}) =>
		through.slice(1).map((to, index) => ({from: through[index] ?? to, to})),
	);
	const layers: Spot[][] = [];
	const put = (depth: number, spot: Spot) => {
		layers[depth] = [...(layers[depth] ?? []), spot];
	};
	for (const {id} of diagram.boxes) put(depths.get(id) ?? 0, {id, isBend: false});
	for (const {through} of routes) {
		const top = depths.get(through[0] ?? '') ?? 0;
		through.slice(1, -1).forEach((id, index) => {
			put(top + 1 + index, {id, isBend: true});
		});
	}
	return {layers: ordered(layers, links), links, routes};
}

/** The number of arrows on the longest way to each box; throws when the arrows run in a loop. */
export function depthsOf({boxes, ways}: Diagram): ReadonlyMap<string, number> {
	const depths = new Map<string, number>();
	const depthOf = (id: string, trail: readonly string[]): number => {
		const known = depths.get(id);
		if (known !== undefined) return known;
		if (trail.includes(id)) {
			throw new Error(`Expected a key without a loop; got ${[...trail, id].join(' → ')}`);
		}
		const before = ways.filter(({to}) => to === id).map(({from}) => depthOf(from, [...trail, id]));
		const depth = before.length === 0 ? 0 : Math.max(...before) + 1;
		depths.set(id, depth);
		return depth;
	};
	for (const {id} of boxes) depthOf(id, []);
	return depths;
}

function routesOf({ways}: Diagram, depths: ReadonlyMap<string, number>): readonly Route[] {
	const groups = new Map<string, readonly Way[]>();
	for (const way of ways) {
		const name = `${way.from} ${way.to}`;
		groups.set(name, [...(groups.get(name) ?? []), way]);
	}
	return [...groups].flatMap(([name, group]) => {
		const [first] = group;
		if (!first) return [];
		const [top, bottom] = [depths.get(first.from) ?? 0, depths.get(first.to) ?? 0];
		const bends = Array.from({length: bottom - top - 1}, (_, index) => `${name} ${index}`);
		return [{labels: group.map(({label}) => label), through: [first.from, ...bends, first.to]}];
	});
}

function ordered(begun: readonly (readonly Spot[])[], links: readonly Link[]): readonly (readonly Spot[])[] {
	let layers = begun;
	let best = begun;
	let fewest = crossingsIn(begun, links);
	for (let pass = 0; pass < passes; pass++) {
		layers =
			pass % 2 === 0 ? sweptDown(layers, links) : sweptDown(layers.toReversed(), turned(links)).toReversed();
		const crossings = crossingsIn(layers, links);
		if (crossings < fewest) [best, fewest] = [layers, crossings];
	}
	return best;
}

function turned(links: readonly Link[]): readonly Link[] {
	return links.map(({from, to}) => ({from: to, to: from}));
}

function sweptDown(
	layers: readonly (readonly Spot[])[],
	links: readonly Link[],
): readonly (readonly Spot[])[] {
	const swept: (readonly Spot[])[] = [];
	for (const layer of layers) {
		const above = placesIn(swept.at(-1) ?? []);
		const middle = (spot: Spot, index: number): number => {
			const places = links.flatMap(({from, to}) => {
				const place = to === spot.id ? above.get(from) : undefined;
				return place === undefined ? [] : [place];
			});
			return places.length === 0 ? index : places.reduce((sum, place) => sum + place, 0) / places.length;
		};
		const placed = layer.map((spot, index) => ({spot, at: middle(spot, index)}));
		swept.push(placed.sort((one, other) => one.at - other.at).map(({spot}) => spot));
	}
	return swept;
}

/** How many pairs of arrows cross between neighbouring layers. */
export function crossingsIn(layers: readonly (readonly Spot[])[], links: readonly Link[]): number {
	let crossings = 0;
	layers.slice(1).forEach((layer, index) => {
		const above = placesIn(layers[index] ?? []);
		const below = placesIn(layer);
		const pairs = links.flatMap(({from, to}) => {
			const [top, bottom] = [above.get(from), below.get(to)];
			return top === undefined || bottom === undefined ? [] : [{top, bottom}];
		});
		for (const [position, one] of pairs.entries()) {
			for (const other of pairs.slice(position + 1)) {
				if ((one.top - other.top) * (one.bottom - other.bottom) < 0) crossings += 1;
			}
		}
	});
	return crossings;
}

function placesIn(layer: readonly Spot[]): ReadonlyMap<string, number> {
	return new Map(layer.map(({id}, index) => [id, index] as const));
}
