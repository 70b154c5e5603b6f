/** The questions around the key, as `flows/around.yaml` holds them. */
import {z} from 'zod';
import {aroundPictures} from '../draw/around-names.ts';

const id = z.string().regex(/^[a-z][a-z0-9-]{0,23}$/);

/** What the record learns from an option. */
const notesSchema = z.strictObject({
	soak: z.enum(['dry', 'damp', 'soaked']).optional(),
	aprons: z.enum(['both', 'incomplete', 'unknown']).optional(),
	lives: z.boolean().optional(),
	doubt: z.boolean().optional(),
});

const wayOn = z.strictObject({leads: id, notes: notesSchema.optional()});
const shared = {
	says: id.optional(),
	picture: z.enum(aroundPictures).optional(),
	/** The answer also holds for another case: of the same walk, or only out of the same bowl. */
	carries: z.enum(['walk', 'bowl']).optional(),
};

const stepSchema = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('choice'),
		...shared,
		options: z.record(id, wayOn),
		cantTell: wayOn.optional(),
	}),
	z.strictObject({kind: z.literal('notice'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('photos'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('place'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('date'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('count'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('parts'), ...shared, parts: z.array(id).min(1), leads: id}),
	z.strictObject({
		kind: z.literal('soak'),
		...shared,
		twoHours: id,
		overnight: id,
		already: id,
		unsoaked: id,
	}),
	z.strictObject({
		kind: z.literal('morning'),
		...shared,
		hours: z.array(z.number().int().min(7).max(21)),
		leads: id,
	}),
	z.strictObject({kind: z.literal('soaking'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('softness'), ...shared, softer: id, stiff: id, tomorrow: id}),
	z.strictObject({kind: z.literal('length'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('key'), ...shared, leads: id}),
	z.strictObject({kind: z.literal('result'), ...shared, keep: id, throw: id}),
	z.strictObject({kind: z.literal('end'), ...shared, outcome: z.enum(['kept', 'thrown', 'not-a-case'])}),
]);

export const aroundSchema = z
	.strictObject({begins: id, steps: z.record(id, stepSchema)})
	.superRefine((around, context) => {
		for (const [name, step] of [
			['', {kind: 'notice', leads: around.begins} as const] as const,
			...Object.entries(around.steps),
		]) {
			for (const {leads} of waysOf(step)) {
				if (!around.steps[leads])
					context.addIssue({
						code: 'custom',
						path: ['steps', name],
						message: `leads to "${leads}", which is no step`,
					});
			}
		}
	});

/** One step around the key: a question, a notice or an end. */
export type Step = z.output<typeof stepSchema>;
/** What an option tells the record. */
export type Notes = z.output<typeof notesSchema>;
/** All steps around the key, and where a find begins. */
export type Around = z.output<typeof aroundSchema>;
/** How a find ends. */
export type Outcome = 'kept' | 'thrown' | 'not-a-case';

/** One arrow out of a step: the answer that takes it, where to, and what it tells the record. */
export type Way = {readonly option: string; readonly leads: string; readonly notes?: Notes | undefined};

/** The answer that goes on where nothing is chosen: a notice read, photos sent, a value given. */
export const goOn = 'go-on';

/** All arrows out of a step; `go-on` stands for a value of the step's own kind. */
export function waysOf(step: Step): readonly Way[] {
	switch (step.kind) {
		case 'choice':
			return [
				...Object.entries(step.options).map(([option, way]) => ({option, ...way})),
				...(step.cantTell ? [{option: 'cant-tell', ...step.cantTell}] : []),
			];
		case 'soak':
			return [
				{option: goOn, leads: step.twoHours},
				{option: 'overnight', leads: step.overnight},
				{option: 'already', leads: step.already, notes: {soak: 'soaked'}},
				{option: 'unsoaked', leads: step.unsoaked},
			];
		case 'softness':
			return [
				{option: 'softer', leads: step.softer, notes: {soak: 'soaked'}},
				{option: goOn, leads: step.stiff},
				{option: 'tomorrow', leads: step.tomorrow},
			];
		case 'result':
			return [
				{option: 'keep', leads: step.keep},
				{option: 'throw', leads: step.throw},
			];
		case 'end':
			return [];
		case 'notice':
		case 'photos':
		case 'place':
		case 'date':
		case 'count':
		case 'parts':
		case 'morning':
		case 'soaking':
		case 'length':
		case 'key':
			return [{option: goOn, leads: step.leads}];
	}
}
