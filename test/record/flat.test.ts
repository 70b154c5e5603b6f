import {mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {csvForm, type FlatForm, geojsonForm, writeFlat} from '../../src/record/flat.ts';
import type {ToldRecord} from '../../src/record/told.ts';
import {quickFolder} from '../support/folder.ts';
import {inTurn, licence, numbered, recordWith, told} from './for-export.ts';
import {placed} from './made-up.ts';

function newFile(): {folder: string; file: string} {
	const folder = mkdtempSync(join(quickFolder(), 'flat-'));
	onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
	return {folder, file: join(folder, 'finds')};
}

async function written(form: FlatForm, records: readonly ToldRecord[]): Promise<string> {
	const {file} = newFile();
	await writeFlat(inTurn(records), form, {file, licence});
	return readFileSync(file, 'utf8');
}

test('the table for spreadsheets ends with the licence and what was measured', async () => {
	const [head, row] = (await written(csvForm, [told(recordWith())])).split('\r\n');
	expect(head).toMatch(
		/,license,soakState,capsuleLengthMm,capsuleLengthPlusMinusMm,capsuleWidthMm,capsuleWidthPlusMinusMm$/,
	);
	expect(row).toMatch(/,http:\/\/creativecommons\.org[^,]+,soaked,62\.0,1\.0,41\.0,1\.0$/);
});

test('words that a spreadsheet would run as a formula are defused, figures are not', async () => {
	const record = recordWith({place: placed('=cmd|calc')}, {publicName: '+49 sums'});
	const text = await written(csvForm, [told(record), told(recordWith({place: placed('-5.2, -7.1')}))]);
	expect(text).toContain(",'=cmd|calc,");
	expect(text).toContain(",'+49 sums,");
	expect(text).toContain(',-5.2,-7.1,EPSG:4326,');
	expect(text).toContain(',"-5.2, -7.1",');
});

test('a find with only a named place is a feature without geometry', async () => {
	const records = [numbered(recordWith(), 1), numbered(recordWith({place: placed('Sandy Cove')}), 2)];
	const collection = JSON.parse(
		await written(
			geojsonForm,
			records.map(record => told(record)),
		),
	);
	expect(collection.features).toMatchObject([
		{geometry: {type: 'Point', coordinates: [-5.546958, 50.119892]}, properties: {capsuleLengthMm: '62.0'}},
		{geometry: null, properties: {verbatimLocality: 'Sandy Cove'}},
	]);
});

test('many records come out one after another, each once and whole', async () => {
	const records = Array.from({length: 100}, (_, number) => told(numbered(recordWith(), number)));
	const {features} = JSON.parse(await written(geojsonForm, records));
	expect(features.map(({id}: {id: string}) => id)).toEqual(records.map(({id}) => id));
	expect((await written(csvForm, records)).trimEnd().split('\r\n')).toHaveLength(101);
});

test('without a record, or when one cannot be told, what was there stays', async () => {
	const {folder, file} = newFile();
	writeFileSync(file, 'of last year');
	expect(await writeFlat(inTurn([]), csvForm, {file, licence})).toEqual({records: 0});
	async function* broken(): AsyncGenerator<ToldRecord> {
		yield told(recordWith());
		throw await Promise.resolve(new Error('find 3 does not fit'));
	}
	await expect(writeFlat(broken(), csvForm, {file, licence})).rejects.toThrow('find 3 does not fit');
	expect(readFileSync(file, 'utf8')).toBe('of last year');
	expect(readdirSync(folder)).toEqual(['finds']);
});

test('only its owner can read an export', async () => {
	const {file} = newFile();
	await writeFlat(inTurn([told(recordWith())]), geojsonForm, {file, licence});
	expect(statSync(file).mode & 0o777).toBe(0o600);
});
