/** How far two pictures look different. */
import pixelmatch from 'pixelmatch';
import sharp from 'sharp';

/** The share of pixels that look different; 1 for pictures of different sizes. */
export async function differing(one: Buffer, other: Buffer): Promise<number> {
	const [a, b] = await Promise.all(
		[one, other].map(png => sharp(png).ensureAlpha().raw().toBuffer({resolveWithObject: true})),
	);
	if (!a || !b || a.info.width !== b.info.width || a.info.height !== b.info.height) return 1;
	const {width, height} = a.info;
	return pixelmatch(a.data, b.data, undefined, width, height, {threshold: 0.15}) / (width * height);
}
