import {expect, test} from 'vitest';
import {type Found, poseOf} from '../../src/capsule/flat-fit.ts';
import type {Point} from '../../src/capsule/raster.ts';
import {scaleSigma} from '../../src/capsule/scale-doubt.ts';
import {card} from '../../src/capsule/sizes.ts';

const frame = {width: 1281, height: 961};
const halfMm = [card.longMm / 2, card.shortMm / 2] as const;

/** A card in the middle of a photo that was taken from straight above. */
function cardOf(pxPerMm: number): Found {
	const [x, y] = [halfMm[0] * pxPerMm, halfMm[1] * pxPerMm];
	const corners = [
		[640 - x, 480 - y],
		[640 + x, 480 - y],
		[640 + x, 480 + y],
		[640 - x, 480 + y],
	] as const;
	const placed = {corners, sides: []};
	const pose = poseOf(placed, halfMm, frame);
	if (!pose) throw new Error('Expected a camera for a card seen from straight above; got none');
	return {flat: card, pose, placed, halfMm, score: 1};
}

function sigmaAt(found: Found, middle: Point, longPx = 240): number {
	const px = [
		[middle[0] - longPx / 2, middle[1]],
		[middle[0] + longPx / 2, middle[1]],
	] as const;
	return scaleSigma(found, {px, heightMm: card.thickMm}, frame);
}

test('on the card itself a scale is as sure as its corners are to its sides', () => {
	// Four corners, each 0.35 px off, of sides 342 and 216 px long: 0.35 / 342 is one in a thousand.
	const sigma = sigmaAt(cardOf(4), [640, 480]);
	expect(sigma).toBeGreaterThan(0.0005);
	expect(sigma).toBeLessThan(0.003);
});

test('a scale is less sure the farther from the card it is used, and the smaller the card is', () => {
	const near = sigmaAt(cardOf(4), [640, 640]);
	const far = sigmaAt(cardOf(4), [640, 900]);
	expect(far).toBeGreaterThan(1.5 * near);
	expect(sigmaAt(cardOf(2), [640, 640])).toBeGreaterThan(1.5 * near);
});
