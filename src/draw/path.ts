/** Points and lines as SVG writes them. */

/** Across and down. */
export type Point = readonly [number, number];

/** The smallest upright rectangle round something. */
export type Box = {
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
};

/** A number with at most two decimals. */
export function short(value: number): string {
	return String(Math.round(value * 100) / 100);
}

/** Straight from point to point; `Z` at the end when closed. */
export function pathOf(points: readonly Point[], end: 'open' | 'closed' = 'closed'): string {
	const steps = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`);
	return steps.join('') + (end === 'closed' ? 'Z' : '');
}

/** Attributes of an element of SVG; what is not given is left out. */
export function attributes(values: Readonly<Record<string, string | number | undefined>>): string {
	return Object.entries(values)
		.map(([name, value]) =>
			value === undefined ? '' : ` ${name}="${typeof value === 'number' ? short(value) : value}"`,
		)
		.join('');
}

/** A path with its attributes. */
export function drawPath(d: string, values: Readonly<Record<string, string | number | undefined>>): string {
	return `<path d="${d}"${attributes({fill: 'none', ...values})}/>`;
}

/** The box round all these points. */
export function boxOf(points: readonly Point[]): Box {
	const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
	return {left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys)};
}

/** The box round all these boxes. */
export function boxAround(boxes: readonly Box[]): Box {
	return {
		left: Math.min(...boxes.map(({left}) => left)),
		right: Math.max(...boxes.map(({right}) => right)),
		top: Math.min(...boxes.map(({top}) => top)),
		bottom: Math.max(...boxes.map(({bottom}) => bottom)),
	};
}

/** The same points on the other side of the middle line. */
export function mirrored(points: readonly Point[]): readonly Point[] {
	return points.map(([x, y]) => [-x, y]);
}

/** The same points with front and back changed. */
export function upended(points: readonly Point[]): readonly Point[] {
	return points.map(([x, y]) => [x, -y]);
}

/** Whole numbers from 0 up to and with `last`. */
export function upTo(last: number): readonly number[] {
	return Array.from({length: last + 1}, (_, index) => index);
}

/** A number from 0 to 1 that looks thrown and is the same for the same whole number. */
export function scattered(index: number): number {
	const wave = Math.sin((index + 1) * 12.9898) * 43758.5453;
	return wave - Math.floor(wave);
}
