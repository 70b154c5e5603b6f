import {execFileSync} from 'node:child_process';
import {copyFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {check} from '@placemarkio/check-geojson';
import {parse} from 'csv-parse/sync';
import {expect, test, vi} from 'vitest';
import {projectRoot} from '../../src/settings.ts';
import {grantRole} from '../../src/store/roles.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import type {Actor} from '../support/actor.ts';
import {beginJourney, type Journey} from '../support/journey.ts';
import {patiently} from '../support/patiently.ts';
import {begin, newestDraft, walkTo} from '../support/steps.ts';
import {idOf} from '../support/team.ts';

vi.setConfig({testTimeout: 120_000});

/** Ada has two finds of May, one of them with a note in a square of 10 km; Cora coordinates. */
async function scene(mode: 'plain' | 'restarted after each update' = 'plain') {
	const journey = await beginJourney({mode});
	const {ada, db, folder, person, clock} = journey;
	copyFileSync(join(projectRoot(), 'deploy', 'dataset.example.yaml'), join(folder, 'dataset.yaml'));
	await begin(ada);
	await walkTo({db, person: ada}, 'kept', {count: one => one.presses('2')});
	const {body} = await newestDraft(db, ada);
	const ben = person('Ben');
	await begin(ben);
	const benId = await idOf(db, ben);
	await patiently(() => chooseSharing(db, benId, {publicName: 'Shell Seeker', coarseM: 10_000}));
	await walkTo({db, person: ben}, 'kept', {where: one => one.sends('SW 512 305')});
	const cora = person('Cora');
	await begin(cora);
	const coraId = await idOf(db, cora);
	await patiently(() => grantRole(db, {person: coraId, role: 'coordinator', now: clock.now()}));
	return {...journey, cora, body};
}

function received({room, folder}: Pick<Journey, 'room' | 'folder'>, person: Actor) {
	const sent = person.all.findLast(({document}) => document !== undefined);
	const file = join(folder, 'received');
	writeFileSync(file, room.fileBytes(sent?.document?.fileId ?? '') ?? Buffer.alloc(0));
	return {file, name: sent?.document?.fileName, text: sent?.text ?? ''};
}

test('a coordinator gets records as a table, an archive and a map file, with hidden places hidden', async () => {
	const journey = await scene('restarted after each update');
	const {cora, body, check: isSound} = journey;
	await cora.sends('/export');
	expect(cora.labels()).toEqual(['All of 2026', 'May 2026', 'All of 2025', 'All days']);
	const days = cora.sees;
	await cora.presses('May 2026');
	expect(cora.labels()).toEqual(['All finds', 'Checked by a person', 'Not checked yet']);
	const which = cora.sees;
	await cora.presses('All finds');
	const form = cora.sees;
	await cora.presses('Table');
	const table = received(journey, cora);
	expect(table.name).toBe('finds-2026-05.csv');
	expect(table.text).toContain('2 records');
	const csv = execFileSync('cat', [table.file]).toString();
	const rows: Record<string, string>[] = parse(csv, {columns: true});
	expect(rows.map(row => row['recordedBy'])).toEqual(['', 'Shell Seeker']);
	expect(rows[0]).toMatchObject({occurrenceID: `urn:uuid:${body.id}`, verbatimCoordinates: 'SW 465 304'});
	expect(csv).not.toContain('SW 512 305');
	expect(rows[1]?.['dataGeneralizations']).toContain('square of about 10 km');

	await cora.presses('Archive for portals', {on: form});
	const archive = received(journey, cora);
	expect(archive.name).toBe('finds-2026-05.zip');
	expect(execFileSync('unzip', ['-tq', archive.file]).toString()).toContain('No errors');
	expect(execFileSync('unzip', ['-p', archive.file, 'occurrence.csv']).toString()).toContain(body.id);

	await cora.presses('Map file', {on: form});
	const map = received(journey, cora);
	expect(map.name).toBe('finds-2026-05.geojson');
	expect(check(execFileSync('cat', [map.file]).toString()).type).toBe('FeatureCollection');

	await cora.presses('Checked by a person', {on: which});
	await cora.presses('Table');
	expect(cora.sees.text).toContain('There is no record that fits');
	await cora.presses('All of 2025', {on: days});
	await cora.presses('All finds');
	await cora.presses('Table');
	expect(cora.sees.text).toContain('There is no record that fits');
	isSound();
});

test('a grid square narrows an export, by the place as it is told', async () => {
	const journey = await scene();
	const {cora, db, folder, room} = journey;
	await cora.sends('/export sw 46 30');
	expect(cora.sees.text).toContain('Only finds in SW 46 30');
	await cora.presses('All days');
	await cora.presses('All finds');
	await cora.presses('Table');
	expect(received({room, folder}, cora).text).toContain('One record.');
	await cora.sends('/export the north beach');
	expect(cora.sees.text).toContain('I do not know a grid square “the north beach”');
	for (const madeUp of [
		'm.export.0.2026-13.all.csv',
		'm.export.0.2026.all.exe',
		'm.export.0.2026.some.csv',
	]) {
		await cora.makesUp(madeUp);
		expect(cora.sees.text).toContain('Please write /export again');
	}
	expect(await db.selectFrom('parcel').select('id').execute()).toEqual([]);
});

test('nobody else gets an export, and without a description of the data nobody does', async () => {
	const journey = await beginJourney();
	const {ada, db, clock} = journey;
	await begin(ada);
	await ada.makesUp('m.export.0.all.all.csv');
	expect(ada.sees.text).toContain('This is only for people who help to run the survey');
	const id = await idOf(db, ada);
	await patiently(() => grantRole(db, {person: id, role: 'coordinator', now: clock.now()}));
	await ada.makesUp('m.export.0.all.all.csv');
	expect(ada.sees.text).toContain('DATASET_FILE');
});

test('/season tells the year by kind, place and status, and shows it in bars, months and on a map', async () => {
	const journey = await scene();
	const {cora, check: isSound} = journey;
	await cora.sends('/season');
	const [text] = cora.all.filter(message => message.text.startsWith('2026:'));
	expect(text?.text).toContain('2026: 2 finds, 3 egg cases.');
	expect(text?.text).toContain('• Thornback ray: 2 finds, 3 cases');
	expect(text?.text).toContain('• SW 4 3: one find, 2 cases');
	expect(text?.text).toContain('• SW 5 3: one find, one case');
	expect(text?.text).toContain('• Not checked yet: 2 finds, 3 cases');
	await expect.poll(() => cora.all.filter(({photo}) => photo).length, {timeout: 60_000}).toBe(3);
	const year = cora.all.find(message => message.text.startsWith('2026:'));
	await cora.presses('The year before: 2025', year ? {on: year} : {});
	expect(cora.all.some(({text: said}) => said.includes('There are no saved finds of 2025'))).toBe(true);
	await cora.sends('/season next');
	expect(cora.sees.text).toContain('Write a year after the command');
	isSound();
});
