/** What is said of the print of a measuring sheet, and the sizes that were measured by it. */
import {type OnSheet, printAnswers, waitsForPrint} from './ask-print.ts';
import type {FindState, Turn} from './events.ts';
import type {Flow} from './flow.ts';
import {takeAnswer} from './move.ts';
import type {MeasuredPhoto, Proposal, Tray} from './proposal.ts';
import type {Line} from './question.ts';
import type {Standing} from './stand.ts';
import type {Answer} from './trail.ts';

/** Between what a sheet may be out that was fitted to the page by a printer: common practice, 3 to 6 %. */
const fittedShare = 0.06;

type Print = NonNullable<Proposal['print']>;

/** Takes what was said of the print; nothing for any other button. */
export function takePrint(
	flow: Flow,
	pressed: {
		readonly find: FindState;
		readonly before: Standing;
		readonly option: string;
		readonly now: number;
	},
): Turn | undefined {
	const {find, before, option, now} = pressed;
	const waiting = waitsForPrint(before);
	const answer = printAnswers.find(id => id === option);
	if (!waiting || !answer) return undefined;
	const print = printOf(answer);
	const isWrong = print === 'wrong';
	const turn = takeAnswer(flow, {
		find,
		before,
		answer: isWrong ? withoutSizes(waiting) : withPrint(waiting, print),
		chosen: {message: `option-${answer}`},
		now,
		lead: saidOf(print),
	});
	return {...turn, effects: [{kind: 'print', print}, ...turn.effects]};
}

/** What a find hears of what was measured, by what its finder said of the print of their sheet, if anything. */
export function measuredBy(
	outcome: MeasuredPhoto,
	print: 'exact' | 'unsure' | 'wrong' | undefined,
): MeasuredPhoto {
	if (outcome.kind === 'declined') return outcome;
	const {reference} = outcome.kind === 'tray' ? outcome.tray : outcome.proposal;
	if (reference !== 'sheet') return outcome;
	if (print === 'wrong') return {kind: 'declined', why: 'sheet-wrong'};
	return outcome.kind === 'tray'
		? {kind: 'tray', tray: trayBy(outcome.tray, print ?? 'unasked')}
		: {kind: 'proposed', proposal: proposalBy(outcome.proposal, print ?? 'unasked')};
}

function withPrint(measured: OnSheet, print: 'exact' | 'unsure'): OnSheet {
	return measured.kind === 'proposed'
		? {kind: 'proposed', proposal: proposalBy(measured.proposal, print)}
		: {...measured, tray: trayBy(measured.tray, print)};
}

function proposalBy({lengths, width, ...proposal}: Proposal, print: Print): Proposal {
	const sizes = {lengths: lengths.map(sizeBy(print)), ...(width ? {width: sizeBy(print)(width)} : {})};
	return {...proposal, ...sizes, print};
}

function trayBy(tray: Tray, print: Print): Tray {
	const cases = tray.cases.map(({length, width, ...one}) => ({
		...one,
		length: sizeBy(print)(length),
		...(width ? {width: sizeBy(print)(width)} : {}),
	}));
	return {...tray, cases, print};
}

type Size = Proposal['lengths'][number];

/** Of a print that cannot be checked, so wide that it holds the true size whether or not it was fitted to its page. */
function sizeBy(print: Print): (size: Size) => Size {
	if (print !== 'unsure') return size => size;
	return size => ({
		...size,
		uncertaintyMm: Math.ceil((size.uncertaintyMm + fittedShare * size.mm) * 10 - 1e-6) / 10,
	});
}

function withoutSizes(waiting: OnSheet): Answer {
	if (waiting.kind === 'proposed') return {kind: 'not-quite'};
	return waiting.origin === 'size' ? {kind: 'tray-left'} : {kind: 'tray-wanted'};
}

/** What comes of the answer, where a person would not see it. */
function saidOf(print: ReturnType<typeof printOf>): Line | undefined {
	return print === 'exact' ? undefined : {message: `said-print-${print}`};
}

function printOf(answer: (typeof printAnswers)[number]): 'exact' | 'wrong' | 'unsure' {
	switch (answer) {
		case 'print-exact':
			return 'exact';
		case 'print-wrong':
			return 'wrong';
		case 'print-unsure':
			return 'unsure';
	}
}
