/** What pictures are there and what they show, without a line being drawn. */
import type {Region} from '../key/region.ts';
import type {CallPicture} from '../store/picture.ts';
import type {Say} from '../text/text.ts';
import {aroundPictures} from './around-names.ts';
import {letterOf} from './letter.ts';

/** A picture of a kind or a question that is drawn from data, by what it shows. */
export type Wanted = Exclude<CallPicture, {kind: 'drawing' | 'card' | 'measured' | 'tray'}>;

/** A picture that a question is shown or explained with. */
export type QuestionPicture = Extract<Wanted, {kind: 'choices' | 'part' | 'around' | 'measuring'}>;

/** Every picture that the questions of a region are shown and explained with. */
export function picturesOf({id: region, key}: Region, language: string): readonly QuestionPicture[] {
	const of = {region, language};
	return [
		...Object.entries(key.characters).flatMap(([character, {states}]): readonly QuestionPicture[] => [
			{kind: 'choices', ...of, character, options: [...states]},
			{kind: 'part', ...of, character},
		]),
		...aroundPictures.map((which): QuestionPicture => ({kind: 'around', ...of, which})),
		{kind: 'measuring', ...of, which: 'length'},
		{kind: 'measuring', ...of, which: 'width'},
	];
}

/** What a picture of a question shows in words: its alternative text. */
export function questionTitle(wanted: QuestionPicture, say: Say): string {
	switch (wanted.kind) {
		case 'choices': {
			const seen = wanted.options.map((state, index) => [
				letterOf(index).toLowerCase(),
				say.say(`seen-${wanted.character}-${state}`),
			]);
			return say.say(`picture-choices-${wanted.options.length}`, Object.fromEntries(seen));
		}
		case 'part':
			return say.say('picture-part', {name: say.say(`name-${wanted.character}`)});
		case 'around':
			return say.say(`picture-${wanted.which}`);
		case 'measuring':
			return say.say(`picture-measuring-${wanted.which}`);
	}
}
