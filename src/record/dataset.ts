/** What a keeper says of the data as a whole: title, whom to ask, licence. */
import {existsSync} from 'node:fs';
import {z} from 'zod';
import {sayFault, tryYaml} from '../key/yaml.ts';

const licences = {
	'cc0-1.0': {
		name: 'Creative Commons Zero 1.0',
		link: 'http://creativecommons.org/publicdomain/zero/1.0/legalcode',
	},
	'cc-by-4.0': {
		name: 'Creative Commons Attribution 4.0',
		link: 'http://creativecommons.org/licenses/by/4.0/legalcode',
	},
	'cc-by-nc-4.0': {
		name: 'Creative Commons Attribution Non Commercial 4.0',
		link: 'http://creativecommons.org/licenses/by-nc/4.0/legalcode',
	},
} as const;

const line = z.string().trim().min(1, 'expected words, got none').max(300, 'expected at most 300 characters');

const datasetSchema = z
	.strictObject({
		title: line,
		/** A paragraph or more, parted by empty lines. */
		about: z.string().trim().min(1, 'expected a few sentences, got none').max(10_000),
		contact: z.strictObject({name: line, email: z.email('expected an e-mail address')}).readonly(),
		licence: z
			.enum(['cc0-1.0', 'cc-by-4.0', 'cc-by-nc-4.0'], 'expected cc0-1.0, cc-by-4.0 or cc-by-nc-4.0')
			.transform(name => licences[name]),
		/** The word since the revision of Darwin Core of 2026-05-26 is `detected`; some readers still want `present`. */
		occurrenceStatus: z.enum(['detected', 'present'], 'expected detected or present').default('detected'),
	})
	.readonly();

/** The data as a whole, as its keeper describes them. */
export type Dataset = z.output<typeof datasetSchema>;

/** Reads a keeper's description; throws one Error with a line for each fault, or one that says where it looked. */
export function readDataset(file: string): Dataset {
	const example = 'deploy/dataset.example.yaml';
	if (!existsSync(file)) {
		throw new Error(
			`Expected a description of the data (title, contact, licence) at ${file}; there is none. Copy ${example} there and change it, or set DATASET_FILE.`,
		);
	}
	const tried = tryYaml(file, datasetSchema);
	if (tried.kind === 'read') return tried.read.value;
	const todo = `Compare it with ${example}.`;
	throw new Error(tried.faults.map(fault => sayFault({...fault, todo})).join('\n'));
}
