/** Light as it fell on the camera, from a picture's levels: only of light is a mixture of two colours the mean of both. */

/** For each level of a picture the amount of light, from 0 to 255 as well (IEC 61966-2-1). */
const amounts = Float32Array.from({length: 257}, (_, level) => {
	const share = Math.min(255, level) / 255;
	return 255 * (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4);
});

/** Turns levels, which may lie between whole ones, into amounts of light in place. */
export function toAmounts(levels: Float32Array): void {
	for (let at = 0; at < levels.length; at += 1) {
		const level = levels[at] ?? 0;
		const whole = Math.floor(level);
		const [below, above] = [amounts[whole] ?? 0, amounts[whole + 1] ?? 0];
		levels[at] = below + (level - whole) * (above - below);
	}
}
