/** What the parts of a cast photo hand each other: light, rays, and things that rays may meet. */

/** Red, green and blue as amounts of light, 1 for a white sheet in full light; written over in place, for speed. */
export type Ink = Float64Array;

/** Where a line of sight meets the table, and how far it is sideways for each millimetre above; used again and again. */
export type Ray = {x: number; y: number; dx: number; dy: number};

/** One lamp or window and the light from everywhere else. */
export type Light = {
	/** Towards the lamp, of length 1; z points up. */
	readonly x: number;
	readonly y: number;
	readonly z: number;
	/** The share of the light on the table that comes from the lamp. */
	readonly direct: number;
	/** How wide a shadow's edge is for each millimetre that the thing lies above what it falls on. */
	readonly softness: number;
};

/** Something on the table; outside its circle it is neither seen nor throws a shadow. */
export type Thing = {
	readonly atMm: readonly [number, number];
	readonly reachMm: number;
	/** The share of light left at a point of the table. */
	readonly shade: (x: number, y: number) => number;
	/** Lays its colour over what is there already; says whether an edge is near, where one look is not enough. */
	readonly paint: (ray: Ray, ink: Ink) => boolean;
	/** Where nothing below it is seen, so that nothing below need be painted. */
	readonly hides?: (x: number, y: number) => boolean;
};

/** The colour of the table at a point. */
export type Ground = (x: number, y: number, ink: Ink) => void;

/** Light from a colour as screens know it, 0 to 255 (IEC 61966-2-1). */
export function inkOf([red, green, blue]: readonly [number, number, number]): Ink {
	return Float64Array.of(lightOf(red), lightOf(green), lightOf(blue));
}

/** The amount of light of one channel of a screen, 0 to 255. */
export function lightOf(level: number): number {
	const share = level / 255;
	return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/** Takes another colour over, with all its channels made darker or lighter alike. */
export function setInk(ink: Ink, from: Ink, factor: number): void {
	ink[0] = (from[0] ?? 0) * factor;
	ink[1] = (from[1] ?? 0) * factor;
	ink[2] = (from[2] ?? 0) * factor;
}

/** Goes part of the way to another colour. */
export function mixInk(ink: Ink, to: Ink, share: number): void {
	for (let at = 0; at < 3; at += 1) ink[at] = (ink[at] ?? 0) * (1 - share) + (to[at] ?? 0) * share;
}

/** Makes a colour darker or lighter. */
export function dimInk(ink: Ink, factor: number): void {
	ink[0] = (ink[0] ?? 0) * factor;
	ink[1] = (ink[1] ?? 0) * factor;
	ink[2] = (ink[2] ?? 0) * factor;
}

/** How much light falls on a face that looks this way, 1 for one that lies flat. */
export function lit({x, y, z, direct}: Light, nx: number, ny: number): number {
	const long = Math.sqrt(nx * nx + ny * ny + 1);
	const straight = Math.max(0, (nx * x + ny * y + z) / long) / z;
	return (1 - direct) * (0.5 + 0.5 / long) + direct * Math.min(1.5, straight);
}
