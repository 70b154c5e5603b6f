/** A question as it is asked: its sentences and the answers offered, before any words are put in. */
import type {AroundPicture} from '../draw/around-names.ts';
import type {Step} from './around.ts';
import type {Proposal, Tray} from './proposal.ts';
import type {ResultView} from './result.ts';

/** What is filled into a sentence, by name. */
export type Values = Readonly<Record<string, string | number>>;

/** A sentence by its id, with the values that go in. */
export type Line = {readonly message: string; readonly values?: Values};

/** An answer offered as a button; `id` is what comes back, `letter` what it is called in the picture; small ones stand in one row. */
export type Option = {
	readonly id: string;
	readonly label: Line;
	readonly letter?: string;
	readonly isSmall?: true;
};

/** A picture that goes with a question or its explanation. */
export type AskPicture =
	| {readonly kind: 'around'; readonly which: AroundPicture}
	| {readonly kind: 'choices'; readonly character: string; readonly options: readonly string[]}
	| {readonly kind: 'part'; readonly character: string}
	| {readonly kind: 'measuring'; readonly which: 'length' | 'width'}
	/** A photo with the lines that were measured on it. */
	| {readonly kind: 'measured'; readonly proposal: Proposal}
	/** A photo of many cases, each with its number. */
	| {readonly kind: 'tray'; readonly tray: Tray};

/** Two options side by side fit a phone; `wide` ones stand alone. */
export type Ask = {
	readonly kind:
		| Step['kind']
		| 'look'
		| 'width'
		| 'note'
		| 'unit'
		| 'proposal'
		| 'print'
		| 'tray'
		| 'correct';
	/** The question's id in the trail. */
	readonly question: string;
	readonly text: Line;
	/** Said above the question: what became of the last answer. */
	readonly lead?: Line;
	/** Instants put in words by the reader's zone and language. */
	readonly times?: Readonly<Record<string, number>>;
	readonly options: readonly Option[];
	/** Goes with the question itself. */
	readonly shows?: AskPicture;
	/** Goes with the explanation. */
	readonly picture?: AskPicture;
	/** What the evidence came to, where this is the result. */
	readonly result?: ResultView;
	/** The result is told in short: it was told at length for a case that looks the same. */
	readonly isBrief?: boolean;
	readonly canBack: boolean;
	/** The sentence that explains the question. */
	readonly why?: string;
	/** The person answers by writing, sending a photo or a place. */
	readonly takes?: 'text' | 'photo' | 'place';
};
