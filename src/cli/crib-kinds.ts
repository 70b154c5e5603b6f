/** A region's kinds as a crib sheet wants them: drawn at their middle published sizes. */

import {drawCapsule} from '../draw/capsule.ts';
import type {CribKind, CribSize} from '../draw/crib.ts';
import {lines} from '../draw/palette.ts';
import {taxonShape} from '../key/drawn.ts';
import type {Measure, Region} from '../key/region.ts';
import {withParts} from '../key/shape.ts';
import type {Say} from '../text/text.ts';

/** A plain line is 0.35 mm wide in print: thinner than what is measured with a ruler, and still a line. */
const unitsPerMm = lines.plain / 0.35;

/** In lengths of the case: at true size longer strings would take the page. */
const longestStrings = 1;

/** Every kind of a region, smallest first, so that like sizes stand together. */
export function cribKinds(region: Region, say: Say): readonly CribKind[] {
	const kinds = Object.entries(region.profiles.taxa).map(([id, {scientificName, lengthMm, widthMm}]) => {
		const {shape} = taxonShape(region, id);
		const size = {
			lengthMm: middleOf(lengthMm) ?? shape.size.lengthMm,
			widthMm: middleOf(widthMm) ?? shape.size.widthMm,
		};
		const tendrils = {
			front: Math.min(shape.tendrils.front, longestStrings),
			back: Math.min(shape.tendrils.back, longestStrings),
		};
		const kind: CribKind = {
			label: say.say(`taxon-${id}`),
			scientificName,
			length: cribSize(lengthMm, region),
			width: cribSize(widthMm, region),
			drawing: drawCapsule(withParts(shape, {size, tendrils}), {unitsPerMm}),
			hasShortStrings: Math.max(shape.tendrils.front, shape.tendrils.back) > longestStrings,
		};
		return {kind, lengthMm: size.lengthMm};
	});
	return kinds.toSorted((a, b) => a.lengthMm - b.lengthMm).map(({kind}) => kind);
}

function middleOf(measure: Measure | undefined): number | undefined {
	return measure && (measure.mean ?? (measure.range[0] + measure.range[1]) / 2);
}

function cribSize(measure: Measure | undefined, {profiles}: Region): CribSize | undefined {
	const middle = middleOf(measure);
	if (!measure || middle === undefined) return undefined;
	const source = profiles.sources[measure.source];
	const doi = source?.doi === undefined ? '' : ` doi:${source.doi}`;
	return {range: measure.range, middle, citation: `${source?.citation ?? measure.source}.${doi}`};
}
