/** What exports hold, read by programs and held to standards that nobody here wrote. */
import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync} from 'node:fs';
import {join} from 'node:path';
import {getIssues} from '@placemarkio/check-geojson';
import {parse} from 'csv-parse/sync';
import fc from 'fast-check';
import {afterAll, beforeAll, expect, test} from 'vitest';
import {validateXML} from 'xmllint-wasm';
import {z} from 'zod';
import {writeArchive} from '../../src/record/archive.ts';
import {csvLine} from '../../src/record/csv.ts';
import {readDataset} from '../../src/record/dataset.ts';
import {csvForm, geojsonForm, writeFlat} from '../../src/record/flat.ts';
import type {Verification} from '../../src/record/for-export.ts';
import {guarded, inTurn, licence, numbered, recordWith, told} from '../record/for-export.ts';
import {placed} from '../record/made-up.ts';
import {quickFolder} from '../support/folder.ts';

const note = 'torn, "very"\nat one end\r\nand wet; 🦈';
const at = Date.UTC(2026, 4, 6, 18);
const alba = {scientificName: 'Theca alba', taxonRank: 'species'} as const;
const seen: readonly Verification[] = [
	{outcome: 'agreed', at, by: 'Checker'},
	{outcome: 'other-name', at, name: alba, remarks: 'see photo, "edge"'},
	{outcome: 'not-an-egg-case', at},
];
const records = [
	told(numbered(recordWith({note}), 1)),
	told(numbered(recordWith({}, {coarseM: 1000, publicName: 'Ada, of the "Cove"'}), 2)),
	told(numbered(recordWith({place: placed('50.1199, -5.547'), soak: 'dry', doubt: true}), 3), guarded),
	told(numbered(recordWith({place: placed('Sandy\u2028Cove')}), 4)),
	told(numbered(recordWith({lives: true, count: undefined}), 5)),
	...seen.map((verification, index) => told(numbered(recordWith({}, {verification}), 6 + index))),
];
const dataset = readDataset(join(import.meta.dirname, '../../deploy/dataset.example.yaml'));
const reference = (name: string) => readFileSync(join(import.meta.dirname, 'darwin-core', name), 'utf8');

let folder = '';
let archive = '';

beforeAll(async () => {
	folder = mkdtempSync(join(quickFolder(), 'outside-'));
	archive = join(folder, 'finds.zip');
	await writeArchive(inTurn(records), {file: archive, dataset, isExact: false});
});

afterAll(() => rmSync(folder, {recursive: true, force: true}));

function inArchive(name: string): string {
	const {stdout, status} = spawnSync('unzip', ['-p', archive, name], {encoding: 'utf8'});
	if (status !== 0) throw new Error(`Expected ${name} in the archive; unzip left with ${status}`);
	return stdout;
}

/** Rows as csv-parse reads them, told only what the descriptor says of them. */
function rowsOf(text: string): readonly Readonly<Record<string, string>>[] {
	const rows: unknown = parse(text, {columns: true, record_delimiter: '\r\n'});
	return z.array(z.record(z.string(), z.string())).parse(rows);
}

// Info-ZIP UnZip tests every entry against its CRC-32.
test('unzip finds nothing wrong with an archive', () => {
	const {stdout, status} = spawnSync('unzip', ['-t', archive], {encoding: 'utf8'});
	expect(stdout).toContain('No errors detected');
	expect(status).toBe(0);
});

