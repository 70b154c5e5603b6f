/** Pictures turned to pixels, to be looked at by tests. */
import sharp from 'sharp';

/** The colour of a place of a picture, as `#rrggbb`; places in units of the drawing. */
export type ColourAt = (x: number, y: number) => string;

/** Renders a picture, one pixel for each unit. */
export async function pixelsOf(svg: string): Promise<ColourAt> {
	const picture = sharp(Buffer.from(svg), {density: 72}).removeAlpha();
	const {data, info} = await picture.raw().toBuffer({resolveWithObject: true});
	return (x, y) => {
		const at = (Math.round(y) * info.width + Math.round(x)) * info.channels;
		return `#${data.subarray(at, at + 3).toString('hex')}`;
	};
}
