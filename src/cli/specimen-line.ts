/** One line of JSON read as a specimen of a region. */
import {z} from 'zod';
import {parts} from '../key/check-ids.ts';
import {quoted} from '../key/checkable.ts';
import {cantTell, type Observed, type Sized} from '../key/observed.ts';
import type {Key, Region} from '../key/region.ts';
import type {Shortening} from '../key/shrink.ts';

/** A specimen, or one sentence saying what was expected and what came. */
export type SpecimenRead =
	| {readonly kind: 'specimen'; readonly observed: Observed}
	| {readonly kind: 'refused'; readonly why: string};

/** Reads one specimen in millimetres and in the words of the region's key. */
export type ReadSpecimen = (text: string) => SpecimenRead;

/** Our choice, as for a length that a person types: nothing measured with a ruler in a hand is surer. */
const uncertaintyMm = 1;
/** A size without any uncertainty can lie on the border of two bands and in neither. */
const leastUncertaintyMm = 0.001;
const measures = ['length', 'width'] as const;

/** Builds the reader of a region; characters may stand under `characters` or beside the sizes. */
export function specimenReader(region: Region): ReadSpecimen {
	const schema = schemaOf(region.key);
	return text => {
		const json = parseJson(text);
		if (json === undefined) return refused(`Expected one JSON object a line; got ${short(text)}`);
		const parsed = schema.safeParse(json);
		if (!parsed.success) return refused(parsed.error.issues.map(issue => sayIssue(issue, json)).join('; '));
		const {length, width, lengthUncertainty, widthUncertainty, bound, lost, characters, ...beside} =
			parsed.data;
		const [within, outside] = [statesIn(characters), statesIn(beside)];
		const twice = Object.keys(within).filter(id => Object.hasOwn(outside, id));
		if (twice.length > 0) return refused(`Expected "${twice[0]}" once; got it twice`);
		const sized = (mm: number | undefined, uncertainty: number | undefined, why?: Shortening): Sized =>
			mm === undefined
				? {kind: 'unknown'}
				: {
						kind: bound ?? (why ? 'at-least' : 'exact'),
						mm,
						uncertaintyMm: Math.max(uncertainty ?? uncertaintyMm, leastUncertaintyMm),
						...(why && bound !== 'exact' ? {shortBy: [why]} : {}),
					};
		return {
			kind: 'specimen',
			observed: {
				seen: {...within, ...outside},
				// What a conversation takes for a lower bound counts as one here, unless the line says otherwise.
				length: sized(length, lengthUncertainty, lost.includes('aprons') ? 'aprons' : undefined),
				width: sized(width, widthUncertainty, lost.includes('sides') ? 'sides' : undefined),
				lost,
			},
		};
	};
}

function schemaOf({characters, possibleMm}: Key) {
	const states = Object.fromEntries(
		Object.entries(characters).map(([id, character]) => [
			id,
			z.enum([...character.states, cantTell]).optional(),
		]),
	);
	const size = ([low, high]: readonly [number, number]) => z.number().min(low).max(high).optional();
	return z
		.strictObject({
			...states,
			length: size(possibleMm.length),
			width: size(possibleMm.width),
			lengthUncertainty: z.number().min(0).optional(),
			widthUncertainty: z.number().min(0).optional(),
			bound: z.enum(['exact', 'at-least']).optional(),
			lost: z.array(z.enum(parts)).default([]),
			characters: z.strictObject(states).default({}),
		})
		.superRefine((line, context) => {
			for (const measure of measures) {
				if (line[measure] === undefined && line[`${measure}Uncertainty`] !== undefined) {
					context.addIssue({code: 'custom', message: `Expected "${measure}" beside "${measure}Uncertainty"`});
				}
			}
		});
}

function statesIn(values: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> {
	const states: Record<string, string> = {};
	for (const [id, state] of Object.entries(values)) if (typeof state === 'string') states[id] = state;
	return states;
}

function sayIssue(issue: z.core.$ZodIssue, json: unknown): string {
	const where = issue.path.length === 0 ? 'one JSON object a line' : `"${issue.path.map(String).join('.')}"`;
	const got = short(JSON.stringify(valueAt(json, issue.path)) ?? 'nothing');
	switch (issue.code) {
		case 'unrecognized_keys':
			return `Expected ${issue.path.length === 0 ? 'only sizes and characters' : `only characters in ${where}`}, which the command "vocabulary" lists; got ${quoted(issue.keys)}`;
		case 'invalid_value':
			return `Expected ${where} to be ${issue.values.map(value => `"${String(value)}"`).join(' or ')}; got ${got}`;
		case 'invalid_type':
			return issue.path.length === 0
				? `Expected ${where}; got ${got}`
				: `Expected ${where} to be a ${issue.expected}; got ${got}`;
		case 'too_small':
			return `Expected ${where} to be at least ${issue.minimum} mm; got ${got}`;
		case 'too_big':
			return `Expected ${where} to be at most ${issue.maximum} mm; got ${got}`;
		default:
			return issue.message;
	}
}

function valueAt(json: unknown, path: readonly PropertyKey[]): unknown {
	let value = json;
	for (const step of path) {
		if (typeof value !== 'object' || value === null) return undefined;
		value = Reflect.get(value, step);
	}
	return value;
}

function parseJson(text: string): unknown {
	try {
		const json: unknown = JSON.parse(text);
		return json;
	} catch {
		return undefined;
	}
}

function short(text: string): string {
	return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

function refused(why: string): SpecimenRead {
	return {kind: 'refused', why};
}