// Darwin Core text guide, schema of the descriptor; source, licence and change in darwin-core/README.md.
test('the descriptor fits the published schema', async () => {
	const schema = {fileName: 'text.xsd', contents: reference('tdwg_dwc_text.offline.xsd')};
	const lint = (contents: string) => validateXML({xml: {fileName: 'meta.xml', contents}, schema});
	const meta = inArchive('meta.xml');
	expect((await lint(meta)).errors).toEqual([]);
	expect((await lint(meta.replace(/ rowType="[^"]+"/, ''))).valid).toBe(false);
});

test('the description is well-formed XML, also with words that XML would take for its own', async () => {
	const file = join(folder, 'odd.zip');
	const odd = {...dataset, title: '<Finds> & "more" \u0001', about: 'One.\n\nTwo ]]> & <three>'};
	await writeArchive(inTurn(records), {file, dataset: odd, isExact: true});
	for (const name of ['eml.xml', 'meta.xml']) {
		const contents = spawnSync('unzip', ['-p', file, name], {encoding: 'utf8'}).stdout;
		const {errors} = await validateXML({
			xml: {fileName: name, contents},
			schema: {fileName: 'loose.xsd', contents: anyElement(name === 'eml.xml' ? 'eml' : 'archive')},
		});
		expect(errors).toEqual([]);
	}
});

const tables = [
	['core', 'occurrence.csv'],
	['http://rs.tdwg.org/dwc/terms/MeasurementOrFact', 'measurementorfact.csv'],
	['http://rs.tdwg.org/dwc/terms/Identification', 'identification.csv'],
	['http://rs.gbif.org/terms/1.0/Multimedia', 'multimedia.csv'],
] as const;

test('every term of the core is a recommended one under its published IRI, and none stands twice', () => {
	const published = new Set(
		reference('term-iris.txt')
			.split('\n')
			.filter(line => line !== '' && !line.startsWith('#'))
			.map(line => line.split(' ')[1]),
	);
	const terms = fieldsOf(inArchive('meta.xml'), 'occurrence.csv').map(({term}) => term);
	expect(terms.length).toBeGreaterThan(35);
	expect(terms.filter(term => !published.has(term))).toEqual([]);
	expect(new Set(terms).size).toBe(terms.length);
});

test('every term of an extension is one that its definition lists', () => {
	const lists = z
		.record(z.string(), z.array(z.string()))
		.parse(JSON.parse(reference('extension-terms.json')));
	for (const [rowType, file] of tables.slice(1)) {
		const terms = fieldsOf(inArchive('meta.xml'), file).map(({term}) => term);
		expect(terms.length).toBeGreaterThan(5);
		expect(terms.filter(term => !lists[rowType]?.includes(term))).toEqual([]);
	}
});

// Darwin Core text guide: the core needs an id where there are extensions; the schema does not ask for it.
test('every index of the descriptor leads to the column of that name, and each row to a row of the core', () => {
	const meta = inArchive('meta.xml');
	const ids = new Set(rowsOf(inArchive('occurrence.csv')).map(row => row['occurrenceID']));
	expect(ids.size).toBe(records.length);
	for (const [kind, file] of tables) {
		const text = inArchive(file);
		const head = text.slice(0, text.indexOf('\r\n')).split(',');
		for (const {index, term} of fieldsOf(meta, file))
			if (index !== undefined) expect(head[index]).toBe(term.split('/').at(-1));
		expect(partOf(meta, file)).toContain(kind === 'core' ? '<id index="0"/>' : '<coreid index="0"/>');
		if (kind !== 'core') expect(rowsOf(text).filter(row => !ids.has(row['coreid']))).toEqual([]);
	}
});

test('another reader of CSV reads back what was told', () => {
	const core = rowsOf(inArchive('occurrence.csv'));
	expect(core.map(({occurrenceID}) => occurrenceID)).toEqual(records.map(({id}) => id));
	expect(core[0]?.['occurrenceRemarks']).toContain(note);
	for (const [index, record] of records.entries())
		for (const [name, value] of Object.entries(record.core))
			expect(core[index]?.[name]).toBe(value === undefined ? '' : String(value));
	expect(rowsOf(inArchive('measurementorfact.csv'))).toHaveLength(
		records.flatMap(({measurements}) => measurements).length,
	);
});

// Darwin Core, comments on coordinateUncertaintyInMeters: zero is not valid, unknown is empty.
test('no radius is zero, and what generalises a place says so and withholds its own form', () => {
	for (const row of rowsOf(inArchive('occurrence.csv'))) {
		expect(row['coordinateUncertaintyInMeters']).not.toBe('0');
		if (row['dataGeneralizations'] === '') continue;
		expect(Number(row['coordinateUncertaintyInMeters'])).toBeGreaterThan(700);
		expect([row['verbatimCoordinates'], row['verbatimSRS']]).toEqual(['', '']);
		expect(row['informationWithheld']).toContain('exact place');
	}
});

test('any cell comes back through another reader of CSV as it was', () => {
	const cell = fc.oneof(
		fc.string({unit: 'binary'}),
		fc.constantFrom('a\nb', 'a\rb', '"', ',', ' x ', '\r\n'),
	);
	fc.assert(
		fc.property(fc.array(cell, {minLength: 2, maxLength: 6}), cells => {
			const rows: unknown = parse(csvLine(cells) + csvLine(['last', ...cells.slice(1)]), {
				record_delimiter: '\r\n',
			});
			expect(rows).toEqual([cells, ['last', ...cells.slice(1)]]);
		}),
	);
});

test('a reader of CSV reads the table for spreadsheets', async () => {
	const file = join(folder, 'finds.csv');
	await writeFlat(inTurn(records), csvForm, {file, licence});
	const rows = rowsOf(readFileSync(file, 'utf8'));
	expect(rows).toHaveLength(records.length);
	expect(rows[0]).toMatchObject({capsuleLengthMm: '62.0', license: licence});
});

// RFC 7946, checked by a validator of its own.
test('the points for a map are valid GeoJSON', async () => {
	const file = join(folder, 'finds.geojson');
	await writeFlat(inTurn(records), geojsonForm, {file, licence});
	const text = readFileSync(file, 'utf8');
	expect(getIssues(text)).toEqual([]);
	expect(getIssues(text.replace('"Point"', '"Dot"'))).not.toEqual([]);
	// RFC 7946, section 4: longitude first, then latitude.
	const first = /"coordinates":\[([^\]]+)\]/.exec(text)?.[1]?.split(',').map(Number);
	expect(first).toEqual([-5.546958, 50.119892]);
});

function partOf(meta: string, file: string): string {
	const parts = meta.match(/<(core|extension) [\s\S]*?<\/\1>/g) ?? [];
	return parts.find(part => part.includes(`<location>${file}</location>`)) ?? '';
}

function fieldsOf(
	meta: string,
	file: string,
): readonly {readonly index: number | undefined; readonly term: string}[] {
	return [...partOf(meta, file).matchAll(/<field(?: index="(\d+)")? term="([^"]+)"/g)].map(
		([, index, term = '']) => ({
			index: index === undefined ? undefined : Number(index),
			term,
		}),
	);
}

/** A schema that takes anything inside a root of this name: it leaves only that the text is XML. */
function anyElement(name: string): string {
	const target = name === 'eml' ? 'https://eml.ecoinformatics.org/eml-2.2.0' : 'http://rs.tdwg.org/dwc/text/';
	return `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="${target}"><xs:element name="${name}"><xs:complexType><xs:sequence><xs:any processContents="skip" minOccurs="0" maxOccurs="unbounded"/></xs:sequence><xs:anyAttribute processContents="skip"/></xs:complexType></xs:element></xs:schema>`;
}
