/** Another case of the same walk or bowl: what need not be asked again. */
import type {Flow} from './flow.ts';
import {type Standing, standAt} from './stand.ts';
import {byQuestion, type Trail, type TrailEvent, withoutOffers} from './trail.ts';

/** The beginning of a new trail: place and date of the walk and, out of a bowl, all that the bowl shares. */
export function trailForAnother(
	flow: Flow,
	from: {trail: Trail; standing: Standing},
	of: 'walk' | 'bowl' = 'bowl',
): Trail {
	const isBowl = of === 'bowl' && from.standing.facts.bowl !== undefined;
	const carried = [...byQuestion(from.trail)].filter(([question]) => {
		const carries = flow.around.steps[question]?.carries;
		return carries === 'walk' || (carries === 'bowl' && isBowl);
	});
	return backwards(
		flow,
		carried.flatMap(([, events]) => withoutOffers(events).filter(({answer}) => answer.kind !== 'photo')),
	);
}

/** The trail with what is behind its first open question last, so that Back finds it before what lies ahead. */
export function backwards(flow: Flow, trail: Trail): Trail {
	const {answered} = standAt(flow, trail);
	const isBehind = ({question}: TrailEvent) => answered.includes(question);
	return [...trail.filter(event => !isBehind(event)), ...trail.filter(isBehind)];
}
