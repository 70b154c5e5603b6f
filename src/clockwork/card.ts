/** The card of a result as an image: drawn, its photo laid in, small enough for one bar of signal. */
import sharp, {type Sharp} from 'sharp';
import {cardContent} from '../draw/card-content.ts';
import type {PhotoPlace} from '../draw/card-figures.ts';
import {drawFindCard} from '../draw/find-card.ts';
import {card as cardSizes, colours, sentWidthPx} from '../draw/palette.ts';
import type {DrawnFrom} from '../draw/wanted.ts';
import type {CallCard} from '../store/picture.ts';
import {photoPath} from './photo-files.ts';

/** The most bytes of a card. */
export const mostCardBytes = 300_000;

type Photo = NonNullable<CallCard['photo']>;
type Size = {readonly widthPx: number; readonly heightPx: number};

/** Shortlists are long: at the width of other cards they would take half as much time again. */
const listWidthPx = 900;
/** Of an SVG without millimetres, this density makes one pixel of a unit. */
const onePxPerUnit = 72;
const qualities = [80, 60, 40] as const;

/** The bytes of a card: JPEG with its photo, PNG without; a photo that cannot be read is left out. */
export async function cardImage(
	card: CallCard,
	{from, photoFolder}: {from: DrawnFrom; photoFolder: string},
): Promise<Uint8Array> {
	const {photo} = card;
	if (photo) {
		try {
			return await withPhoto(card, {from, photo, file: photoPath(photoFolder, photo.hash)});
		} catch {
			// Gone or broken: the card says no word of a photo then.
		}
	}
	const {svg} = drawFindCard(cardContent(card, from, undefined));
	return sharp(Buffer.from(svg), {density: onePxPerUnit * pxPerUnitOf(card)})
		.png({compressionLevel: 7})
		.toBuffer();
}

async function withPhoto(
	card: CallCard,
	{from, photo, file}: {from: DrawnFrom; photo: Photo; file: string},
): Promise<Uint8Array> {
	const {width: widthPx, height: heightPx} = await sharp(file).metadata();
	const {svg, photoAt} = drawFindCard(cardContent(card, from, widthPx / heightPx));
	if (!photoAt) throw new Error('Expected a card with room for its photo; it has none');
	const pxPerUnit = pxPerUnitOf(card);
	const laid = await photoInPlace(file, {
		photo,
		photoAt,
		size: {widthPx, heightPx},
		lengthMm: card.length?.mm,
		pxPerUnit,
	});
	const whole = sharp(Buffer.from(svg), {density: onePxPerUnit * pxPerUnit})
		.removeAlpha()
		.composite([laid]);
	return smallEnough(whole);
}

async function smallEnough(image: Sharp): Promise<Uint8Array> {
	let bytes = Buffer.of();
	for (const quality of qualities) {
		bytes = await image.clone().jpeg({quality}).toBuffer();
		if (bytes.byteLength < mostCardBytes) break;
	}
	return bytes;
}

type InPlace = {
	readonly photo: Photo;
	readonly photoAt: PhotoPlace;
	readonly size: Size;
	readonly lengthMm: number | undefined;
	readonly pxPerUnit: number;
};

function pxPerUnitOf({sure}: CallCard): number {
	return (sure === 'shortlist' ? listWidthPx : sentWidthPx) / cardSizes.widthUnits;
}

async function photoInPlace(file: string, {photo, photoAt, size, lengthMm, pxPerUnit}: InPlace) {
	const [left, top] = [Math.round(photoAt.left * pxPerUnit), Math.round(photoAt.top * pxPerUnit)];
	const box = {
		widthPx: Math.round(photoAt.width * pxPerUnit),
		heightPx: Math.round(photoAt.height * pxPerUnit),
	};
	const {ends} = photo;
	const {unitsPerMm} = photoAt;
	const isScaled = ends !== undefined && unitsPerMm !== undefined && lengthMm !== undefined;
	const shown = isScaled
		? await cutOut(file, {ends, box, size, caseLongPx: lengthMm * unitsPerMm * pxPerUnit})
		: sharp(file).resize({width: box.widthPx, height: box.heightPx, fit: 'fill'});
	const {data, info} = await shown.removeAlpha().raw().toBuffer({resolveWithObject: true});
	return {input: data, raw: info, left, top};
}

type CutOut = {
	readonly ends: NonNullable<Photo['ends']>;
	readonly box: Size;
	readonly size: Size;
	/** How long the case is to be in the cut-out. */
	readonly caseLongPx: number;
};

/** What lies round the case, turned so that its front is up and shrunk or grown to its length. */
async function cutOut(file: string, {ends, box, size, caseLongPx}: CutOut): Promise<Sharp> {
	const at = ([x, y]: readonly [number, number]) => ({x, y});
	const [front, back] = [at(ends.front), at(ends.back)];
	const scale = caseLongPx / Math.hypot(front.x - back.x, front.y - back.y);
	const degrees = (Math.atan2(back.x - front.x, back.y - front.y) * 180) / Math.PI;
	// A square round the case that holds the box however it is turned.
	const reach = Math.ceil(Math.hypot(box.widthPx, box.heightPx) / 2 / scale) + 2;
	const [x, y] = [Math.round((front.x + back.x) / 2), Math.round((front.y + back.y) / 2)];
	const [left, top] = [Math.max(0, x - reach), Math.max(0, y - reach)];
	const [right, bottom] = [Math.min(size.widthPx, x + reach), Math.min(size.heightPx, y + reach)];
	const side = Math.round(2 * reach * scale);
	const around = await sharp(file)
		.extract({left, top, width: right - left, height: bottom - top})
		.resize({
			width: Math.max(1, Math.round((right - left) * scale)),
			height: Math.max(1, Math.round((bottom - top) * scale)),
			fit: 'fill',
		})
		.removeAlpha()
		.raw()
		.toBuffer({resolveWithObject: true});
	const [padLeft, padTop] = [left - (x - reach), top - (y - reach)].map(px => Math.round(px * scale));
	const square = await sharp({create: {width: side, height: side, channels: 3, background: colours.card}})
		.composite([{input: around.data, raw: around.info, left: padLeft ?? 0, top: padTop ?? 0}])
		.raw()
		.toBuffer({resolveWithObject: true});
	const turned = await sharp(square.data, {raw: square.info})
		.rotate(degrees, {background: colours.card})
		.raw()
		.toBuffer({resolveWithObject: true});
	return sharp(turned.data, {raw: turned.info}).extract({
		left: Math.round((turned.info.width - box.widthPx) / 2),
		top: Math.round((turned.info.height - box.heightPx) / 2),
		width: box.widthPx,
		height: box.heightPx,
	});
}
