/** A length or a width asked for: written, in which unit, or read from a photo and drawn back for a yes. */
import {cantTell} from '../key/observed.ts';
import {lowerBoundOf} from './facts.ts';
import type {Proposal} from './proposal.ts';
import type {Ask} from './question.ts';
import type {Standing} from './stand.ts';

/** The question for a size. */
export function askSize(standing: Standing, question: string): Ask {
	const last = standing.lastHere?.answer;
	const canBack = standing.hasPast;
	if (last?.kind === 'number') {
		return {
			kind: 'unit',
			question,
			text: {message: 'question-unit', values: {typed: last.typed}},
			options: last.units.map(unit => ({
				id: unit,
				label: {message: `option-unit-${unit}`, values: {typed: last.typed}},
			})),
			canBack,
			takes: 'text',
		};
	}
	if (last?.kind === 'proposed') return askProposal(last.proposal, {question, canBack});
	const isDry = question !== 'width' && lowerBoundOf(standing.facts).includes('dry');
	// A set that was measured on one photo is asked for its length only where it has grown since.
	const hasGrown = question !== 'width' && standing.trayed?.stage === 'chosen' && !standing.isReopened;
	return {
		kind: question === 'width' ? 'width' : 'length',
		question,
		text: {message: `question-${question}${isDry ? '-dry' : hasGrown ? '-grown' : ''}`},
		options: [{id: cantTell, label: {message: 'option-cant-measure'}}],
		canBack,
		picture: {kind: 'measuring', which: question === 'width' ? 'width' : 'length'},
		why: `why-${question}`,
		takes: 'text',
	};
}

/** The photo drawn back with its lines, for a yes; a size may still be written instead. */
function askProposal(proposal: Proposal, {question, canBack}: {question: string; canBack: boolean}): Ask {
	const [first, second] = proposal.lengths;
	const width = proposal.width;
	const values = {
		mm: first?.mm ?? 0,
		plusMinus: first?.uncertaintyMm ?? 0,
		otherMm: second?.mm ?? 0,
		width: width?.mm ?? 0,
		widthPlusMinus: width?.uncertaintyMm ?? 0,
		unsure: proposal.unsure?.length ?? 0,
		has: question === 'width' ? 'width' : width ? 'both' : 'length',
	};
	const options = second && question !== 'width' ? ['line-a', 'line-b', 'not-quite'] : ['right', 'not-quite'];
	return {
		kind: 'proposal',
		question,
		canBack,
		text: {message: second && question !== 'width' ? 'question-which-line' : 'question-measured', values},
		options: options.map(id => ({id, label: {message: `option-measured-${id}`, values}})),
		shows: {kind: 'measured', proposal},
		takes: 'text',
	};
}
