/** Where each box and bend of a drawing stands, in pixels. */
import type {Diagram} from '../key/diagram.ts';
import {type Layers, layersOf, type Route, type Spot} from './diagram-layers.ts';

/** Sizes in pixels; a box holds a title and three lines of text, and labels stand below it. */
export const sizes = {
	boxWidth: 236,
	boxHeight: 84,
	bendWidth: 20,
	gap: 28,
	between: 96,
	margin: 28,
	head: 92,
};

/** Where a box or a bend stands: its middle from the left, its upper edge from the top. */
export type Place = {readonly middle: number; readonly top: number};

/** Where everything of a drawing stands, and how large it is. */
export type Plan = {
	readonly places: ReadonlyMap<string, Place>;
	readonly routes: readonly Route[];
	readonly width: number;
	readonly height: number;
};

/** Rounds of moving each spot towards the middle of its neighbours. */
const rounds = 60;

/** Plans a drawing of a key from top to bottom. */
export function planOf(diagram: Diagram): Plan {
	const {layers, links, routes} = layersOf(diagram);
	const middles = middlesOf({layers, links, routes});
	const left = Math.min(...layers.flat().map(spot => (middles.get(spot.id) ?? 0) - widthOf(spot) / 2));
	const right = Math.max(...layers.flat().map(spot => (middles.get(spot.id) ?? 0) + widthOf(spot) / 2));
	const places = new Map<string, Place>();
	layers.forEach((layer, depth) => {
		const top = sizes.head + depth * (sizes.boxHeight + sizes.between);
		for (const {id} of layer) places.set(id, {middle: (middles.get(id) ?? 0) - left + sizes.margin, top});
	});
	return {
		places,
		routes,
		width: Math.ceil(right - left + 2 * sizes.margin),
		height: sizes.head + layers.length * (sizes.boxHeight + sizes.between) - sizes.between + sizes.margin,
	};
}

function middlesOf({layers, links}: Layers): Map<string, number> {
	const middles = new Map<string, number>();
	for (const layer of layers) for (const [id, middle] of spread(layer, () => 0)) middles.set(id, middle);
	for (let round = 0; round < rounds; round++) {
		for (const layer of round % 2 === 0 ? layers : layers.toReversed()) {
			const wish = (id: string): number => {
				const near = links.flatMap(({from, to}) => (from === id ? [to] : to === id ? [from] : []));
				if (near.length === 0) return middles.get(id) ?? 0;
				return near.reduce((sum, other) => sum + (middles.get(other) ?? 0), 0) / near.length;
			};
			for (const [id, middle] of spread(layer, wish)) middles.set(id, middle);
		}
	}
	return middles;
}

/**
 * Places a layer as near to its wishes as the order and the gaps allow, by least squares: neighbours
 * that would overlap are joined to a block, and a block stands at the mean of its wishes.
 */
function spread(layer: readonly Spot[], wish: (id: string) => number): ReadonlyMap<string, number> {
	let offset = 0;
	const spots = layer.map((spot, index) => {
		const before = layer[index - 1];
		if (before) offset += (widthOf(before) + widthOf(spot)) / 2 + sizes.gap;
		return {id: spot.id, offset, wish: wish(spot.id) - offset};
	});
	const blocks: {count: number; sum: number}[] = [];
	for (const spot of spots) {
		let block = {count: 1, sum: spot.wish};
		for (
			let last = blocks.at(-1);
			last && last.sum / last.count > block.sum / block.count;
			last = blocks.at(-1)
		) {
			blocks.pop();
			block = {count: last.count + block.count, sum: last.sum + block.sum};
		}
		blocks.push(block);
	}
	const starts = blocks.flatMap(({count, sum}) => Array.from({length: count}, () => sum / count));
	return new Map(spots.map(({id, offset: from}, index) => [id, (starts[index] ?? 0) + from] as const));
}

function widthOf({isBend}: Spot): number {
	return isBend ? sizes.bendWidth : sizes.boxWidth;
}
