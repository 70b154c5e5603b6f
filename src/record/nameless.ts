/** A checked record whose finder was forgotten: what science needs of it, and nothing of the person. */
import type {Draft} from './draft.ts';

/** BCP 47 for a language that is not told. */
const untoldLanguage = 'und';

/**
 * A draft without what its finder wrote and sent: note, photos, trail, and the very words of a measurement. What stays
 * is the kind, the place, the day, how many, how long and wide, and what was seen.
 */
export function namelessDraft(draft: Draft): Draft {
	return {
		...draft,
		note: undefined,
		photos: [],
		trail: [],
		language: untoldLanguage,
		length: withoutWords(draft.length),
		width: withoutWords(draft.width),
	};
}

function withoutWords(size: Draft['length']): Draft['length'] {
	return size?.method === 'typed' ? {...size, typed: `${size.mm} mm`} : size;
}
