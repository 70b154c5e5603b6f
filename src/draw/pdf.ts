/** Pages as a PDF: words as words in an embedded font, drawings as lines, tagged for those who hear it read. */
import {createRequire} from 'node:module';
import PDFDocument from 'pdfkit';
import drawSvg from 'svg-to-pdfkit';
import {lineHeight} from './lettering.ts';
import {type Page, type PageDrawing, type PageWords, viewOf} from './page.ts';
import {colours} from './palette.ts';

/** What a PDF is made of; `now` is the time written into it, in UTC milliseconds. */
export type Sheet = {
	readonly title: string;
	/** A language tag such as `en`. */
	readonly language: string;
	readonly pages: readonly Page[];
	readonly now: number;
};

/** Points of a PDF, 72 to the inch, in a millimetre. */
export const pointsPerMm = 72 / 25.4;

const fontFiles = {plain: 'DejaVuSans.ttf', bold: 'DejaVuSans-Bold.ttf'} as const;
const tags = {title: 'H1', heading: 'H2', text: 'P'} as const;

/** Writes pages into one PDF; the same pages at the same time give the same bytes. */
export async function writePdf({title, language, pages, now}: Sheet): Promise<Uint8Array> {
	const resolve = createRequire(import.meta.url).resolve;
	const made = new Date(now);
	const document = new PDFDocument({
		autoFirstPage: false,
		margin: 0,
		pdfVersion: '1.7',
		lang: language,
		displayTitle: true,
		tagged: true,
		info: {Title: title, CreationDate: made, ModDate: made, Creator: 'pursekey', Producer: 'pdfkit'},
		font: resolve(`dejavu-fonts-ttf/ttf/${fontFiles.plain}`),
	});
	for (const [name, file] of Object.entries(fontFiles)) {
		document.registerFont(name, resolve(`dejavu-fonts-ttf/ttf/${file}`));
	}
	const written = bytesOf(document);
	const whole = document.struct('Document');
	document.addStructure(whole);
	for (const page of pages) {
		document.addPage({size: [page.widthMm * pointsPerMm, page.heightMm * pointsPerMm], margin: 0});
		for (const item of page.items) {
			if (item.kind === 'words') whole.add(wordsTag(document, item));
			else if (item.alt === undefined) ornament(document, item);
			else whole.add(document.struct('Figure', {alt: item.alt}, () => placeDrawing(document, item)));
		}
	}
	whole.end();
	document.end();
	return written;
}

type Document = InstanceType<typeof PDFDocument>;

function bytesOf(document: Document): Promise<Uint8Array> {
	return new Promise((resolve, reject) => {
		const parts: Buffer[] = [];
		document.on('data', (part: Buffer) => parts.push(part));
		document.on('end', () => resolve(Buffer.concat(parts)));
		document.on('error', reject);
	});
}

function wordsTag(document: Document, item: PageWords) {
	const {
		lines,
		xMm,
		restMm = 0,
		footMm,
		sizeMm,
		weight = 'plain',
		anchor = 'start',
		fill = colours.ink,
		role = 'text',
	} = item;
	return document.struct(tags[role], {}, () => {
		document
			.font(weight)
			.fontSize(sizeMm * pointsPerMm)
			.fillColor(fill);
		for (const [index, line] of lines.entries()) {
			const width = anchor === 'start' ? 0 : document.widthOfString(line);
			const startMm = xMm + (index === 0 ? 0 : restMm);
			const x = startMm * pointsPerMm - (anchor === 'middle' ? width / 2 : width);
			const y = (footMm + index * sizeMm * lineHeight) * pointsPerMm;
			// A space keeps the words of two lines apart for readers that join them.
			const words = index < lines.length - 1 ? `${line} ` : line;
			document.text(words, x, y, {lineBreak: false, baseline: 'alphabetic'});
		}
	});
}

function ornament(document: Document, item: PageDrawing): void {
	document.markContent('Artifact', {type: 'Layout'});
	placeDrawing(document, item);
	document.endMarkedContent();
}

function placeDrawing(document: Document, {svg, box, xMm, yMm, widthMm, heightMm}: PageDrawing): void {
	const whole = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewOf(box)}" stroke-linejoin="round" stroke-linecap="round">${svg}</svg>`;
	drawSvg(document, whole, xMm * pointsPerMm, yMm * pointsPerMm, {
		width: widthMm * pointsPerMm,
		height: heightMm * pointsPerMm,
		preserveAspectRatio: 'none',
		assumePt: true,
		warningCallback: warning => {
			throw new Error(`Expected a drawing that a PDF can hold; svg-to-pdfkit says: ${warning}`);
		},
	});
}
