/** A case that is wound like a screw, seen from the side: a cone with a blade running round it. */
import type {Shape} from '../key/shape.ts';
import {type Point, upTo} from './path.ts';

/** Full turns of the blade; judged. */
const turns = 5;
const steps = 24;

/** The parts of a screw in millimetres, back ones first: the cone, and each turn of the blade. */
export function screwParts({size}: Shape): {
	readonly cone: readonly Point[];
	readonly blades: readonly (readonly Point[])[];
} {
	const {lengthMm, widthMm} = size;
	const downAt = (along: number) => -lengthMm / 2 + along * lengthMm;
	const outAt = (along: number) => (widthMm / 2) * (1 - 0.72 * Math.max(0, along - 0.16) ** 1.15);
	const coneAt = (along: number) => outAt(along) * 0.62;
	const right = upTo(steps).map(
		(step): Point => [coneAt(step / steps), downAt(0.02 + (0.98 * step) / steps)],
	);
	const cone = [...right, ...right.map(([x, y]): Point => [-x, y]).toReversed()];
	const pitch = 1 / (turns + 1);
	const thick = pitch * 0.34;
	const blades = upTo(turns - 1).map(turn => bladeAt(turn, {pitch, thick, outAt, downAt}));
	return {cone, blades: [lid({outAt, downAt}), ...blades]};
}

type Slant = {readonly outAt: (along: number) => number; readonly downAt: (along: number) => number};

/** The blade where it is widest, at the blunt end: as wide as the case. */
function lid({outAt, downAt}: Slant): readonly Point[] {
	const wide = outAt(0);
	return [
		[-wide, downAt(0.07)],
		[-wide * 0.75, downAt(0)],
		[wide * 0.75, downAt(0)],
		[wide, downAt(0.05)],
		[wide, downAt(0.1)],
		[-wide, downAt(0.13)],
	];
}

/** One turn seen from the side: a slanted band whose ends stand out beyond the cone. */
function bladeAt(
	turn: number,
	{pitch, thick, outAt, downAt}: Slant & {readonly pitch: number; readonly thick: number},
): readonly Point[] {
	const from = pitch * (turn + 0.75);
	const at = upTo(steps).map(step => {
		const across = step / steps;
		return {across: across * 2 - 1, along: from + pitch * 0.55 * (1 - across) + bow(across) * pitch * 0.2};
	});
	const upper = at.map(({across, along}): Point => [across * outAt(along), downAt(along)]);
	const lower = at.map(
		({across, along}): Point => [across * outAt(along + thick) * 0.98, downAt(along + thick)],
	);
	return [...upper, ...lower.toReversed()];
}

/** The near side of a turn hangs lower than its ends. */
function bow(across: number): number {
	return Math.sin(across * Math.PI);
}
