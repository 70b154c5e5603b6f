/** Takes the photo: ground and layers through the camera, with its light, blur, noise and compression. */
import sharp from 'sharp';
import {normal, type Pick} from '../../../src/key/random.ts';
import {backwards, type CameraStand, through, viewOfPlane} from './camera.ts';
import type {Ground} from './ground.ts';
import {coverWith, type Layer} from './layer.ts';

/** How light falls and what the camera makes of it. */
export type Light = {
	/** Brighter to one side: the share gained or lost from the middle to the corner, across and down. */
	readonly slope: readonly [number, number];
	/** Share of light lost in the corners. */
	readonly vignette: number;
	/** Gains of red, green, blue. */
	readonly cast: readonly [number, number, number];
	/** The edge of somebody's shadow over the photo: a line, how dark, how soft in pixels. */
	readonly shade?: {
		readonly angle: number;
		readonly offset: number;
		readonly dark: number;
		readonly softPx: number;
	};
	readonly blurPx: number;
	readonly noise: number;
	readonly quality: number;
	/** Radial distortion at the corner, as a share of the distance. */
	readonly bend: number;
};

/** A photo to be taken. */
export type Scene = {
	readonly stand: CameraStand;
	readonly ground: Ground;
	readonly layers: readonly Layer[];
	readonly light: Light;
	/** An EXIF orientation to store the photo by. */
	readonly orientation?: 3 | 6 | 8;
};

/** Takes a photo as JPEG bytes. */
export async function shoot(scene: Scene, pick: Pick): Promise<Uint8Array> {
	const {stand, light} = scene;
	const {widthPx: width, heightPx: height} = stand;
	const raw = expose(scene);
	const blurred =
		light.blurPx > 0.3
			? await sharp(raw, {raw: {width, height, channels: 3}})
					.blur(light.blurPx)
					.raw()
					.toBuffer()
			: raw;
	// Enough grains that nobody sees them come again, and few enough to be drawn quickly.
	const grains = Float32Array.from({length: 65_537}, () => light.noise * normal(pick));
	const begin = Math.floor(pick() * 65_537);
	for (let index = 0; index < blurred.length; index += 1) {
		const value = (blurred[index] ?? 0) + (grains[(index + begin) % 65_537] ?? 0);
		blurred[index] = Math.max(0, Math.min(255, value));
	}
	let photo = sharp(blurred, {raw: {width, height, channels: 3}});
	const {orientation} = scene;
	if (orientation !== undefined) {
		photo = photo.rotate({3: 180, 6: 270, 8: 90}[orientation]);
	}
	return photo
		.withMetadata(orientation === undefined ? {} : {orientation})
		.jpeg({quality: light.quality})
		.toBuffer();
}

/** Samples across a pixel, and down. */
const across = 2;

function expose(scene: Scene): Uint8Array {
	const {widthPx: width, heightPx: height} = scene.stand;
	const out = new Uint8Array(width * height * 3);
	const views = viewsOf(scene);
	const [colour, sum] = [new Float32Array(3), new Float32Array(3)];
	for (let y = 0; y < height; y += 1) {
		for (let x = 0; x < width; x += 1) {
			sum.fill(0);
			for (let sample = 0; sample < across * across; sample += 1) {
				const px = x + ((sample % across) + 0.5) / across;
				const py = y + ((sample >> 1) + 0.5) / across;
				seeAt(views, {scene, px, py}, colour);
				sum[0] = (sum[0] ?? 0) + (colour[0] ?? 0);
				sum[1] = (sum[1] ?? 0) + (colour[1] ?? 0);
				sum[2] = (sum[2] ?? 0) + (colour[2] ?? 0);
			}
			const shone = brightness(x / width - 0.5, y / height - 0.5, scene) / across ** 2;
			for (let channel = 0; channel < 3; channel += 1) {
				const value = (sum[channel] ?? 0) * shone * (scene.light.cast[channel] ?? 1);
				out[(y * width + x) * 3 + channel] = Math.max(0, Math.min(255, value));
			}
		}
	}
	return out;
}

type View = {
	readonly layer?: Layer;
	readonly back: Float64Array;
	/** The part of the photo where the layer may be. */
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly bottom: number;
};

function viewsOf({stand, layers}: Scene): readonly View[] {
	const everywhere = {left: -Infinity, right: Infinity, top: -Infinity, bottom: Infinity};
	const flat = {back: Float64Array.from(backwards(viewOfPlane(stand, 0))), ...everywhere};
	return [flat, ...layers.map(layer => viewOfLayer(stand, layer))];
}

function viewOfLayer(stand: CameraStand, layer: Layer): View {
	const view = viewOfPlane(stand, layer.heightMm);
	const [halfWide, halfHigh] = [layer.widthPx / layer.pxPerMm / 2, layer.heightPx / layer.pxPerMm / 2];
	const [cos, sin] = [Math.cos(layer.turn), Math.sin(layer.turn)];
	const corners = [-1, 1].flatMap(a =>
		[-1, 1].map(b => {
			const [x, y] = [a * halfWide, b * halfHigh];
			return through(view, [layer.atMm[0] + cos * x - sin * y, layer.atMm[1] + sin * x + cos * y]);
		}),
	);
	const xs = corners.map(([x]) => x);
	const ys = corners.map(([, y]) => y);
	const room = 12;
	return {
		layer,
		back: Float64Array.from(backwards(view)),
		left: Math.min(...xs) - room,
		right: Math.max(...xs) + room,
		top: Math.min(...ys) - room,
		bottom: Math.max(...ys) + room,
	};
}

type Spot = {readonly scene: Scene; readonly px: number; readonly py: number};

function seeAt(views: readonly View[], {scene, px, py}: Spot, colour: Float32Array): void {
	const {stand, light, ground} = scene;
	let [x, y] = [px, py];
	if (light.bend !== 0) {
		const cx = stand.widthPx / 2;
		const cy = stand.heightPx / 2;
		const by = 1 + (light.bend * ((px - cx) ** 2 + (py - cy) ** 2)) / (cx * cx + cy * cy);
		x = cx + (px - cx) * by;
		y = cy + (py - cy) * by;
	}
	for (const {layer, back, left, right, top, bottom} of views) {
		if (px < left || px > right || py < top || py > bottom) continue;
		const w = (back[6] ?? 0) * x + (back[7] ?? 0) * y + (back[8] ?? 0);
		const xMm = ((back[0] ?? 0) * x + (back[1] ?? 0) * y + (back[2] ?? 0)) / w;
		const yMm = ((back[3] ?? 0) * x + (back[4] ?? 0) * y + (back[5] ?? 0)) / w;
		if (layer) coverWith(layer, xMm, yMm, colour);
		else ground(xMm, yMm, colour);
	}
}

function brightness(u: number, v: number, {stand, light}: Scene): number {
	const even = 1 + 2 * (light.slope[0] * u + light.slope[1] * v);
	const lit = even * (1 - light.vignette * 2 * (u * u + v * v));
	const {shade} = light;
	if (!shade) return lit;
	const far = (Math.cos(shade.angle) * u + Math.sin(shade.angle) * v - shade.offset) * stand.widthPx;
	const share = Math.max(0, Math.min(1, far / shade.softPx + 0.5));
	return lit * (1 - shade.dark * share);
}
