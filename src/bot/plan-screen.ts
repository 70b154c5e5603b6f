/** The questions to a coordinator as messages: one each, with the way back. */
import type {Keyboard} from '../store/call.ts';
import type {DayRow} from '../store/days.ts';
import type {Day} from '../survey/day.ts';
import type {PlanAnswer, PlanStanding} from '../survey/plan.ts';
import type {PlanStep} from '../survey/plan-steps.ts';
import type {Tides} from '../survey/tides.ts';
import type {Say} from '../text/text.ts';
import {menuButton} from './button.ts';
import {dayCard} from './day-words.ts';
import {tideText} from './tide-words.ts';
import {dayText, type Reader} from './words.ts';

/** A message with its buttons. */
export type PlanScreen = {readonly text: string; readonly keyboard: Keyboard};

/** Where a plan is shown: its day as stored, and whether its newest answer can be taken back. */
export type PlanShown = {
	readonly row: DayRow;
	readonly reader: Reader;
	readonly canBack: boolean;
	readonly tides: Tides | undefined;
};

/** The parts of a day that can be changed once it is published, by the question that is asked again. */
const changeable = [
	'date',
	'start',
	'spot',
	'low-water',
	'meeting',
	'bring',
	'contact',
	'risks',
	'title',
] as const;

/** The question at which a plan stands, or the day as people will see it. */
export function planScreen(standing: PlanStanding, shown: PlanShown): PlanScreen {
	const {say} = shown.reader;
	switch (standing.kind) {
		case 'step':
			return {
				text: say.say(`plan-ask-${standing.step.id}`),
				keyboard: [...stepRows(standing.step, shown), ...lastRow(shown)],
			};
		case 'which': {
			const [first, second] = ['first', 'second'].map(option => ({
				text: say.say(`plan-${option}`),
				data: answerData(shown.row, option),
			}));
			const choices = [first, second].flatMap(button => (button ? [[button]] : []));
			return {text: say.say('plan-ask-which'), keyboard: [...choices, ...lastRow(shown)]};
		}
		case 'whole':
			return wholeScreen(standing.day, shown);
	}
}

/** The day as people will see it, to be published or changed. */
function wholeScreen(day: Day, shown: PlanShown): PlanScreen {
	const {row, reader, tides} = shown;
	const {say} = reader;
	const isNew = row.state === 'planned';
	const see = say.say(isNew ? 'plan-whole-see' : 'plan-change-see');
	const tide = tides && tideText(day, say, tides);
	const publish = {
		text: say.say(isNew ? 'plan-publish' : 'plan-publish-change'),
		data: planButton('publish', row.id, String(row.turn)),
	};
	return {
		text: [see, '', dayCard(day, reader), ...(tide === undefined ? [] : ['', tide])].join('\n'),
		keyboard: [
			[publish],
			[{text: say.say('plan-change'), data: planButton('change', row.id)}],
			...lastRow(shown),
		],
	};
}

/** The parts of a day to choose from when it is to be changed. */
export function changeScreen(row: DayRow, say: Say): PlanScreen {
	const buttons = changeable.map(step => ({
		text: say.say(`plan-part-${step}`),
		data: planButton('field', row.id, step),
	}));
	const rows = buttons.flatMap((button, index) => {
		const next = buttons[index + 1];
		return index % 2 === 0 ? [next ? [button, next] : [button]] : [];
	});
	const see = {text: say.say('plan-see'), data: planButton('go', row.id)};
	return {text: say.say('plan-change-what'), keyboard: [...rows, [see]]};
}

/** An answer in few words, to stand under its question. */
export function answerText(answer: PlanAnswer, {say}: Reader): string {
	switch (answer.kind) {
		case 'words':
			return answer.words;
		case 'none':
			return say.say('plan-nothing');
		case 'spot':
			return `${answer.latitude.toFixed(5)}, ${answer.longitude.toFixed(5)}`;
		case 'date':
			return dayText(answer.date, {say});
		case 'time':
			return answer.which === undefined
				? answer.time
				: say.say('plan-time-which', {time: answer.time, which: say.say(`plan-${answer.which}`)});
		case 'height':
			return say.say('plan-height', {height: answer.heightM});
	}
}

/** The data of a button of a coordinator about a day of theirs. */
export function planButton(act: string, day: number, ...more: readonly string[]): string {
	return menuButton('plan', act, String(day), ...more);
}

function stepRows({id, takes, mayBeNone}: PlanStep, {row, reader}: PlanShown): Keyboard {
	const {say} = reader;
	const button = (option: string, text: string) => ({text, data: answerData(row, option)});
	if (takes === 'date')
		return [[button('saturday', say.say('plan-saturday')), button('sunday', say.say('plan-sunday'))]];
	return mayBeNone === true ? [[button('none', say.say(`plan-none-${id}`))]] : [];
}

/** Back from a plan, or out of a change. */
function lastRow({row, reader, canBack}: PlanShown): Keyboard {
	const {say} = reader;
	if (row.state !== 'planned') return [[{text: say.say('plan-leave'), data: planButton('leave', row.id)}]];
	return canBack ? [[{text: say.say('option-back'), data: answerData(row, 'back')}]] : [];
}

function answerData({id, turn}: DayRow, option: string): string {
	return planButton('a', id, String(turn), option);
}
