/** A key as text of a Mermaid state diagram (stateDiagram-v2). */
import type {Box, Diagram} from '../key/diagram.ts';
import {cantTellNote} from './diagram-note.ts';

/** Writes the diagram; ids keep their letters, with an underscore for each hyphen. */
export function mermaidOf({region, begins, boxes, ways}: Diagram): string {
	const taxa = boxes.filter(({kind}) => kind === 'taxon');
	const lines = [
		'stateDiagram-v2',
		'direction TB',
		...boxes.map(box => `state "${plain(textOf(box))}" as ${nameOf(box.id)}`),
		`[*] --> ${nameOf(begins)}`,
		...ways.map(({from, to, label}) => `${nameOf(from)} --> ${nameOf(to)} : ${plain(label)}`),
		...taxa.map(({id}) => `${nameOf(id)} --> [*]`),
		`note left of ${nameOf(begins)}`,
		...cantTellNote.map(line => `\t${plain(line)}`),
		'end note',
	];
	return `---\ntitle: "${plain(region)}"\n---\n${lines[0]}\n${lines
		.slice(1)
		.map(line => `\t${line}`)
		.join('\n')}\n`;
}

function textOf({kind, title, text}: Box): string {
	return kind === 'question' ? `${title} – ${text}` : `${title} (${text})`;
}

/** A hyphen ends an id in Mermaid, and words such as `end` and `note` are its own. */
function nameOf(id: string): string {
	return `key_${id.replaceAll('-', '_')}`;
}

/** Quotes, colons, semicolons and number signs mean something to Mermaid. */
function plain(text: string): string {
	return text.replaceAll('"', '”').replaceAll(':', '∶').replaceAll(';', ',').replaceAll('#', '');
}
