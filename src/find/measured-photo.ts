/** What a measured photo may say to the question at hand. */
import type {Flow} from './flow.ts';
import type {MeasuredPhoto, Proposal, Tray} from './proposal.ts';
import type {Standing} from './stand.ts';
import {proposalOfOne, trayOfOne} from './tray.ts';

type Possible = (size: {readonly mm: number}) => boolean;

/** What was measured as far as the question takes it; a size that no case of the region has was not measured on a case. */
export function possibleOutcome(flow: Flow, {at}: Standing, outcome: MeasuredPhoto): MeasuredPhoto {
	if (outcome.kind === 'declined') return outcome;
	const {possibleMm} = flow.region.key;
	const fits =
		([least, most]: readonly [number, number]): Possible =>
		({mm}) =>
			least <= mm && mm <= most;
	if (at.kind === 'tray') return trayFrom(outcome, fits(possibleMm.length));
	if (outcome.kind === 'tray') {
		return at.kind === 'width'
			? {kind: 'declined', why: 'several'}
			: severalOf(outcome.tray, fits(possibleMm.length));
	}
	return at.kind === 'width'
		? widthFrom(outcome.proposal, fits(possibleMm.width))
		: lengthFrom(outcome.proposal, fits(possibleMm.length));
}

/** Whether a size is asked for, which a photo may answer. */
export function asksSize({at}: Standing): boolean {
	return at.kind === 'width' || (at.kind === 'step' && at.step.kind === 'length');
}

/** Whether a photo is measured here: a size is asked for, or cases on a tray. */
export function asksPhoto(standing: Standing): boolean {
	return standing.at.kind === 'tray' || asksSize(standing);
}

function widthFrom(proposal: Proposal, isPossible: Possible): MeasuredPhoto {
	const {width} = proposal;
	if (!width) return {kind: 'declined', why: 'no-width'};
	return isPossible(width) ? {kind: 'proposed', proposal} : {kind: 'declined', why: 'impossible'};
}

function lengthFrom(proposal: Proposal, isPossible: Possible): MeasuredPhoto {
	return proposal.lengths.every(isPossible)
		? {kind: 'proposed', proposal}
		: {kind: 'declined', why: 'impossible'};
}

function trayFrom(outcome: Exclude<MeasuredPhoto, {kind: 'declined'}>, isPossible: Possible): MeasuredPhoto {
	const tray = outcome.kind === 'tray' ? outcome.tray : trayOfOne(outcome.proposal);
	// Of one case with two readings neither is the length.
	const possible = tray && possibleCases(tray, isPossible);
	if (!tray) return {kind: 'declined', why: 'unsure'};
	return possible ? {kind: 'tray', tray: possible} : {kind: 'declined', why: 'impossible'};
}

function severalOf(tray: Tray, isPossible: Possible): MeasuredPhoto {
	const possible = possibleCases(tray, isPossible);
	if (!possible) return {kind: 'declined', why: 'impossible'};
	const proposal = proposalOfOne(possible);
	return proposal ? {kind: 'proposed', proposal} : {kind: 'tray', tray: possible};
}

/** The cases of a possible length, numbered anew; what else was measured is told as seen and not measured. */
function possibleCases(tray: Tray, isPossible: Possible): Tray | undefined {
	const cases = tray.cases.filter(({length}) => isPossible(length));
	if (cases.length === 0) return undefined;
	if (cases.length === tray.cases.length) return tray;
	const others = tray.cases.filter(one => !cases.includes(one)).map(({length}) => middleOf(length.line));
	return {
		...tray,
		cases: cases.map((one, index) => ({...one, number: index + 1})),
		unsure: [...(tray.unsure ?? []), ...others],
	};
}

function middleOf([[x1, y1], [x2, y2]]: Tray['cases'][number]['length']['line']): [number, number] {
	return [Math.round((x1 + x2) / 2), Math.round((y1 + y2) / 2)];
}
