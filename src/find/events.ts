/** What comes in for a find and what a turn wants done: data, never a call. */
import type {PhotoMetadata} from '../place/photo-metadata.ts';
import type {Fix} from '../place/place.ts';
import type {MeasuredPhoto, Tray} from './proposal.ts';
import type {Ask, Line} from './question.ts';
import type {Standing} from './stand.ts';
import type {Trail} from './trail.ts';

/** What came in for a find. */
export type FindEvent =
	| {readonly kind: 'begin'}
	| {readonly kind: 'press'; readonly turn: number; readonly option: string}
	| {readonly kind: 'text'; readonly text: string}
	| {readonly kind: 'photo'; readonly photo: number}
	/** What became of measuring a photo. */
	| {readonly kind: 'measured'; readonly outcome: MeasuredPhoto}
	| ({readonly kind: 'pin'} & Fix)
	/** Where and on which day the file of a photo says it was taken. */
	| {readonly kind: 'photo-told'; readonly photo: number; readonly told: PhotoMetadata}
	| {readonly kind: 'woke'}
	/** Show the present question again. */
	| {readonly kind: 'resume'}
	/** Its finder puts it aside for now. */
	| {readonly kind: 'put-aside'}
	/** Put one question of a kept or finished find again. */
	| {readonly kind: 'mend'; readonly question: string}
	/** Something no question takes: a voice message, a sticker, a film. */
	| {readonly kind: 'odd'; readonly what: string};

/** What a turn wants done: data, never a call. */
export type Effect =
	| {readonly kind: 'ask'; readonly ask: Ask; readonly turn: number; readonly settleMs?: number}
	/** The question's own message, shown anew in place. */
	| {readonly kind: 'refresh'; readonly ask: Ask; readonly turn: number; readonly of: number}
	/** The explanation of the question, with its buttons. */
	| {readonly kind: 'explain'; readonly ask: Ask; readonly turn: number}
	/** The message of an answered turn shows the choice and loses its buttons. */
	| {readonly kind: 'close'; readonly turn: number; readonly chosen: Line}
	| {readonly kind: 'ask-position'}
	/** The photo is measured as soon as it is here. */
	| {readonly kind: 'measure'; readonly photo: number}
	| {readonly kind: 'say'; readonly line: Line}
	| {readonly kind: 'remind'; readonly dueAt: number; readonly zone: string}
	| {readonly kind: 'forget-reminder'}
	| {readonly kind: 'keep'}
	| {readonly kind: 'throw'}
	| {readonly kind: 'begin'; readonly how: 'fresh' | 'another' | 'walk'}
	/** The cases left on a tray begin a find of their own. */
	| {readonly kind: 'begin'; readonly how: 'rest'; readonly rest: Tray}
	/** What the finder says of the print of their measuring sheet. */
	| {readonly kind: 'print'; readonly print: 'exact' | 'unsure' | 'wrong'};

/** A find as a turn sees it; every button carries the turn it was shown in. */
export type FindState = {readonly trail: Trail; readonly turn: number};

/** A find after its turn, where it stands now, and what has to be done. */
export type Turn = FindState & {readonly standing: Standing; readonly effects: readonly Effect[]};
