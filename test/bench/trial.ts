/** `npm run trial`: how well cases are measured on made-up photos whose truth is known, set by set. */
import {readFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {parseArgs} from 'node:util';
import {measurePhoto} from '../../src/capsule/measure.ts';
import type {Outcome} from '../../src/capsule/outcome.ts';
import {makerNamed} from './photo-makers.ts';
import {shotsOf} from './photo-set.ts';
import {sayTable} from './table.ts';
import {rowOf, type Scored, scoreOf} from './trial-score.ts';

const {values} = parseArgs({
	options: {
		folder: {type: 'string', default: join(tmpdir(), 'pursekey-trial')},
		photos: {type: 'string', default: '24'},
		from: {type: 'string', default: '0'},
		only: {type: 'string', default: ''},
		by: {type: 'string', default: 'layers'},
		worst: {type: 'boolean', default: false},
	},
});

const sets = new Map<string, Scored[]>();
const wanted = {
	perSet: Number(values.photos),
	from: Number(values.from),
	only: values.only,
	by: makerNamed(values.by),
};
for await (const {set, file, truth} of shotsOf(values.folder, wanted)) {
	const bytes = readFileSync(file);
	const begun = process.cpuUsage();
	const outcome: Outcome = await measurePhoto(bytes);
	const {user, system} = process.cpuUsage(begun);
	const scored = scoreOf({file, outcome, truth, processorMs: (user + system) / 1000});
	sets.set(set, [...(sets.get(set) ?? []), scored]);
	if (values.worst && scored.note) console.log(`${set} ${file}: ${scored.note}`);
}
sayTable(`photos made up by ${values.by}: errors in % as median / 95 in 100 / worst`, [
	[
		'set',
		'photos',
		'declined',
		'choose',
		'length',
		'bias',
		'width',
		'given',
		'half-width',
		'covers',
		'> 5 %',
		'ms',
	],
	...[...sets].map(([name, list]) => rowOf(name, list)),
]);
