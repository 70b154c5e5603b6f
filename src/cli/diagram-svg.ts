/** A key drawn as SVG from top to bottom. */
import type {Box, Diagram} from '../key/diagram.ts';
import type {Route} from './diagram-layers.ts';
import {cantTellNote} from './diagram-note.ts';
import {type Place, type Plan, planOf, sizes} from './diagram-places.ts';

const colours = {
	paper: '#fbfaf5',
	ink: '#1f2a33',
	way: '#4b6472',
	question: '#ffffff',
	taxon: '#dcefe2',
	note: '#fff3cf',
};
const font = 'DejaVu Sans, Verdana, sans-serif';
const labelLine = 14;
/** Width in pixels of a letter of the region's name: more than the mean of the bold font at its size. */
const headLetter = 15;

/** Draws a key: one box a question, one a taxon, and the arrows between them with their labels. */
export function svgOf(diagram: Diagram): string {
	const plan = planOf(diagram);
	const head = headPlan(diagram);
	const width = Math.max(plan.width, 760, head.right + sizes.margin);
	const ports = portsOf(plan);
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${plan.height}" width="${width}" height="${plan.height}" role="img" font-family="${font}">`,
		`<title>${escaped(`The key: ${diagram.region}`)}</title>`,
		`<defs><marker id="tip" viewBox="0 0 10 10" refX="9" refY="5" markerWidth="8" markerHeight="8" orient="auto-start-reverse"><path d="M0 0L10 5L0 10Z" fill="${colours.way}"/></marker></defs>`,
		`<rect width="${width}" height="${plan.height}" fill="${colours.paper}"/>`,
		...headOf(diagram),
		...plan.routes.map((route, index) => lineOf(plan, route, ports[index])),
		...plan.routes.map((route, index) => labelOf(route, ports[index])),
		...diagram.boxes.map(box => boxOf(box, plan.places.get(box.id))),
		'</svg>',
		'',
	].join('\n');
}

/** Where an arrow leaves its box and where it comes in, from the left and from the top. */
type Ports = {readonly leaves: Point; readonly comes: Point; readonly room: number};
type Point = {readonly x: number; readonly y: number};

/** Arrows of one box stand side by side, in the order of where they go to or come from. */
function portsOf({places, routes}: Plan): readonly Ports[] {
	const middle = (id: string | undefined) => places.get(id ?? '')?.middle ?? 0;
	const top = (id: string | undefined) => places.get(id ?? '')?.top ?? 0;
	const among = (route: Route, end: 0 | -1) => {
		const beside = end === 0 ? 1 : -2;
		const same = routes
			.filter(other => other.through.at(end) === route.through.at(end))
			.sort((one, other) => middle(one.through.at(beside)) - middle(other.through.at(beside)));
		return {share: (same.indexOf(route) + 0.5) / same.length - 0.5, count: same.length};
	};
	return routes.map(route => {
		const [out, into] = [among(route, 0), among(route, -1)];
		const [from, to] = [route.through.at(0), route.through.at(-1)];
		return {
			leaves: {x: middle(from) + out.share * sizes.boxWidth, y: top(from) + sizes.boxHeight},
			comes: {x: middle(to) + into.share * sizes.boxWidth * 0.7, y: top(to)},
			room: sizes.boxWidth / out.count,
		};
	});
}

function lineOf({places}: Plan, {through}: Route, ports: Ports | undefined): string {
	if (!ports) return '';
	// The arrow runs straight down behind its label before it bends.
	const start = {x: ports.leaves.x, y: ports.leaves.y + 2 * labelLine + 8};
	const bends = through.slice(1, -1).flatMap(id => {
		const place = places.get(id);
		if (!place) return [];
		return [
			{x: place.middle, y: place.top},
			{x: place.middle, y: place.top + sizes.boxHeight + 2 * labelLine + 8},
		];
	});
	const points = [start, ...bends, ports.comes];
	const path = points.slice(1).map((to, index) => {
		const from = points[index] ?? to;
		const half = round((from.y + to.y) / 2);
		return `C${round(from.x)} ${half} ${round(to.x)} ${half} ${round(to.x)} ${round(to.y)}`;
	});
	const begun = `M${round(ports.leaves.x)} ${ports.leaves.y}L${round(start.x)} ${start.y}`;
	return `<path d="${begun}${path.join('')}" fill="none" stroke="${colours.way}" stroke-width="1.6" marker-end="url(#tip)"/>`;
}

