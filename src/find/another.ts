/** Another case of the same walk or bowl: what need not be asked again. */
import type {Flow} from './flow.ts';
import type {Standing} from './stand.ts';
import {byQuestion, type Trail} from './trail.ts';

/** The beginning of a new trail: place and date of the walk and, out of a bowl, all that the bowl shares. */
export function trailForAnother(flow: Flow, from: {trail: Trail; standing: Standing}): Trail {
	const isBowl = from.standing.facts.bowl !== undefined;
	const carried = [...byQuestion(from.trail)].filter(([question]) => {
		const carries = flow.around.steps[question]?.carries;
		return carries === 'walk' || (carries === 'bowl' && isBowl);
	});
	return carried.flatMap(([, events]) => events.filter(({answer}) => answer.kind !== 'photo'));
}
