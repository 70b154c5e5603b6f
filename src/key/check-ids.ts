/** Faults in the ids of a key: reserved or shared names, unknown parts, characters never used, ids that moved. */
import {type Checkable, inKey, quoted} from './checkable.ts';
import type {Fault} from './yaml.ts';

/** The parts of a case that can be recorded as lost; `aprons` are asked about on their own. */
export const parts = ['horns', 'sides', 'surface', 'aprons'] as const;

/** Ids of the steps around the key and of the machine; their sentences and states bear these names. */
export const reservedIds: ReadonlySet<string> = new Set([
	...['egg-case', 'what-else', 'tell-apart', 'alive', 'leave', 'photo', 'photo-live', 'where', 'where-live'],
	...['when', 'when-live', 'live-result', 'count', 'broken', 'condition', 'soak', 'morning', 'soaking'],
	...[
		'softness',
		'aprons',
		'length',
		'width',
		'result',
		'kept',
		'thrown',
		'not-a-case',
		'key',
		'again',
		'note',
	],
	...['weed', 'whelk', 'cuttlebone', 'plastic', 'other', 'waiting', 'crossing', 'done', 'cant-tell'],
]);

/** Every fault in the names a key uses. */
export function checkIds(checkable: Checkable): readonly Fault[] {
	return [...checkNames(checkable), ...checkCharacters(checkable), ...checkMoved(checkable)];
}

function checkNames(checkable: Checkable): readonly Fault[] {
	const {key, profiles} = checkable.region;
	const questions = Object.keys(key.questions).map(id => ({id, path: ['questions', id]}));
	const named = [...questions, ...Object.keys(key.characters).map(id => ({id, path: ['characters', id]}))];
	return [
		...named
			.filter(({id}) => reservedIds.has(id))
			.map(({id, path}) =>
				inKey(checkable, path, {
					what: `"${id}" is the name of a step around the key.`,
					todo: 'Choose another id.',
				}),
			),
		...questions
			.filter(({id}) => Object.hasOwn(profiles.taxa, id))
			.map(({id, path}) =>
				inKey(checkable, path, {
					what: `"${id}" is both a question and a taxon.`,
					todo: 'Give the question another id.',
				}),
			),
	];
}

function checkCharacters(checkable: Checkable): readonly Fault[] {
	const {characters, questions} = checkable.region.key;
	const looked = new Set(
		Object.values(questions).map(question => ('look' in question ? question.look : undefined)),
	);
	const known: readonly string[] = parts;
	return Object.entries(characters).flatMap(([id, {needs}]) => [
		...needs
			.filter(part => !known.includes(part))
			.map(part =>
				inKey(checkable, ['characters', id, 'needs'], {
					what: `Character "${id}" needs "${part}", which is no part that can be lost.`,
					todo: `Use ${quoted(parts)}.`,
				}),
			),
		...(looked.has(id)
			? []
			: [
					inKey(checkable, ['characters', id], {
						what: `No question looks at "${id}".`,
						todo: 'Ask for it in a question, or take it out.',
					}),
				]),
	]);
}

function checkMoved(checkable: Checkable): readonly Fault[] {
	const {key, profiles} = checkable.region;
	const inUse = new Set([key.questions, key.characters, profiles.taxa].flatMap(named => Object.keys(named)));
	return key.moved.flatMap(({from, to}, index) => [
		...(inUse.has(from)
			? [
					inKey(checkable, ['moved', index], {
						what: `"${from}" is said to have moved and is still in use.`,
						todo: 'Take this line out, or rename what still bears the id.',
					}),
				]
			: []),
		...(to !== undefined && !inUse.has(to)
			? [
					inKey(checkable, ['moved', index], {
						what: `"${from}" is said to have moved to "${to}", which is unknown.`,
						todo: 'Name an id that is in use, or leave "to" out.',
					}),
				]
			: []),
	]);
}
