import {z} from 'zod';

const refusalSchema = z.object({
	kind: z.literal('refusal'),
	code: z.number(),
	parameters: z.record(z.string(), z.unknown()).optional(),
});

/** What the platform says when it refuses a call. */
export type Refusal = {
	readonly code: number;
	readonly description: string;
	readonly parameters?: Readonly<Record<string, unknown>> | undefined;
};

/** An error to throw inside a method; the caller of the method gets it as a platform answer. */
export function refusal(code: number, description: string, parameters?: Refusal['parameters']): Error {
	return new Error(description, {cause: {kind: 'refusal', code, parameters}});
}

/** A refusal with code 400 and the usual beginning. */
export function badRequest(reason: string): Error {
	return refusal(400, `Bad Request: ${reason}`);
}

/** The refusal inside a caught error, or undefined when the room itself went wrong. */
export function refusalIn(error: unknown): Refusal | undefined {
	if (!(error instanceof Error)) return undefined;
	const parsed = refusalSchema.safeParse(error.cause);
	if (!parsed.success) return undefined;
	return {code: parsed.data.code, description: error.message, parameters: parsed.data.parameters};
}
