/** What is asked about several cases on one photo: for the photo, and which of them are one kind. */
import type {Ask, Line, Option} from './question.ts';
import {casesLeft, casesPicked, type Trayed, trayQuestion} from './tray.ts';

/** The question about a tray. */
export function askTray(trayed: Trayed): Ask {
	const {stage, origin, tray, ticks, out} = trayed;
	const ask = {kind: 'tray', question: trayQuestion, canBack: false} as const;
	const cases = casesLeft(trayed);
	if (stage === 'wanted' || !tray || cases.length === 0) {
		const text = {message: stage === 'wanted' ? 'question-tray-photo' : 'question-tray-empty'};
		return {
			...ask,
			text,
			options: [option('leave', 'option-tray-never-mind')],
			why: 'why-tray',
			takes: 'photo',
		};
	}
	const shown = {...tray, cases};
	return {
		...ask,
		text: {message: cases.length === 1 ? 'question-tray-one' : 'question-tray', values: trayValues(trayed)},
		options: cases.length === 1 ? optionsOfOne() : optionsOf(trayed),
		// Before the photo there is nothing to go back to where the find was begun for the tray.
		canBack: ticks > 0 || out.length > 0 || origin === 'size',
		shows: {kind: 'tray', tray: shown},
		why: 'why-tray',
	};
}

/** Asked where the lengths of a set lie far apart. */
export function askSpread(trayed: Trayed): Ask {
	return {
		...{kind: 'tray', question: trayQuestion, canBack: false},
		text: {message: 'question-tray-spread', values: spanOf(casesPicked(trayed).map(({length}) => length.mm))},
		options: [option('one-kind-yes', 'option-tray-spread-yes'), option('again', 'option-tray-again')],
	};
}

/** Which line lies wrong. */
export function askWrongLine(trayed: Trayed): Ask {
	return {
		...{kind: 'tray', question: trayQuestion, canBack: false},
		text: {message: 'question-tray-wrong-line'},
		options: [
			...casesLeft(trayed).map(({number}) => ({
				...option(`out-${number}`, 'option-tray-number', {number: String(number), picked: 'no'}),
				isSmall: true as const,
			})),
			option('again', 'option-tray-all-right'),
		],
	};
}

/** The groups that the shapes suggest, each with its numbers; never more than a suggestion. */
export function groupsOf(
	trayed: Trayed,
): readonly {readonly id: string; readonly numbers: readonly number[]}[] {
	const cases = casesLeft(trayed);
	const numbersOf = (shape: 'long' | 'broad') =>
		cases.filter(one => one.shape === shape).map(({number}) => number);
	const groups = (['long', 'broad'] as const).map(shape => ({id: shape, numbers: numbersOf(shape)}));
	const some = groups.filter(({numbers}) => numbers.length > 0 && numbers.length < cases.length);
	const isOneShape = groups.some(({numbers}) => numbers.length === cases.length);
	const hasNoShape = groups.every(({numbers}) => numbers.length === 0);
	if (isOneShape || hasNoShape) return [{id: 'all', numbers: cases.map(({number}) => number)}];
	return some;
}

function optionsOf(trayed: Trayed): readonly Option[] {
	const {picked} = trayed;
	return [
		...groupsOf(trayed).map(({id, numbers}) =>
			option(`group-${id}`, `option-tray-group-${id}`, {numbers: numbers.join(', '), count: numbers.length}),
		),
		...casesLeft(trayed).map(({number}) => ({
			...option(`tick-${number}`, 'option-tray-number', {
				number: String(number),
				picked: picked.includes(number) ? 'yes' : 'no',
			}),
			isSmall: true as const,
		})),
		option('one-kind', 'option-tray-one-kind'),
		option('not-quite', 'option-tray-not-quite'),
		option('leave', trayed.origin === 'rest' ? 'option-tray-leave-rest' : 'option-tray-leave'),
	];
}

function optionsOfOne(): readonly Option[] {
	return [
		option('one-kind', 'option-tray-take-one'),
		option('not-quite', 'option-tray-not-quite'),
		option('leave', 'option-tray-leave-one'),
	];
}

function option(id: string, message: string, values?: Line['values']): Option {
	return {id, label: values ? {message, values} : {message}};
}

function trayValues(trayed: Trayed): NonNullable<Line['values']> {
	const cases = casesLeft(trayed);
	const unsure = trayed.tray?.unsure?.length ?? 0;
	return {
		...spanOf(cases.map(({length}) => length.mm)),
		list: cases.map(({number, length}) => `${number}: ${length.mm}`).join(', '),
		first: String(cases[0]?.number ?? ''),
		plusMinus: cases[0]?.length.uncertaintyMm ?? 0,
		// Said once, when the photo is first talked about.
		unsure: trayed.origin === 'rest' ? 0 : unsure,
		rest: trayed.origin === 'rest' ? 'yes' : 'no',
	};
}

function spanOf(lengths: readonly number[]) {
	return {
		count: lengths.length,
		least: Math.round(Math.min(...lengths)),
		most: Math.round(Math.max(...lengths)),
	};
}
