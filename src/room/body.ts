import {z} from 'zod';
import {readMultipart} from './multipart.ts';

/** A file that came with a call. */
export type Upload = {readonly bytes: Uint8Array; readonly name: string; readonly mime: string};

/** What came with a call: plain values and files, by name. */
export type Body = {
	readonly fields: Readonly<Record<string, unknown>>;
	readonly uploads: ReadonlyMap<string, Upload>;
};

const recordSchema = z.record(z.string(), z.unknown());

/** Reads a call's query, and its JSON, urlencoded or multipart body; throws when it is broken. */
export async function readBody(request: Request): Promise<Body> {
	const query = Object.fromEntries(new URL(request.url).searchParams);
	const type = request.headers.get('content-type') ?? '';
	if (type.startsWith('application/json')) {
		const text = await request.text();
		const fields = text === '' ? {} : recordSchema.parse(JSON.parse(text));
		return {fields: withoutEmpty({...query, ...fields}), uploads: new Map()};
	}
	if (type.startsWith('application/x-www-form-urlencoded')) {
		const fields = Object.fromEntries(new URLSearchParams(await request.text()));
		return {fields: {...query, ...fields}, uploads: new Map()};
	}
	if (!type.startsWith('multipart/form-data')) return {fields: query, uploads: new Map()};
	const parts = readMultipart(new Uint8Array(await request.arrayBuffer()), type);
	const fields: Record<string, unknown> = {...query};
	const uploads = new Map<string, Upload>();
	for (const {name, fileName, mime, bytes} of parts) {
		if (fileName === undefined) fields[name] = Buffer.from(bytes).toString('utf8');
		else uploads.set(name, {bytes, name: fileName, mime});
	}
	return {fields, uploads};
}

/** A field that is an object or a list, also when it came as JSON text in a form. */
export function jsonField<T extends z.ZodType>(schema: T) {
	return z.preprocess(value => (typeof value === 'string' ? parsed(value) : value), schema);
}

/** A whole or broken number, also when it came as text. */
export const numberField = z.coerce.number();

/** Yes or no, also when it came as text. */
export const flagField = z.preprocess(
	value => (typeof value === 'string' ? ['true', '1', 'yes'].includes(value.toLowerCase()) : value),
	z.boolean(),
);

function parsed(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return text;
	}
}

function withoutEmpty(fields: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
	return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
}
