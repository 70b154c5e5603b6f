/** What a person did, read as an answer to the question at hand. */
import {type Fix, placeFromPin} from '../place/place.ts';
import type {Flow} from './flow.ts';
import type {Standing} from './stand.ts';
import {hearNumbers} from './tray-turn.ts';
import {
	answerPlace,
	type Heard,
	hearCount,
	hearDate,
	hearNote,
	hearPlace,
	hearSize,
	help,
	type Moment,
} from './value.ts';

/** Reads words written at the present question. */
export function hearText(
	flow: Flow,
	standing: Standing,
	said: {readonly text: string; readonly moment: Moment},
): Heard {
	const {at} = standing;
	if (at.kind === 'note') return hearNote(said.text);
	if (at.kind === 'width') return hearSize(flow.region.key.possibleMm.width, said.text, undefined);
	if (at.kind === 'look') return help('help-buttons');
	if (at.kind === 'tray') return hearNumbers(at.trayed, said.text);
	switch (at.step.kind) {
		case 'place':
			return hearPlace(said.text);
		case 'date':
			return hearDate(said.text, said.moment);
		case 'count':
			return hearCount(said.text);
		case 'length':
			return hearSize(flow.region.key.possibleMm.length, said.text, undefined);
		case 'photos':
			return help('help-photos');
		case 'soaking':
			return help('help-soaking');
		case 'choice':
		case 'notice':
		case 'parts':
		case 'soak':
		case 'morning':
		case 'softness':
		case 'key':
		case 'result':
		case 'end':
			return help('help-buttons');
	}
}

/** Reads a shared position at the present question. */
export function hearPin(standing: Standing, fix: Fix): Heard {
	if (standing.at.kind !== 'step' || standing.at.step.kind !== 'place') return help('help-pin-later');
	return answerPlace(placeFromPin(fix));
}
