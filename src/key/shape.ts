/**
 * What a case looks like, as numbers: enough to draw it. Shares are of the length or the width of the whole case,
 * lengths from apron border to apron border, widths with keels.
 */
import {z} from 'zod';

const share = z.number().min(0).max(1);
const border = z.enum(['straight', 'bulging', 'hollow']);

const apron = z.strictObject({
	/** Share of the length. */
	depth: share.max(0.4),
	border,
});

const horns = z.strictObject({
	/** Along its curve, in lengths of the case. */
	length: z.number().min(0).max(2),
	/** At its foot, share of the width. */
	thickness: share.max(0.4),
	/** Degrees that it bends over its whole length; towards the other horn of its end, outwards below zero. */
	turn: z.number().min(-180).max(360),
	/** Further degrees that its last quarter bends inwards. */
	hook: z.number().min(0).max(270),
	/** Its far half is as thin as a thread. */
	thread: z.boolean(),
	/** It bends upwards, away from what the case lies on. */
	rises: z.boolean(),
	/** Blunt at the end. */
	blunt: z.boolean(),
});

const groups = {
	form: z.strictObject({kind: z.enum(['pouch', 'screw'])}),
	size: z.strictObject({lengthMm: z.number().positive(), widthMm: z.number().positive()}),
	/** Widths of the closed part at its two ends, shares of its greatest; where it is widest, from the front. */
	sides: z.strictObject({front: share.min(0.2), back: share.min(0.2), widestAt: share.min(0.1).max(0.9)}),
	frontApron: apron,
	backApron: apron,
	frontHorns: horns,
	backHorns: horns,
	/** Curly strings, in lengths of the case, one at each corner; thickness is a share of the width. */
	tendrils: z.strictObject({
		front: z.number().min(0).max(20),
		back: z.number().min(0).max(20),
		thickness: share.max(0.3),
	}),
	/** Width of one blade as a share of the whole width; where it begins and ends, from the front. */
	blades: z.strictObject({width: share.max(0.3), from: share, to: share, groove: z.boolean()}),
	/** Hairs along the sides, from where to where, from the front. */
	rim: z.strictObject({hairs: z.boolean(), from: share, to: share}),
	/** Lines from end to end. */
	grain: z.strictObject({count: z.number().int().min(0).max(60), strength: z.enum(['fine', 'strong'])}),
	surface: z.strictObject({
		net: z.boolean(),
		ridges: z.boolean(),
		prickles: z.boolean(),
		hairs: z.boolean(),
		bark: z.boolean(),
		fur: z.boolean(),
		/** The underside beside the top. */
		under: z.enum(['same', 'smoother']),
	}),
	/** Heights above and below the rim, shares of the width. */
	dome: z.strictObject({above: share.max(0.6), below: share.max(0.6)}),
} as const;

/** Everything that a drawing needs. */
export const shapeSchema = z.strictObject(groups);

/** Some of it: what one state stands for, or what is known of one kind. */
export const partialShapeSchema = z.strictObject({
	form: groups.form.partial().optional(),
	size: groups.size.optional(),
	sides: groups.sides.partial().optional(),
	frontApron: apron.partial().optional(),
	backApron: apron.partial().optional(),
	frontHorns: horns.partial().optional(),
	backHorns: horns.partial().optional(),
	tendrils: groups.tendrils.partial().optional(),
	blades: groups.blades.partial().optional(),
	rim: groups.rim.partial().optional(),
	grain: groups.grain.partial().optional(),
	surface: groups.surface.partial().optional(),
	dome: groups.dome.partial().optional(),
});

/** What a case looks like, as numbers. */
export type Shape = z.output<typeof shapeSchema>;
/** A part of what a case looks like. */
export type PartialShape = z.output<typeof partialShapeSchema>;
/** The name of one group of a shape. */
export type ShapeGroup = keyof Shape;

const plainHorns = {
	length: 0.25,
	thickness: 0.12,
	turn: 20,
	hook: 30,
	thread: false,
	rises: false,
	blunt: false,
};

/** A plain broad case of no kind: what is drawn where nothing is said. Judged, no measured case. */
export const plainShape: Shape = {
	form: {kind: 'pouch'},
	size: {lengthMm: 75, widthMm: 50},
	sides: {front: 0.9, back: 0.86, widestAt: 0.5},
	frontApron: {depth: 0.07, border: 'straight'},
	backApron: {depth: 0.05, border: 'straight'},
	frontHorns: plainHorns,
	backHorns: {...plainHorns, length: 0.2},
	tendrils: {front: 0, back: 0, thickness: 0.04},
	blades: {width: 0, from: 0, to: 1, groove: false},
	rim: {hairs: false, from: 0, to: 1},
	grain: {count: 11, strength: 'fine'},
	surface: {net: false, ridges: false, prickles: false, hairs: false, bark: false, fur: false, under: 'same'},
	dome: {above: 0.26, below: 0.1},
};

/** A shape with parts of it said anew, later parts last; throws when the outcome is no shape. */
export function withParts(shape: Shape, ...parts: readonly PartialShape[]): Shape {
	const said = parts.map(part => new Map(Object.entries(part)));
	const merged = Object.entries(shape).map(
		([group, values]) => [group, Object.assign({}, values, ...said.map(part => part.get(group)))] as const,
	);
	return shapeSchema.parse(Object.fromEntries(merged));
}

/** Every value of a partial shape with its place, as `group.name`; sizes are told by their proportion. */
export function leavesOf(part: PartialShape): ReadonlyMap<string, string | number | boolean> {
	const {size, sides, ...others} = part;
	const {front, back, ...where} = sides ?? {};
	const isWhole = front !== undefined && back !== undefined;
	// Which end is the narrower one is told by nobody who does not know front from back.
	const narrower = isWhole ? {narrower: Math.min(front, back) / Math.max(front, back)} : {front, back};
	const rest = {...others, sides: {...where, ...narrower}};
	const leaves = Object.entries(rest).flatMap(([group, values]) =>
		Object.entries(values ?? {}).flatMap(([name, value]) =>
			value === undefined ? [] : [[`${group}.${name}`, value] as const],
		),
	);
	const proportion = size ? [['size.proportion', size.lengthMm / size.widthMm] as const] : [];
	return new Map<string, string | number | boolean>([...proportion, ...leaves]);
}
