/** What waits in the outbox: one message, edit or answer, in our own words, before it becomes a call. */
import {z} from 'zod';

const buttonSchema = z.object({text: z.string().min(1), data: z.string().min(1).max(64)});

/** Rows of buttons under a message. */
const keyboardSchema = z.array(z.array(buttonSchema));

const ofCharacter = {region: z.string().min(1), language: z.string().min(1), character: z.string().min(1)};

const pointSchema = z.tuple([z.number(), z.number()]);
const markSchema = z.object({
	mm: z.number(),
	uncertaintyMm: z.number(),
	line: z.tuple([pointSchema, pointSchema]),
});
/** Where the borders of the aprons lie in a stored photo, in its pixels from the upper left. */
const endsSchema = z.object({front: pointSchema, back: pointSchema});

/** A picture by what it shows. */
const pictureSchema = z.union([
	// Rows of an older program hold a path alone.
	z.string().transform(path => ({kind: 'drawing' as const, path})),
	z.discriminatedUnion('kind', [
		/** In rows of an older program, a file that is no longer there. */
		z.object({kind: z.literal('drawing'), path: z.string().min(1)}),
		/** What the questions that all regions share speak of. */
		z.object({
			kind: z.literal('around'),
			region: z.string().min(1),
			language: z.string().min(1),
			which: z.enum(['parts', 'photo', 'soak', 'aprons']),
		}),
		/** The options of a question side by side, in the order of its buttons. */
		z.object({kind: z.literal('choices'), ...ofCharacter, options: z.array(z.string()).min(2).max(4)}),
		/** Where on a case a character is seen. */
		z.object({kind: z.literal('part'), ...ofCharacter}),
		/** A kind as its profile describes it; lost parts are drawn pale. */
		z.object({
			kind: z.literal('taxon'),
			region: z.string().min(1),
			language: z.string().min(1),
			taxon: z.string().min(1),
			lost: z.array(z.enum(['horns', 'sides', 'surface', 'aprons'])).default([]),
		}),
		z.object({
			kind: z.literal('measuring'),
			region: z.string().min(1),
			language: z.string().min(1),
			which: z.enum(['length', 'width']),
		}),
		/** A stored photo with what was measured on it, in pixels of that photo. */
		z.object({
			kind: z.literal('measured'),
			hash: z.string().regex(/^[0-9a-f]{64}$/),
			lengths: z.array(markSchema).min(1).max(2),
			width: markSchema.optional(),
			/** Round the capsule. */
			outline: z.array(pointSchema).optional(),
			/** Middles of what was seen and not measured. */
			unsure: z.array(pointSchema).optional(),
			/** What stands on the picture, in words. */
			title: z.string(),
		}),
		/** A stored photo of several cases, each with its number and what was measured, in pixels of that photo. */
		z.object({
			kind: z.literal('tray'),
			hash: z.string().regex(/^[0-9a-f]{64}$/),
			cases: z
				.array(
					z.object({
						number: z.number().int(),
						length: markSchema,
						outline: z.array(pointSchema).optional(),
					}),
				)
				.min(1),
			/** The corners of the sheet that they lie on. */
			sheet: z.array(pointSchema).optional(),
			unsure: z.array(pointSchema).optional(),
			title: z.string(),
		}),
		/** What a find came to, on one card: its photo beside a drawing of each likely name, and their lengths. */
		z.object({
			kind: z.literal('card'),
			region: z.string().min(1),
			language: z.string().min(1),
			sure: z.enum(['very-likely', 'likely', 'shortlist']),
			/** Best first; `percent` as the words of the result say it. */
			names: z.array(z.object({taxon: z.string().min(1), percent: z.number()})).min(1),
			lost: z.array(z.enum(['horns', 'sides', 'surface', 'aprons'])).default([]),
			/** As measured; at least so long when `isLeast`. */
			length: z
				.object({mm: z.number().positive(), plusMinusMm: z.number().nonnegative(), isLeast: z.boolean()})
				.optional(),
			/** A stored photo by its hash; its scale is known when both ends of the case are. */
			photo: z.object({hash: z.string().min(1), ends: endsSchema.optional()}).optional(),
			/** Day and place in words, no finer than they may be shown. */
			found: z.string().optional(),
		}),
		/** How many cases of each kind, most first; a bar without a taxon has no drawing. */
		z.object({
			kind: z.literal('bars'),
			region: z.string().min(1),
			language: z.string().min(1),
			heading: z.string().min(1),
			bars: z
				.array(
					z.object({
						label: z.string().min(1),
						scientificName: z.string().optional(),
						count: z.number().int().positive(),
						taxon: z.string().optional(),
					}),
				)
				.min(1),
		}),
		/** The cases of a year, month by month from January on. */
		z.object({
			kind: z.literal('months'),
			region: z.string().min(1),
			language: z.string().min(1),
			heading: z.string().min(1),
			year: z.number().int(),
			label: z.string().min(1),
			counts: z.array(z.number().int().nonnegative()).length(12),
		}),
		/** Where cases lay, in degrees on WGS 84; one that is told no finer comes as a square. */
		z.object({
			kind: z.literal('map'),
			region: z.string().min(1),
			language: z.string().min(1),
			heading: z.string().min(1),
			places: z
				.array(
					z.discriminatedUnion('kind', [
						z.object({
							kind: z.literal('point'),
							latitude: z.number(),
							longitude: z.number(),
							count: z.number().int().positive(),
						}),
						z.object({
							kind: z.literal('square'),
							south: z.number(),
							west: z.number(),
							north: z.number(),
							east: z.number(),
							count: z.number().int().positive(),
						}),
					]),
				)
				.min(1),
		}),
		/** A measured length in millimetres against those of the kinds it may be. */
		z.object({
			kind: z.literal('lengths'),
			region: z.string().min(1),
			language: z.string().min(1),
			taxa: z.array(z.string()).min(1).max(6),
			mm: z.number().positive(),
			plusMinusMm: z.number().positive(),
			countsAs: z.enum(['exact', 'at-least']),
		}),
	]),
]);

