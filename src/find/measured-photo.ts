/** What a measured photo may say to the question at hand. */
import type {Flow} from './flow.ts';
import type {MeasuredPhoto} from './proposal.ts';
import type {Standing} from './stand.ts';

/** A size that no case of the region has was not measured on a case. */
export function possibleOutcome(
	flow: Flow,
	which: 'length' | 'width',
	outcome: MeasuredPhoto,
): MeasuredPhoto {
	if (outcome.kind === 'declined') return outcome;
	const {lengths, width} = outcome.proposal;
	const [least, most] = flow.region.key.possibleMm[which];
	const isPossible = ({mm}: {mm: number}) => least <= mm && mm <= most;
	if (which === 'width' && !width) return {kind: 'declined', why: 'no-width'};
	const sizes = which === 'width' && width ? [width] : lengths;
	return sizes.every(isPossible) ? outcome : {kind: 'declined', why: 'impossible'};
}

/** Whether a size is asked for, which a photo may answer. */
export function asksSize({at}: Standing): boolean {
	return at.kind === 'width' || (at.kind === 'step' && at.step.kind === 'length');
}
