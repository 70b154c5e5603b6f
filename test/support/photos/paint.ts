/** A made-up egg case as SVG: colours, shine, wear, horns and tendrils. */
import {between, type Pick} from '../../../src/key/random.ts';
import type {CaseShape, End} from './shape.ts';

type Colour = readonly [number, number, number];

/** A case painted: the body with what hangs on it, and that alone which throws a shadow. */
export type Painted = {readonly svg: string; readonly halfMm: number};

/** Paints a case into a square of twice `halfMm` around its middle, one unit a millimetre. */
export function paintCase(shape: CaseShape, pick: Pick, wet: number): Painted {
	const base = pickColour(pick);
	const body = path(shape.body);
	const halfMm = shape.lengthMm * 0.5 + reach(shape) + 4;
	const seed = Math.floor(pick() * 1000);
	const parts = [
		...(shape.isTendrilled ? tendrils(shape, pick, base) : []),
		...horns(shape, pick, base),
		`<path d="${body}" fill="${css(base)}"/>`,
		'<g clip-path="url(#body)">',
		rounding(shape, base, pick),
		...keels(shape, base, pick),
		...aprons(shape, base, pick),
		...stripes(shape, base, pick),
		`<path d="${body}" filter="url(#grain)" opacity="${between(pick, [0.1, 0.4])}"/>`,
		...shines(shape, pick, wet),
		'</g>',
		...barnacles(shape, pick),
	];
	const svg = [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="${-halfMm} ${-halfMm} ${2 * halfMm} ${2 * halfMm}">`,
		`<defs><clipPath id="body"><path d="${body}"/></clipPath>`,
		'<filter id="soft" x="-1" y="-1" width="3" height="3"><feGaussianBlur stdDeviation="0.7"/></filter>',
		`<filter id="grain"><feTurbulence baseFrequency="0.9 0.3" numOctaves="3" seed="${seed}"/><feColorMatrix values="0.2 0 0 0 0  0 0.15 0 0 0  0 0 0.1 0 0  0 0 0 1 0"/><feComposite in2="SourceGraphic" operator="in"/></filter>`,
		'</defs>',
		...parts,
		'</svg>',
	].join('');
	return {svg, halfMm};
}

function reach({ends, isTendrilled, lengthMm}: CaseShape): number {
	const horn = Math.max(...ends.flatMap(({hornMm}) => hornMm));
	return Math.max(horn, isTendrilled ? lengthMm : 0);
}

function pickColour(pick: Pick): Colour {
	const kind = pick();
	if (kind < 0.45) return shade([64, 44, 28], between(pick, [0.45, 1.4]));
	if (kind < 0.7) return shade([120, 80, 42], between(pick, [0.7, 1.3]));
	if (kind < 0.85) return shade([190, 140, 80], between(pick, [0.85, 1.15]));
	return shade([78, 72, 44], between(pick, [0.5, 1.3]));
}

function shade([r, g, b]: Colour, by: number): Colour {
	return [Math.min(255, r * by), Math.min(255, g * by), Math.min(255, b * by)];
}

function css(colour: Colour, opacity = 1): string {
	return `rgba(${colour.map(value => Math.round(value)).join(',')},${opacity})`;
}

function path(points: readonly (readonly [number, number])[]): string {
	return `M${points.map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`).join('L')}Z`;
}

function rounding(shape: CaseShape, base: Colour, pick: Pick): string {
	const bands = Array.from({length: 12}, (_, index) => {
		const y = ((index + 0.5) / 12 - 0.5) * 2;
		const light = 1 + 0.25 * Math.cos((y - between(pick, [-0.1, 0.1])) * 2.4);
		const [top, high] = [(y - 1 / 12) * shape.widthMm * 0.5, shape.widthMm / 12 + 0.1];
		return `<rect x="${-shape.lengthMm}" y="${top}" width="${2 * shape.lengthMm}" height="${high}" fill="${css(shade(base, light))}"/>`;
	});
	return `<g filter="url(#soft)">${bands.join('')}</g>`;
}

function keels(shape: CaseShape, base: Colour, pick: Pick): readonly string[] {
	if (shape.keelMm === 0) return [];
	const colour = shade(base, pick() < 0.5 ? between(pick, [1.2, 2.2]) : between(pick, [0.5, 0.8]));
	return [-1, 1].map(sign => {
		const points = Array.from({length: 41}, (_, index) => {
			const x = (index / 40 - 0.5) * shape.lengthMm * 1.2;
			return [x, sign * (shape.halfAt(x) - shape.keelMm)] as const;
		});
		const far = sign * shape.widthMm;
		const all = [...points, [shape.lengthMm, far] as const, [-shape.lengthMm, far] as const];
		return `<path d="${path(all)}" fill="${css(colour)}"/>`;
	});
}

function aprons(shape: CaseShape, base: Colour, pick: Pick): readonly string[] {
	const lighter = between(pick, [1.1, 2.2]);
	const hue: Colour = pick() < 0.5 ? base : [170, 130, 80];
	return ([-1, 1] as const).flatMap(side => {
		const {apronMm} = shape.ends[side < 0 ? 0 : 1];
		if (apronMm === 0) return [];
		const line = Array.from({length: 21}, (_, index) => {
			const y = (index / 10 - 1) * shape.widthMm;
			return [shape.endAt(side, y) - side * apronMm * (1 + 0.3 * Math.cos(y)), y] as const;
		});
		const far = side * shape.lengthMm * 2;
		const all = [...line, [far, shape.widthMm] as const, [far, -shape.widthMm] as const];
		return [`<path d="${path(all)}" fill="${css(shade(hue, lighter), between(pick, [0.5, 1]))}"/>`];
	});
}

function stripes(shape: CaseShape, base: Colour, pick: Pick): readonly string[] {
	const count = pick() < 0.5 ? 0 : Math.floor(between(pick, [4, 14]));
	const dark = css(shade(base, between(pick, [0.5, 1.5])), 0.5);
	return Array.from({length: count}, (_, index) => {
		const y = ((index + 0.5) / count - 0.5) * shape.widthMm;
		const half = shape.lengthMm * 0.44;
		return `<path d="M${-half} ${y}Q0 ${y * 1.1} ${half} ${y}" stroke="${dark}" stroke-width="${between(pick, [0.2, 0.7])}" fill="none"/>`;
	});
}

function shines(shape: CaseShape, pick: Pick, wet: number): readonly string[] {
	const count = Math.floor(wet * between(pick, [2, 9]));
	return Array.from({length: count}, () => {
		const isAtRim = pick() < 0.4;
		const angle = between(pick, [0, 2 * Math.PI]);
		const far = isAtRim ? between(pick, [0.85, 1]) : between(pick, [0, 0.8]);
		const x = Math.max(-1, Math.min(1, 1.3 * Math.cos(angle))) * far * shape.lengthMm * 0.5;
		const y = Math.max(-1, Math.min(1, 1.3 * Math.sin(angle))) * far * shape.widthMm * 0.5;
		const [rx, ry] = [between(pick, [0.3, 0.14 * shape.widthMm]), between(pick, [0.3, 0.06 * shape.widthMm])];
		const turn = Math.floor(between(pick, [0, 180]));
		const bright = between(pick, [170, 255]);
		const fill = css([bright, bright, bright], between(pick, [0.4, 0.95]));
		return `<ellipse rx="${rx}" ry="${ry}" transform="translate(${x} ${y}) rotate(${turn})" fill="${fill}" filter="url(#soft)"/>`;
	});
}

function horns(shape: CaseShape, pick: Pick, base: Colour): readonly string[] {
	const colour = css(shade(base, between(pick, [0.8, 1.3])));
	return ([-1, 1] as const).flatMap(side => {
		const end = shape.ends[side < 0 ? 0 : 1];
		return ([-1, 1] as const).map(hand => horn(shape, {side, hand, end, colour, pick}));
	});
}

type HornWish = {
	readonly side: -1 | 1;
	readonly hand: -1 | 1;
	readonly end: End;
	readonly colour: string;
	readonly pick: Pick;
};

function horn(shape: CaseShape, {side, hand, end, colour, pick}: HornWish): string {
	const long = end.hornMm[hand < 0 ? 0 : 1];
	const thick = shape.widthMm * between(pick, [0.1, 0.18]);
	const half = shape.halfAt((side * shape.lengthMm) / 2);
	const tip = long === 0 ? shape.widthMm * between(pick, [0, 0.06]) : long;
	let [x, y] = [shape.endAt(side, hand * half) - side * thick * 0.6, hand * (half - thick * 0.5)];
	const [left, right]: [[number, number][], [number, number][]] = [[], []];
	for (let step = 0; step <= 24; step += 1) {
		const share = step / 24;
		const angle = end.flare + end.curl * share * share;
		const [dx, dy] = [side * Math.cos(angle), hand * Math.sin(angle)];
		const wide = (thick / 2) * (1 - 0.85 * share);
		left.push([x - dy * wide, y + dx * wide]);
		right.push([x + dy * wide, y - dx * wide]);
		x += (dx * (tip + thick * 0.6)) / 24;
		y += (dy * (tip + thick * 0.6)) / 24;
	}
	return `<path d="${path([...left, ...right.toReversed()])}" fill="${colour}"/>`;
}

function tendrils(shape: CaseShape, pick: Pick, base: Colour): readonly string[] {
	return ([-1, 1] as const).flatMap(side =>
		([-1, 1] as const).flatMap(hand => {
			if (pick() < 0.2) return [];
			const half = shape.halfAt((side * shape.lengthMm) / 2);
			let [x, y] = [shape.endAt(side, hand * half) - side, hand * (half - 0.8)];
			let angle = side < 0 ? Math.PI : 0;
			const turn = between(pick, [-0.06, 0.1]);
			const points: [number, number][] = [[x, y]];
			for (let step = 0; step < 60; step += 1) {
				angle += hand * side * turn + between(pick, [-0.25, 0.25]);
				x += (Math.cos(angle) * shape.lengthMm) / 60;
				y += (Math.sin(angle) * shape.lengthMm) / 60;
				points.push([x, y]);
			}
			const line = path(points).replace('Z', '');
			return [
				`<path d="${line}" fill="none" stroke-linejoin="round" stroke="${css(shade(base, 1.2))}" stroke-width="${between(pick, [0.7, 1.5])}"/>`,
			];
		}),
	);
}

function barnacles(shape: CaseShape, pick: Pick): readonly string[] {
	const count = pick() < 0.7 ? 0 : Math.floor(between(pick, [1, 6]));
	return Array.from({length: count}, () => {
		const x = between(pick, [-0.4, 0.4]) * shape.lengthMm;
		const y = between(pick, [-0.4, 0.4]) * shape.widthMm;
		const r = between(pick, [0.8, 2.2]);
		return `<circle cx="${x}" cy="${y}" r="${r}" fill="#d8d4c8"/><circle cx="${x}" cy="${y}" r="${r * 0.4}" fill="#8a8578"/>`;
	});
}
