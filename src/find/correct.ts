/** Answers that can be given anew once they are all there. */

import type {Step} from './around.ts';
import type {Flow} from './flow.ts';
import type {Ask} from './question.ts';
import type {Standing} from './stand.ts';

/** Time has passed over a soak; it is not answered anew. */
const notCorrectable: ReadonlySet<Step['kind']> = new Set([
	'notice',
	'soak',
	'morning',
	'soaking',
	'softness',
	'key',
	'result',
	'end',
]);

/** The menu of answers to correct. */
export function correctMenu(flow: Flow, standing: Standing): Ask {
	return {
		kind: 'correct',
		question: standing.at.id,
		text: {message: 'question-correct'},
		options: standing.answered
			.filter(id => isCorrectable(flow, standing, id))
			.map(id => ({id: `fix-${id}`, label: {message: `name-${flow.around.steps[id]?.says ?? id}`}})),
		canBack: false,
	};
}

/** Whether this question was answered and may be put again. */
export function isCorrectable(flow: Flow, standing: Standing, question: string): boolean {
	const step = flow.around.steps[question];
	return standing.answered.includes(question) && !(step && notCorrectable.has(step.kind));
}

/** The answered question of a kind, such as the place, however this find came to be asked for it. */
export function questionOfKind(flow: Flow, standing: Standing, kind: Step['kind']): string | undefined {
	return standing.answered.find(id => flow.around.steps[id]?.kind === kind);
}
