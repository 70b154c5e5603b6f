/** Pictures laid on the table, or lying a little above it. */
import sharp from 'sharp';

/** A picture with see-through parts, in table millimetres. */
export type Layer = {
	readonly rgba: Uint8Array;
	readonly widthPx: number;
	readonly heightPx: number;
	readonly pxPerMm: number;
	/** Its middle on the table. */
	readonly atMm: readonly [number, number];
	/** How far it is turned, in radians. */
	readonly turn: number;
	readonly heightMm: number;
	/** Darkens what lies below by its opacity instead of covering it. */
	readonly isShadow?: boolean;
};

/** Draws SVG into a layer; its view box is in millimetres. */
export async function layerOf(
	svg: string,
	{pxPerMm, widthMm}: {pxPerMm: number; widthMm: number},
	place: Pick<Layer, 'atMm' | 'turn' | 'heightMm'>,
): Promise<Layer> {
	const width = Math.round(widthMm * pxPerMm);
	const {data, info} = await sharp(Buffer.from(svg.replace('<svg ', `<svg width="${width}" `)), {
		unlimited: true,
	})
		.ensureAlpha()
		.raw()
		.toBuffer({resolveWithObject: true});
	return {rgba: new Uint8Array(data), widthPx: info.width, heightPx: info.height, pxPerMm, ...place};
}

/** The shadow that a layer throws: its shape, pushed aside and blurred. */
export async function shadowOf(
	layer: Layer,
	{by, blurMm, strength}: {by: readonly [number, number]; blurMm: number; strength: number},
): Promise<Layer> {
	const pxPerMm = 3;
	const alpha = await sharp(layer.rgba, {raw: {width: layer.widthPx, height: layer.heightPx, channels: 4}})
		.extractChannel(3)
		.resize({width: Math.round((layer.widthPx / layer.pxPerMm) * pxPerMm)})
		.blur(Math.max(0.35, blurMm * pxPerMm))
		.raw()
		.toBuffer({resolveWithObject: true});
	const {width, height, channels} = alpha.info;
	const rgba = new Uint8Array(width * height * 4);
	for (let index = 0; index < width * height; index += 1) {
		rgba[index * 4 + 3] = Math.round((alpha.data[index * channels] ?? 0) * strength);
	}
	return {
		rgba,
		widthPx: width,
		heightPx: height,
		pxPerMm,
		atMm: [layer.atMm[0] + by[0], layer.atMm[1] + by[1]],
		turn: layer.turn,
		heightMm: 0,
		isShadow: true,
	};
}

/** Lays a layer over a colour at a point of its own plane; `colour` is changed in place. */
export function coverWith(layer: Layer, xMm: number, yMm: number, colour: Float32Array): void {
	const {rgba, widthPx, heightPx, pxPerMm, atMm, turn} = layer;
	const dx = xMm - atMm[0];
	const dy = yMm - atMm[1];
	const cos = Math.cos(turn);
	const sin = Math.sin(turn);
	// The nearest point will do: there are several for each pixel of the photo.
	const x = Math.floor((cos * dx + sin * dy) * pxPerMm + widthPx / 2);
	const y = Math.floor((cos * dy - sin * dx) * pxPerMm + heightPx / 2);
	if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) return;
	const at = (y * widthPx + x) * 4;
	const alpha = (rgba[at + 3] ?? 0) / 255;
	if (alpha === 0) return;
	if (layer.isShadow) {
		// Light of the sky reaches into a shadow, so it is a little blue.
		colour[0] = (colour[0] ?? 0) * (1 - alpha);
		colour[1] = (colour[1] ?? 0) * (1 - 0.98 * alpha);
		colour[2] = (colour[2] ?? 0) * (1 - 0.95 * alpha);
		return;
	}
	colour[0] = (colour[0] ?? 0) * (1 - alpha) + alpha * (rgba[at] ?? 0);
	colour[1] = (colour[1] ?? 0) * (1 - alpha) + alpha * (rgba[at + 1] ?? 0);
	colour[2] = (colour[2] ?? 0) * (1 - alpha) + alpha * (rgba[at + 2] ?? 0);
}
