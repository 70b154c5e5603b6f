/** Faults in the questions of a key: ways that lead nowhere, dead ends, loops, bands that do not tile. */
import {arrowsOf, loopIn, reachedFrom} from './arrows.ts';
import {type Checkable, inKey, inProfiles, quoted} from './checkable.ts';
import type {Question} from './region.ts';
import type {Fault} from './yaml.ts';

/** Every fault in where the questions lead. */
export function checkQuestions(checkable: Checkable): readonly Fault[] {
	const {key} = checkable.region;
	return [
		...checkBegin(checkable),
		...Object.entries(key.questions).flatMap(([id, question]) => [
			...checkLeads(checkable, id, question),
			...('look' in question
				? checkOptions(checkable, id, question)
				: checkBands(checkable, id, question.bands)),
		]),
		...checkReached(checkable),
		...checkLoop(checkable),
	];
}

function checkBegin(checkable: Checkable): readonly Fault[] {
	const {begins, questions} = checkable.region.key;
	if (Object.hasOwn(questions, begins)) return [];
	const what = `The key begins at "${begins}", which is no question.`;
	return [inKey(checkable, ['begins'], {what, todo: `Name one of ${quoted(Object.keys(questions))}.`})];
}

function checkLeads(checkable: Checkable, id: string, question: Question): readonly Fault[] {
	const {key, profiles} = checkable.region;
	const arrows = arrowsOf(id, question);
	const lost = arrows.filter(
		({leads}) => !Object.hasOwn(key.questions, leads) && !Object.hasOwn(profiles.taxa, leads),
	);
	const faults = lost.map(({path, leads}) =>
		inKey(checkable, path, {
			what: `"${id}" leads to "${leads}", which is neither a question nor a taxon with a profile.`,
			todo: `Write question "${leads}", or give the taxon "${leads}" an entry in profiles.yaml.`,
		}),
	);
	if (arrows.length > 0) return faults;
	const what = `Question "${id}" has no way on.`;
	return [inKey(checkable, ['questions', id], {what, todo: 'Give each state of its character an option.'})];
}

function checkOptions(
	checkable: Checkable,
	id: string,
	{look, options}: Extract<Question, {look: string}>,
): readonly Fault[] {
	const {characters} = checkable.region.key;
	const character = characters[look];
	if (!character) {
		const what = `Question "${id}" looks at "${look}", which is no character.`;
		const todo = `Add it to the characters, or look at one of ${quoted(Object.keys(characters))}.`;
		return [inKey(checkable, ['questions', id, 'look'], {what, todo})];
	}
	const missing = character.states.filter(state => !Object.hasOwn(options, state));
	const extra = Object.keys(options).filter(state => !character.states.includes(state));
	return [
		...missing.map(state =>
			inKey(checkable, ['questions', id, 'options'], {
				what: `Question "${id}" has no option for the state "${state}" of "${look}".`,
				todo: `Say where "${state}" leads.`,
			}),
		),
		...extra.map(state =>
			inKey(checkable, ['questions', id, 'options', state], {
				what: `Question "${id}" has an option "${state}", a state that "${look}" lacks.`,
				todo: `Use one of ${quoted(character.states)}, or add the state to the character.`,
			}),
		),
	];
}

function checkBands(
	checkable: Checkable,
	id: string,
	bands: Extract<Question, {measure: string}>['bands'],
): readonly Fault[] {
	return bands.flatMap((band, index) => {
		const before = bands[index - 1];
		const isLast = index === bands.length - 1;
		const wrong = [
			...(before === undefined && band.fromMm !== undefined ? ['The first band has a lower end.'] : []),
			...(isLast && band.belowMm !== undefined ? ['The last band has an upper end.'] : []),
			...(before ? joint(before.belowMm, band.fromMm) : []),
			...(band.fromMm !== undefined && band.belowMm !== undefined && band.belowMm <= band.fromMm
				? [`The band from ${band.fromMm} below ${band.belowMm} mm holds nothing.`]
				: []),
		];
		const todo = 'Let the bands run from small to large, each beginning where the one before it ends.';
		return wrong.map(what =>
			inKey(checkable, ['questions', id, 'bands', index], {what: `Question "${id}": ${what}`, todo}),
		);
	});
}

function joint(endMm: number | undefined, beginMm: number | undefined): readonly string[] {
	if (endMm === undefined || beginMm === undefined) return ['Two bands that meet do not both say where.'];
	if (beginMm > endMm) return [`There is a gap between ${endMm} and ${beginMm} mm.`];
	if (beginMm < endMm) return [`Two bands overlap between ${beginMm} and ${endMm} mm.`];
	return [];
}

function checkReached(checkable: Checkable): readonly Fault[] {
	const {key, profiles} = checkable.region;
	const reached = reachedFrom(key);
	const questions = Object.keys(key.questions).filter(id => !reached.has(id));
	const taxa = Object.keys(profiles.taxa).filter(id => !reached.has(id));
	const remark = (id: string) => ({
		what: `No way leads to "${id}".`,
		todo: `Lead an option or a band to "${id}", or take it out.`,
	});
	return [
		...questions.map(id => inKey(checkable, ['questions', id], remark(id))),
		...taxa.map(id => inProfiles(checkable, ['taxa', id], remark(id))),
	];
}

function checkLoop(checkable: Checkable): readonly Fault[] {
	const loop = loopIn(checkable.region.key);
	if (!loop) return [];
	const what = `The key runs in a loop: ${loop.join(' → ')}.`;
	return [inKey(checkable, ['questions', loop[0] ?? ''], {what, todo: 'Lead one of these ways elsewhere.'})];
}
