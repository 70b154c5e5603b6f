/** Which way an angle is measured, when the text says so. */
export type Axis = 'latitude' | 'longitude' | undefined;

/**
 * One half of a pair of coordinates: degrees, and half the worth of its last digit, in degrees. `impossible` are
 * sixty minutes and more, or a minus sign against the letter.
 */
export type AngleRead =
	| {readonly kind: 'angle'; readonly degrees: number; readonly halfStep: number; readonly axis: Axis}
	| {readonly kind: 'impossible'}
	| {readonly kind: 'unreadable'};

const shape = /^([NSEWφλ]*) ?([+-]?)(\d[^NSEW]*?) ?([NSEW]?)$/;
const marks = 'dms';

/**
 * Reads one angle out of tidied text: capitals N S E W before or after, φ or λ before it for a written "lat" or
 * "lon", then degrees with or without minutes and seconds.
 */
export function readAngle(text: string): AngleRead {
	const [, before = '', sign = '', figures = '', after = ''] = shape.exec(text) ?? [];
	const parts = readParts(figures);
	const letters = before + after;
	const axis = axisOf(letters);
	if (!parts || axis === 'both') return {kind: 'unreadable'};
	const [degrees = 0, minutes = 0, seconds = 0] = parts.values;
	const negative = sign === '-';
	if (minutes >= 60 || seconds >= 60 || (negative && /[NE]/.test(letters))) return {kind: 'impossible'};
	const size = degrees + minutes / 60 + seconds / 3600;
	return {
		kind: 'angle',
		degrees: size === 0 || !(negative || /[SW]/.test(letters)) ? size : -size,
		halfStep: 0.5 * 10 ** -parts.decimals * 60 ** (1 - parts.values.length),
		axis,
	};
}

function axisOf(letters: string): Axis | 'both' {
	const latitude = /[NSφ]/.test(letters);
	const longitude = /[EWλ]/.test(letters);
	if (latitude && longitude) return 'both';
	return latitude ? 'latitude' : longitude ? 'longitude' : undefined;
}

function readParts(
	figures: string,
): {readonly values: readonly number[]; readonly decimals: number} | undefined {
	const words = figures
		.replace(/ (?=[°'"])/g, '')
		.replaceAll('°', 'd ')
		.replaceAll("'", 'm ')
		.replaceAll('"', 's ')
		.split(' ')
		.filter(word => word !== '');
	if (words.length === 0 || words.length > 3) return undefined;
	const last = words.length - 1;
	const fits = words.every((word, index) => {
		const [, decimals, mark] = /^\d+(\.\d+)?([dms]?)$/.exec(word) ?? [];
		return mark !== undefined && (mark === '' || mark === marks[index]) && (index === last || !decimals);
	});
	if (!fits) return undefined;
	const values = words.map(word => Number.parseFloat(word));
	return {values, decimals: /\.(\d+)/.exec(words[last] ?? '')?.[1]?.length ?? 0};
}