export const callSchema = z.discriminatedUnion('kind', [
	z.object({
		kind: z.literal('send'),
		/** HTML of the platform, escaped. */
		html: z.string().min(1),
		keyboard: keyboardSchema.default([]),
		/** What goes with the words; drawn when it is sent. */
		picture: pictureSchema.optional(),
		/** Words of the picture where it has to follow by itself, in HTML. */
		alone: z.string().optional(),
		/** A picture that follows its words by itself: nothing waits for it, and without it nothing is said. */
		follows: z.boolean().optional(),
		/** The first photo of this find, once it is stored. */
		photoOf: z.number().int().optional(),
		/** This photo, once it is stored. */
		photo: z.number().int().optional(),
		/** A small file of words that goes with the message where they fit under it. */
		attachment: z.object({name: z.string().min(1), text: z.string().min(1)}).optional(),
		/** A button under the chat that sends the position; private chats only. */
		positionButton: z.string().optional(),
		/** In a group the person is asked to reply to this message. */
		forceReply: z.boolean().optional(),
		replyTo: z.number().int().optional(),
		thread: z.number().int().optional(),
		/** What a reply to this message is, as the data of a button says it. */
		expects: z.string().max(64).optional(),
	}),
	/** The photos of a find side by side, and a picture after them; nothing at all where there is neither. */
	z.object({
		kind: z.literal('album'),
		html: z.string().min(1),
		photosOf: z.number().int(),
		picture: pictureSchema.optional(),
	}),
	/** A file made for somebody, by its place in the folder of parcels; it goes once it is sent. */
	z.object({
		kind: z.literal('document'),
		file: z.string().regex(/^\d+\/\w[\w.-]*$/),
		/** HTML of the platform, escaped; at most 1024 characters are shown under a file. */
		html: z.string(),
		thread: z.number().int().optional(),
	}),
	/** The message of another row, shown anew. */
	z.object({
		kind: z.literal('edit'),
		row: z.number().int(),
		html: z.string().min(1),
		keyboard: keyboardSchema,
	}),
	/** A button press answered, so that the phone stops waiting. */
	z.object({kind: z.literal('answer'), callback: z.string(), text: z.string().max(200).optional()}),
	/** The commands listed in this chat alone; none to have the common list again. */
	z.object({
		kind: z.literal('commands'),
		list: z.array(z.object({command: z.string(), description: z.string()})),
	}),
]);

/** One call to the platform, as it waits in the outbox. */
export type Call = z.output<typeof callSchema>;
/** A picture by what it shows, as it waits with its words. */
export type CallPicture = z.output<typeof pictureSchema>;
/** The card of a result, as it waits with its words. */
export type CallCard = Extract<CallPicture, {kind: 'card'}>;
/** Rows of buttons under a message. */
export type Keyboard = z.output<typeof keyboardSchema>;

/** A call as it was stored; nothing when it cannot be read, as a row of an older program may not. */
export function readCall(content: string): Call | undefined {
	try {
		return callSchema.parse(JSON.parse(content));
	} catch {
		return undefined;
	}
}
