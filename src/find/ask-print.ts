/** The question whether a measuring sheet was printed at its true size, put before sizes measured by it are used. */
import type {Ask} from './question.ts';
import type {Standing} from './stand.ts';
import type {Answer} from './trail.ts';

/** The buttons of that question. */
export const printAnswers = ['print-exact', 'print-wrong', 'print-unsure'] as const;

/** Sizes that are used only once their finder has looked at the print of the sheet. */
export type OnSheet = Extract<Answer, {kind: 'proposed' | 'tray'}>;

/** What was measured by a sheet whose print is not known yet; nothing where that is not the question. */
export function waitsForPrint({at, lastHere, trayed}: Standing): OnSheet | undefined {
	const answer = lastHere?.answer;
	if (at.kind === 'tray' && trayed?.stage === 'shown' && trayed.tray?.print === 'unasked') {
		return {kind: 'tray', tray: trayed.tray, origin: trayed.origin};
	}
	return answer?.kind === 'proposed' && answer.proposal.print === 'unasked' ? answer : undefined;
}

/** The question whether a sheet was printed at its true size; nothing where there is nothing to ask. */
export function askPrint(standing: Standing): Ask | undefined {
	if (!waitsForPrint(standing)) return undefined;
	return {
		kind: 'print',
		question: standing.at.id,
		text: {message: 'question-print'},
		options: printAnswers.map(id => ({id, label: {message: `option-${id}`}})),
		canBack: standing.at.kind !== 'tray',
		why: 'why-print',
	};
}
