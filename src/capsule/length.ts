import {z} from 'zod';
import {type LengthUnit, readWritten, type WrittenNumber} from './written-length.ts';

export type {LengthUnit};

/** A length in millimetres with how sure it is, and where it comes from. */
const sizeParts = {
	/** Millimetres, rounded to a tenth. */
	mm: z.number().positive(),
	/** Half-width in millimetres: the true length lies between `mm` minus this and `mm` plus this. */
	uncertaintyMm: z.number().positive(),
};

/** Things of known size that a photo is measured by. */
export const references = ['a4', 'card', 'sheet'] as const;

/** Checks a length on its way in from a stored column. */
export const lengthSchema = z.discriminatedUnion('method', [
	/** `typed` is the text as written, on one line. */
	z.object({...sizeParts, typed: z.string().max(60), method: z.literal('typed')}).readonly(),
	/** Measured in a photo by what lay in it, and confirmed by the person who took it. */
	z.object({...sizeParts, method: z.literal('photo'), reference: z.enum(references)}).readonly(),
]);

/** A length that a person typed or confirmed in a photo, in millimetres, with how sure it is. */
export type Length = z.infer<typeof lengthSchema>;

/** What a text says about a length: the length, a number whose unit must be asked for, or why it was not taken. */
export type LengthRead =
	| {readonly kind: 'length'; readonly length: Length}
	| {
			readonly kind: 'which-unit';
			readonly value: number;
			readonly units: readonly LengthUnit[];
			readonly typed: string;
	  }
	| {
			readonly kind: 'refused';
			readonly why: 'not-a-number' | 'too-short' | 'too-long' | 'range' | 'several';
			readonly typed: string;
			readonly mm?: number;
	  };

/** What is asked for: the possible lengths in millimetres, and the unit once the person has chosen one. */
export type LengthAsk = {
	readonly possibleMm: readonly [number, number];
	readonly unit?: LengthUnit | undefined;
};

/** A measurement before its unit is settled; every figure is in the unit that is still to come, unless one is given. */
type Measurement = {
	readonly value: number;
	readonly halfWidth: number;
	readonly leastMm: number;
	readonly unit?: LengthUnit | undefined;
};

const longestText = 60;
// The inch has been 25.4 mm exactly since the international yard and pound agreement of 1959.
const mmIn: Readonly<Record<LengthUnit, number>> = {mm: 1, cm: 10, in: 25.4};
const allUnits = ['mm', 'cm', 'in'] as const;

// Our choice, common practice for a ruler in a hand: nothing typed is surer than 1 mm, nothing "about" than 3 mm,
// and nobody is further out than a fifth of the whole, or two ends were not one measurement.
const leastMm = 1;
const leastAboutMm = 3;
const widestShare = 0.2;

/**
 * Reads a length as people type it. Without a unit in the text or from a button, the one unit that gives a possible
 * length is taken; with several it is asked for; with none the reading nearest to the possible lengths, as a ratio,
 * says whether it is too short or too long.
 */
export function readLength(text: string, ask: LengthAsk): LengthRead {
	const line = text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
	const typed = line
		.slice(0, longestText)
		.replace(/[\uD800-\uDBFF]$/, '')
		.trim();
	if (line.length > longestText) return {kind: 'refused', why: 'not-a-number', typed};
	const measured = measure(line);
	if (typeof measured === 'string') return {kind: 'refused', why: measured, typed};
	const {value} = measured;
	if (!(value > 0 && Number.isFinite(value))) return {kind: 'refused', why: 'not-a-number', typed};
	const chosen = measured.unit ?? ask.unit;
	const units = chosen ? [chosen] : allUnits.filter(unit => misses(value * mmIn[unit], ask.possibleMm) === 1);
	if (units.length > 1) return {kind: 'which-unit', value, units, typed};
	const unit = units[0] ?? nearestUnit(value, ask.possibleMm);
	const mm = tenths(value * mmIn[unit]);
	if (mm < ask.possibleMm[0]) return {kind: 'refused', why: 'too-short', typed, mm};
	if (mm > ask.possibleMm[1]) return {kind: 'refused', why: 'too-long', typed, mm};
	return {kind: 'length', length: {mm, uncertaintyMm: uncertaintyOf(measured, unit), typed, method: 'typed'}};
}

/** Millimetres as people read them: at most one decimal, and none where it would be a nought. */
export function formatMm(mm: number): string {
	return String(tenths(mm));
}

function measure(line: string): Measurement | 'not-a-number' | 'several' | 'range' {
	const written = readWritten(line);
	switch (written.kind) {
		case 'nothing':
			return 'not-a-number';
		case 'several':
			return 'several';
		case 'one': {
			const {value, step, unit} = written.number;
			return written.isAbout
				? {value, halfWidth: step, leastMm: leastAboutMm, unit}
				: {value, halfWidth: step / 2, leastMm, unit};
		}
		case 'sum': {
			const {centimetres, millimetres} = written;
			const value = centimetres.value * 10 + millimetres.value;
			return {value, halfWidth: millimetres.step / 2, leastMm, unit: 'mm'};
		}
		case 'give-or-take': {
			const {value, unit} = written.number;
			return {value, halfWidth: inUnit(written.margin, unit), leastMm, unit};
		}
		case 'range':
			return middle(written.from, written.to);
		default:
			return never(written);
	}
}

function middle(first: WrittenNumber, second: WrittenNumber): Measurement | 'range' {
	const unit = first.unit ?? second.unit;
	const [from, to] = [inUnit(first, unit), inUnit(second, unit)];
	const value = (from + to) / 2;
	const halfWidth = Math.abs(to - from) / 2;
	return halfWidth > value * widestShare ? 'range' : {value, halfWidth, leastMm, unit};
}

function inUnit(written: WrittenNumber, unit: LengthUnit | undefined): number {
	return written.unit && unit ? (written.value * mmIn[written.unit]) / mmIn[unit] : written.value;
}

function uncertaintyOf(measured: Measurement, unit: LengthUnit): number {
	const widest = measured.value * mmIn[unit] * widestShare;
	const mm = Math.max(measured.leastMm, Math.min(measured.halfWidth * mmIn[unit], widest));
	// Rounded up, after a small step back for what binary fractions add.
	return Math.ceil(mm * 10 - 1e-6) / 10;
}

/** How many times too short or too long a length is; 1 inside the possible lengths. */
function misses(mm: number, [shortest, longest]: readonly [number, number]): number {
	const taken = tenths(mm);
	return taken < shortest ? shortest / taken : Math.max(1, taken / longest);
}

function nearestUnit(value: number, possibleMm: readonly [number, number]): LengthUnit {
	return allUnits.reduce((best, unit) =>
		misses(value * mmIn[unit], possibleMm) < misses(value * mmIn[best], possibleMm) ? unit : best,
	);
}

function tenths(mm: number): number {
	return Math.round(mm * 10 + 1e-6) / 10;
}

function never(value: never): never {
	throw new Error(`Expected a known kind of written length; got ${JSON.stringify(value)}`);
}
