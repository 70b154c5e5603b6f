/** A button pressed, read as an answer to the question at hand. */
import type {Length} from '../capsule/length.ts';
import {cantTell} from '../key/observed.ts';
import {goOn, type Step} from './around.ts';
import type {Proposal} from './proposal.ts';
import {oneMoreHour, twoHourSoak, untilMorning} from './soak.ts';
import type {Standing} from './stand.ts';
import type {Answer} from './trail.ts';
import {answerPlace, type Heard, hearCount, hearDate, hearSize, type Moment} from './value.ts';

type Press = {readonly option: string; readonly moment: Moment};

/** Reads a button pressed at the present question; nothing when the question has no such button. */
export function hearPress(standing: Standing, press: Press): Heard | undefined {
	const {at, lastHere} = standing;
	const {option} = press;
	if (at.kind === 'look') return chosen({kind: 'option', option}, `option-${at.id}-${option}`, option);
	if (at.kind === 'note' || at.kind === 'tray') return undefined;
	if (at.kind === 'width' || at.step.kind === 'length')
		return hearSizePress(lastHere?.answer, {option, which: at.kind === 'width' ? 'width' : 'length'});
	return hearStepPress(standing, at.step, {...press, says: at.step.says ?? at.id});
}

function hearStepPress(
	standing: Standing,
	step: Step,
	{option, moment, says}: Press & {readonly says: string},
): Heard | undefined {
	const label = `option-${says}-${option}`;
	const lastHere = standing.lastHere?.answer;
	switch (step.kind) {
		case 'choice':
			if (option === cantTell ? step.cantTell === undefined : step.options[option] === undefined)
				return undefined;
			return chosen({kind: 'option', option}, label, option);
		case 'notice':
			return option === goOn ? chosen({kind: 'option', option}, label, option) : undefined;
		case 'photos':
			if (option !== goOn) return undefined;
			return chosen(
				{kind: 'option', option},
				standing.facts.photos.length === 0 ? 'option-photo-skip' : 'option-photo-go-on',
				option,
			);
		case 'place':
			return option === 'photo' && lastHere?.kind === 'photo-place' ? answerPlace(lastHere.place) : undefined;
		case 'date':
			if (option === 'photo')
				return lastHere?.kind === 'photo-date' ? hearDate(lastHere.date, moment) : undefined;
			return option === 'today' || option === 'yesterday' ? hearDate(option, moment) : undefined;
		case 'count':
			return /^[1-9]\d{0,2}$/.test(option) ? hearCount(option) : undefined;
		case 'parts':
			return hearPart(standing, step.parts, option);
		case 'soak':
			if (option === 'two-hours') return chosen(twoHourSoak(moment), label, option);
			return ['overnight', 'already', 'unsoaked'].includes(option)
				? chosen({kind: 'option', option}, label, option)
				: undefined;
		case 'morning':
			if (!step.hours.includes(Number(option))) return undefined;
			return {
				kind: 'answer',
				answer: untilMorning(moment, Number(option)),
				chosen: {message: 'option-hour', values: {hour: `${option.padStart(2, '0')}:00`}},
			};
		case 'soaking':
			// Not as the clock says it: Back takes an answer back to this question, and a waking to the one before.
			return option === goOn ? chosen({kind: 'option', option}, label, option) : undefined;
		case 'softness':
			if (option === 'stiff') return chosen(oneMoreHour(moment), label, option);
			return ['softer', 'tomorrow'].includes(option)
				? chosen({kind: 'option', option}, label, option)
				: undefined;
		case 'result':
			return ['keep', 'throw'].includes(option) ? chosen({kind: 'option', option}, label, option) : undefined;
		case 'length':
		case 'key':
		case 'end':
			return undefined;
	}
}

function hearPart(standing: Standing, parts: readonly string[], option: string): Heard | undefined {
	const last = standing.lastHere?.answer;
	const marked = last?.kind === 'parts' ? last.parts : [];
	if (option === goOn) {
		return {
			kind: 'answer',
			answer: {kind: 'option', option},
			chosen:
				marked.length === 0
					? {message: 'option-parts-whole'}
					: {message: 'chosen-parts', values: {count: marked.length}},
		};
	}
	if (!parts.includes(option)) return undefined;
	const next = marked.includes(option) ? marked.filter(part => part !== option) : [...marked, option];
	return {
		kind: 'answer',
		answer: {kind: 'parts', parts: next},
		chosen: {message: `option-part-${option}`, values: {marked: 'yes'}},
	};
}

type SizePress = {readonly option: string; readonly which: 'length' | 'width'};

function hearSizePress(last: Answer | undefined, {option, which}: SizePress): Heard | undefined {
	if (option === cantTell) {
		return {kind: 'answer', answer: {kind: 'unmeasured'}, chosen: {message: 'option-cant-measure'}};
	}
	if (last?.kind === 'proposed') return hearProposalPress(last.proposal, {option, which});
	if (last?.kind !== 'number') return undefined;
	const unit = last.units.find(offered => offered === option);
	// The size was judged possible in this unit when the unit was offered.
	return unit === undefined ? undefined : hearSize([0, Number.MAX_SAFE_INTEGER], last.typed, unit);
}

const lines = ['right', 'line-a', 'line-b'];

function hearProposalPress(
	{lengths, width, reference}: Proposal,
	{option, which}: SizePress,
): Heard | undefined {
	if (option === 'not-quite') return chosen({kind: 'not-quite'}, 'option-measured-not-quite', option);
	const size = which === 'width' ? width : lengths[option === 'line-b' ? 1 : 0];
	if (!lines.includes(option) || !size) return undefined;
	const sized = ({mm, uncertaintyMm}: Proposal['lengths'][number]): Length => ({
		mm,
		uncertaintyMm,
		method: 'photo',
		reference,
	});
	return {
		kind: 'answer',
		answer: {
			kind: 'sized',
			length: sized(size),
			...(which === 'length' && width ? {width: sized(width)} : {}),
		},
		chosen: {message: 'chosen-length', values: {mm: size.mm, plusMinus: size.uncertaintyMm}},
	};
}

function chosen(answer: Answer, label: string, option: string): Heard {
	return {kind: 'answer', answer, chosen: {message: option === cantTell ? 'option-cant-tell' : label}};
}
