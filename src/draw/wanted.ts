/** Pictures by what they show: a description small enough to wait in a queue, and the drawing it stands for. */
import {commonestStates, stateShape, taxonShape} from '../key/drawn.ts';
import type {Character, Region, Taxon} from '../key/region.ts';
import type {Say} from '../text/text.ts';
import {drawAround} from './around.ts';
import {drawChoices} from './choices.ts';
import {drawLengths, lengthsTitle} from './lengths.ts';
import {drawMeasuring} from './measuring.ts';
import {drawPart} from './part.ts';
import type {Drawn} from './picture.ts';
import {drawTaxon} from './taxon.ts';
import {questionTitle, type Wanted} from './title.ts';
import {drawWantedBars} from './wanted-bars.ts';
import {drawWantedChart} from './wanted-charts.ts';

/** What pictures are drawn from. */
export type DrawnFrom = {readonly region: Region; readonly say: Say};

/** Draws a picture; throws when it shows something that its region does not have. */
export function drawWanted(wanted: Wanted, from: DrawnFrom): Drawn {
	const title = titleOf(wanted, from);
	switch (wanted.kind) {
		case 'choices': {
			const character = characterOf(wanted.character, from);
			const choices = wanted.options.map(state => ({
				label: from.say.say(`option-${wanted.character}-${state}`),
				shape: stateShape(character, state),
			}));
			return drawChoices({choices, sight: character, title});
		}
		case 'around':
			return drawAround(wanted.which, {say: from.say, title});
		case 'part': {
			const name = from.say.say(`name-${wanted.character}`);
			return drawPart(characterOf(wanted.character, from), {name, title});
		}
		case 'taxon': {
			const words = {
				name: from.say.say(`taxon-${wanted.taxon}`),
				standIn: from.say.say('picture-stand-in'),
				title,
			};
			return drawTaxon(taxonShape(from.region, wanted.taxon), {words, lost: wanted.lost});
		}
		case 'lengths':
			return drawLengths(wanted, from);
		case 'bars':
			return drawWantedBars(wanted, from);
		case 'months':
		case 'map':
			return drawWantedChart(wanted, from.say);
		case 'measuring': {
			const word = (what: string) => from.say.say(`measuring-${what}`);
			const ends =
				wanted.which === 'length'
					? {from: word('from'), to: word('to')}
					: {from: word('across'), to: word('to-side')};
			return drawMeasuring(wanted.which, {...ends, flat: word('flat'), leftOut: word('left-out'), title});
		}
	}
}

/** What a picture shows in words: its alternative text. */
export function titleOf(wanted: Wanted, {region, say}: DrawnFrom): string {
	if (wanted.kind === 'lengths') return lengthsTitle(wanted, {region, say});
	if (wanted.kind === 'months' || wanted.kind === 'map') return drawWantedChart(wanted, say).alt;
	if (wanted.kind === 'bars') return drawWantedBars(wanted, {region, say}).alt;
	if (wanted.kind !== 'taxon') return questionTitle(wanted, say);
	const states = commonestStates(region, taxonOf(wanted.taxon, region));
	const lost = wanted.lost.map(part => say.say(`picture-lost-${part}`));
	return say.say(lost.length === 0 ? 'picture-taxon' : 'picture-taxon-worn', {
		name: say.say(`taxon-${wanted.taxon}`),
		seen: states.map(({id, state}) => say.say(`seen-${id}-${state}`)).join(', '),
		lost: lost.join(', '),
	});
}

function taxonOf(id: string, region: Region): Taxon {
	const taxon = region.profiles.taxa[id];
	if (taxon) return taxon;
	throw new Error(`Expected a taxon of ${region.id} to draw; got "${id}"`);
}

function characterOf(id: string, {region}: DrawnFrom): Character {
	const character = region.key.characters[id];
	if (character) return character;
	const known = Object.keys(region.key.characters).join(', ');
	throw new Error(`Expected a character of ${region.id} to draw; got "${id}", and there are ${known}`);
}