function labelOf({labels}: Route, ports: Ports | undefined): string {
	if (!ports) return '';
	const lines = wrapped(labels.join(' / '), Math.max(9, Math.floor(ports.room / 7)), 2);
	const wide = Math.max(...lines.map(line => line.length)) * 6.6 + 4;
	const top = ports.leaves.y + 5;
	const back = `<rect x="${round(ports.leaves.x - wide / 2)}" y="${top}" width="${round(wide)}" height="${lines.length * labelLine + 1}" fill="${colours.paper}"/>`;
	return back + textAt(lines, {x: ports.leaves.x, y: top + 11}, {size: 11, step: labelLine});
}

function boxOf({kind, title, text}: Box, place: Place | undefined): string {
	if (!place) return '';
	const [left, isTaxon] = [place.middle - sizes.boxWidth / 2, kind === 'taxon'];
	const shape = `<rect x="${round(left)}" y="${place.top}" width="${sizes.boxWidth}" height="${sizes.boxHeight}" rx="${isTaxon ? 26 : 6}" fill="${isTaxon ? colours.taxon : colours.question}" stroke="${colours.ink}" stroke-width="1.4"/>`;
	const head = {x: place.middle, y: place.top + (isTaxon ? 38 : 20)};
	return [
		shape,
		textAt([title], head, {size: 13, step: 0, weight: 'bold'}),
		textAt(wrapped(text, 33, 3), {x: head.x, y: head.y + 19}, {size: 11, step: 15, isItalic: isTaxon}),
	].join('');
}

/** Where the note beside the name of the region begins and ends, from the left. */
function headPlan({region}: Diagram): {readonly left: number; readonly right: number} {
	const left = sizes.margin + region.length * headLetter + sizes.gap;
	return {left, right: left + Math.max(...cantTellNote.map(line => line.length)) * 6.5 + 24};
}

function headOf(diagram: Diagram): readonly string[] {
	const {left, right} = headPlan(diagram);
	return [
		`<text x="${sizes.margin}" y="44" font-size="20" font-weight="bold" fill="${colours.ink}">${escaped(diagram.region)}</text>`,
		`<rect x="${round(left)}" y="16" width="${round(right - left)}" height="46" fill="${colours.note}" stroke="${colours.ink}" stroke-dasharray="5 3"/>`,
		...cantTellNote.map(
			(line, index) =>
				`<text x="${round(left + 12)}" y="${35 + index * 17}" font-size="11.5" fill="${colours.ink}">${escaped(line)}</text>`,
		),
	];
}

type Look = {
	readonly size: number;
	readonly step: number;
	readonly weight?: 'bold';
	readonly isItalic?: boolean;
};

function textAt(lines: readonly string[], {x, y}: Point, {size, step, weight, isItalic}: Look): string {
	const style = `${weight ? ` font-weight="${weight}"` : ''}${isItalic ? ' font-style="italic"' : ''}`;
	return lines
		.map(
			(line, index) =>
				`<text x="${round(x)}" y="${y + index * step}" font-size="${size}" text-anchor="middle" fill="${colours.ink}"${style}>${escaped(line)}</text>`,
		)
		.join('');
}

/** Lines of at most `most` characters, cut at words; what does not fit in `count` lines ends in an ellipsis. */
function wrapped(text: string, most: number, count: number): readonly string[] {
	const lines: string[] = [];
	for (const word of text.split(' ')) {
		const last = lines.at(-1);
		if (last !== undefined && `${last} ${word}`.length <= most) lines[lines.length - 1] = `${last} ${word}`;
		else lines.push(word);
	}
	return lines.length <= count ? lines : [...lines.slice(0, count - 1), `${lines[count - 1]}…`];
}

function round(pixels: number): number {
	return Math.round(pixels * 10) / 10;
}

function escaped(text: string): string {
	return text
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;');
}
