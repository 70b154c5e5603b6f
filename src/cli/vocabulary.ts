/** `vocabulary`: everything a key can ask and say, for people and programs that write specimens. */
import {parseArgs} from 'node:util';
import {parts} from '../key/check-ids.ts';
import type {Region} from '../key/region.ts';
import type {Say} from '../text/text.ts';
import {readChecked} from './regions.ts';
import {type ExitCode, sayFaults, type Terminal} from './terminal.ts';

/** What `vocabulary --help` says. */
export const vocabularyHelp = `npm run key -- vocabulary <region> [--json]

Lists every character of a region with its states, the parts it needs and its sentences,
the questions that measure, the parts that can be lost, and the taxa.

  --json   one JSON object and nothing else`;

/** A region's characters, measured questions, parts and taxa, with their English sentences. */
export type Vocabulary = ReturnType<typeof vocabularyOf>;

/** Says the words of one region. */
export function runVocabulary(args: readonly string[], terminal: Terminal): ExitCode {
	const {values, positionals} = parseArgs({
		args: [...args],
		options: {help: {type: 'boolean', short: 'h'}, json: {type: 'boolean'}},
		allowPositionals: true,
	});
	const [regionId] = positionals;
	if (values.help || regionId === undefined) {
		terminal.say(vocabularyHelp);
		return values.help ? 0 : 2;
	}
	const read = readChecked(terminal.root, regionId);
	if (read.kind === 'faults') {
		sayFaults({...terminal, say: terminal.complain}, read.faults);
		return 1;
	}
	const vocabulary = vocabularyOf(read.region, read.say);
	terminal.say(values.json ? JSON.stringify(vocabulary, undefined, '\t') : inWords(vocabulary));
	return 0;
}

/** Collects the words of a region; `say` holds its sentences and the shared ones. */
export function vocabularyOf(region: Region, say: Say) {
	const {key, profiles} = region;
	const questions = Object.entries(key.questions);
	return {
		region: region.id,
		version: region.version,
		parts,
		possibleMm: key.possibleMm,
		characters: Object.entries(key.characters).map(([id, {needs, states}]) => ({
			id,
			needs,
			question: say.say(`question-${id}`),
			states: states.map(state => ({id: state, option: say.say(`option-${id}-${state}`)})),
			askedBy: questions
				.filter(([, question]) => 'look' in question && question.look === id)
				.map(([name]) => name),
		})),
		measured: questions.flatMap(([id, question]) =>
			'measure' in question
				? [
						{
							id,
							measure: question.measure,
							question: say.say(`question-${question.measure}`),
							bands: question.bands,
						},
					]
				: [],
		),
		taxa: Object.entries(profiles.taxa).map(([id, {scientificName, rank}]) => ({
			id,
			scientificName,
			commonName: say.say(`taxon-${id}`),
			rank,
		})),
	};
}

function inWords(vocabulary: Vocabulary): string {
	const characters = vocabulary.characters.flatMap(({id, needs, question, states}) => [
		`${id} (needs ${needs.length > 0 ? needs.join(', ') : 'nothing'})`,
		`  ${question}`,
		...states.map(({id: state, option}) => `  ${state}: ${option}`),
	]);
	const measured = vocabulary.measured.flatMap(({id, measure, question, bands}) => [
		`${id} (${measure})`,
		`  ${question}`,
		...bands.map(
			({fromMm, belowMm, leads}) => `  from ${fromMm ?? 0} below ${belowMm ?? 'any'} mm: ${leads}`,
		),
	]);
	return [
		`Region ${vocabulary.region}, version ${vocabulary.version}`,
		'',
		'Characters',
		...characters,
		'',
		'Measured questions',
		...measured,
		'',
		`Parts that can be lost: ${vocabulary.parts.join(', ')}`,
		'',
		'Taxa',
		...vocabulary.taxa.map(({id, scientificName, commonName}) => `${id}: ${scientificName}, ${commonName}`),
	].join('\n');
}
