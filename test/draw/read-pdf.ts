/** A PDF read back by pdf.js, a reader that nobody here wrote: words and lines where they stand on the paper. */
import {getDocument, OPS} from 'pdfjs-dist/legacy/build/pdf.mjs';
import {z} from 'zod';

type Matrix = readonly [number, number, number, number, number, number];
type Point = readonly [x: number, y: number];

/** Words with their place in points from the lower left corner. */
export type PdfWords = {
	readonly words: string;
	readonly x: number;
	readonly y: number;
	readonly width: number;
};

/** One page: its size in points, its words, and the corners of every path on it. */
export type PdfPage = {
	readonly width: number;
	readonly height: number;
	readonly words: readonly PdfWords[];
	readonly paths: readonly (readonly Point[])[];
};

/** What a PDF says of itself, and its pages. */
export type PdfRead = {
	readonly title: string;
	readonly language: string;
	readonly isTagged: boolean;
	readonly alts: readonly string[];
	readonly pages: readonly PdfPage[];
};

const matrix = z.tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()]);
const pathArguments = z.tuple([z.array(z.number()), z.array(z.number())]).rest(z.unknown());
const infoSchema = z.object({Title: z.string(), Language: z.string()});
const textSchema = z.object({str: z.string(), transform: matrix, width: z.number()});
const marksSchema = z.object({MarkInfo: z.unknown()});

type Tree = {alt?: string | undefined; children?: readonly Tree[] | undefined};
const treeSchema: z.ZodType<Tree> = z.lazy(() =>
	z.object({alt: z.string().optional(), children: z.array(treeSchema).optional()}),
);

/** Reads a whole PDF. */
export async function readPdf(bytes: Uint8Array): Promise<PdfRead> {
	const task = getDocument({data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false});
	const document = await task.promise;
	const info = infoSchema.parse((await document.getMetadata()).info);
	const marks = marksSchema.parse({MarkInfo: await document.getMarkInfo()});
	const pages: PdfPage[] = [];
	const alts: string[] = [];
	for (let number = 1; number <= document.numPages; number++) {
		const page = await document.getPage(number);
		const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
		const {items} = await page.getTextContent();
		const words = items
			.map(item => textSchema.safeParse(item))
			.flatMap(({data}) =>
				data ? [{words: data.str, x: data.transform[4], y: data.transform[5], width: data.width}] : [],
			);
		alts.push(...altsOf(treeSchema.parse(await page.getStructTree())));
		// A unit of the page is a point unless the page says otherwise.
		const scale = page.userUnit;
		pages.push({
			width: (right - left) * scale,
			height: (top - bottom) * scale,
			words,
			paths: pathsOf(await page.getOperatorList()),
		});
	}
	await task.destroy();
	const {Title: title, Language: language} = info;
	return {title, language, isTagged: JSON.stringify(marks).includes('"Marked":true'), alts, pages};
}

function altsOf({alt, children = []}: Tree): readonly string[] {
	return [...(alt === undefined ? [] : [alt]), ...children.flatMap(altsOf)];
}

function pathsOf(list: {readonly fnArray: readonly number[]; readonly argsArray: readonly unknown[]}) {
	let now: Matrix = [1, 0, 0, 1, 0, 0];
	const kept: Matrix[] = [];
	const paths: (readonly Point[])[] = [];
	for (const [index, operation] of list.fnArray.entries()) {
		const given = list.argsArray[index];
		if (operation === OPS.save) kept.push(now);
		else if (operation === OPS.restore) now = kept.pop() ?? now;
		else if (operation === OPS.transform) now = joined(now, matrix.parse(given));
		else if (operation === OPS.constructPath) paths.push(pointsOf(pathArguments.parse(given), now));
	}
	return paths;
}

function joined([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
	return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

/** How many numbers each part of a path takes; of a curve its ends are corners too, near enough. */
const numbers = new Map<number, number>([
	[OPS.moveTo, 2],
	[OPS.lineTo, 2],
	[OPS.curveTo, 6],
	[OPS.curveTo2, 4],
	[OPS.curveTo3, 4],
	[OPS.closePath, 0],
]);

function pointsOf([parts, figures]: readonly [number[], number[], ...unknown[]], [a, b, c, d, e, f]: Matrix) {
	const points: Point[] = [];
	let at = 0;
	for (const part of parts) {
		if (part === OPS.rectangle) {
			const [x = 0, y = 0, width = 0, height = 0] = figures.slice(at, at + 4);
			points.push([x, y], [x + width, y + height]);
			at += 4;
			continue;
		}
		const many = numbers.get(part);
		if (many === undefined) throw new Error(`Expected a known part of a path; got ${part}`);
		at += many;
		if (many > 0) points.push([figures[at - 2] ?? Number.NaN, figures[at - 1] ?? Number.NaN]);
	}
	return points.map(([x, y]): Point => [a * x + c * y + e, b * x + d * y + f]);
}

/** Width and height of a path, in points. */
export function sizeOf(path: readonly Point[]): readonly [width: number, height: number] {
	const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
	return [span(path.map(([x]) => x)), span(path.map(([, y]) => y))];
}
