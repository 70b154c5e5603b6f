/** The trail of a find: the list of what happened to it, its one truth. */
import {z} from 'zod';
import {lengthSchema} from '../capsule/length.ts';
import {placeSchema, spotSchema} from '../place/place.ts';
import {proposalSchema, traySchema} from './proposal.ts';

/** How long a soak lasts: until `dueAt`, in the zone of the person who waits for it. */
const soakSchema = z.object({
	kind: z.literal('soak'),
	plan: z.enum(['two-hours', 'overnight', 'one-more-hour']),
	startedAt: z.number().int(),
	dueAt: z.number().int(),
	zone: z.string(),
});

export const answerSchema = z.discriminatedUnion('kind', [
	z.object({kind: z.literal('option'), option: z.string()}),
	/** All parts marked so far; the last one before going on counts. */
	z.object({kind: z.literal('parts'), parts: z.array(z.string())}),
	z.object({kind: z.literal('photo'), photo: z.number().int()}),
	z.object({kind: z.literal('place'), place: placeSchema}),
	z.object({kind: z.literal('date'), date: z.iso.date()}),
	/** What the file of a photo says of place and day: offered until the find is saved, and forgotten then. */
	z.object({kind: z.literal('photo-place'), photo: z.number().int(), place: spotSchema.readonly()}),
	z.object({kind: z.literal('photo-date'), photo: z.number().int(), date: z.iso.date()}),
	z.object({kind: z.literal('count'), count: z.number().int().positive()}),
	/** A photo shows the width along with the length; of a set, `length` is the middle of `each`. */
	z.object({
		kind: z.literal('sized'),
		length: lengthSchema,
		width: lengthSchema.optional(),
		each: z.array(lengthSchema).optional(),
	}),
	/** It could not be measured. */
	z.object({kind: z.literal('unmeasured')}),
	z.object({kind: z.literal('note'), text: z.string()}),
	/** A number without a unit: asked again with unit buttons. */
	z.object({kind: z.literal('number'), typed: z.string(), units: z.array(z.enum(['mm', 'cm', 'in']))}),
	/** What a photo was measured to show, until the person says yes. */
	z.object({kind: z.literal('proposed'), proposal: proposalSchema}),
	/** The lines on the photo do not lie where they should: the size is written instead. */
	z.object({kind: z.literal('not-quite')}),
	/** One photo of many cases is waited for. */
	z.object({kind: z.literal('tray-wanted')}),
	/** Cases on one photo: sent where one length was asked for, asked for as such, or left by the find before. */
	z.object({kind: z.literal('tray'), tray: traySchema, origin: z.enum(['size', 'tray', 'rest'])}),
	/** All numbers ticked so far; the last one before going on counts. */
	z.object({kind: z.literal('picked'), numbers: z.array(z.number().int())}),
	/** The line on this case does not lie where it should: it is in no set. */
	z.object({kind: z.literal('taken-out'), number: z.number().int()}),
	/** These are one kind, and what this find is about. */
	z.object({kind: z.literal('one-kind'), numbers: z.array(z.number().int()).min(1)}),
	z.object({kind: z.literal('tray-left')}),
	/** What is left on the tray of this photo is another find's by now. */
	z.object({kind: z.literal('handed-on'), photo: z.number().int()}),
	soakSchema,
	z.object({kind: z.literal('woke')}),
	/** The person wants to answer this question anew; the old answer counts until then. */
	z.object({kind: z.literal('reopen')}),
	/** The answers were taken over from this find, which looks the same. */
	z.object({kind: z.literal('alike'), find: z.number().int()}),
]);

/** One thing that happened: which question it belongs to (a step or a character), what, and when (UTC ms). */
export const trailEventSchema = z.object({question: z.string(), answer: answerSchema, at: z.number().int()});

export const trailSchema = z.array(trailEventSchema);

/** What was answered, told apart by its kind. */
export type Answer = z.output<typeof answerSchema>;
/** A soak with its plan, its beginning and its end. */
export type Soak = z.output<typeof soakSchema>;
/** One thing that happened to a find, with its question and time. */
export type TrailEvent = z.output<typeof trailEventSchema>;
/** Everything that happened to a find, oldest first. */
export type Trail = readonly TrailEvent[];

/** The trail without its last answer; a bell that rang after it goes with it, and what a photo offers stays with the photo. */
export function withoutLast(trail: Trail): Trail {
	const last = trail.findLastIndex(({answer}) => answer.kind !== 'woke' && !isOffer(answer));
	const rest = trail.filter(({answer}, index) => index < last || isOffer(answer));
	const photos = new Set(rest.flatMap(({answer}) => (answer.kind === 'photo' ? [answer.photo] : [])));
	return rest.filter(({answer}) => !isOffer(answer) || photos.has(answer.photo));
}

/** The trail without what photos offered: a position that nobody said yes to may be somebody's home. */
export function withoutOffers(trail: Trail): Trail {
	return trail.some(({answer}) => isOffer(answer)) ? trail.filter(({answer}) => !isOffer(answer)) : trail;
}

type Offer = Extract<Answer, {readonly kind: 'photo-place' | 'photo-date'}>;

function isOffer(answer: Answer): answer is Offer {
	return answer.kind === 'photo-place' || answer.kind === 'photo-date';
}

/** The trail with a question put open again. */
export function reopened(trail: Trail, question: string, at: number): Trail {
	return [...trail, {question, answer: {kind: 'reopen'}, at}];
}

/** Answers that lead nowhere yet: more of the same may follow. */
const unfinished: ReadonlySet<Answer['kind']> = new Set([
	'photo',
	'parts',
	'number',
	'proposed',
	'not-quite',
	'picked',
	'taken-out',
	'photo-place',
	'photo-date',
]);

/** The trail with a new event; a finished answer to a reopened question takes the place of the old ones. */
export function withEvent(trail: Trail, event: TrailEvent): Trail {
	const marker = trail.findLastIndex(old => old.question === event.question && old.answer.kind === 'reopen');
	if (marker < 0 || unfinished.has(event.answer.kind)) return [...trail, event];
	const kept = trail.filter(
		(old, index) => old.question !== event.question || index > marker || outlastsAnswer(old),
	);
	return [...kept, event];
}

function outlastsAnswer({answer}: TrailEvent): boolean {
	return answer.kind === 'photo' || isOffer(answer);
}

/** The events of each question in order; of a reopened question only its photos, what they offer, and what came since. */
export function byQuestion(trail: Trail): ReadonlyMap<string, readonly TrailEvent[]> {
	const groups = new Map<string, TrailEvent[]>();
	for (const event of trail) {
		const group = groups.get(event.question) ?? [];
		groups.set(
			event.question,
			event.answer.kind === 'reopen' ? group.filter(outlastsAnswer) : [...group, event],
		);
	}
	return groups;
}
