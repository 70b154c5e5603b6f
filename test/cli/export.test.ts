import {
	copyFileSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	writeFileSync,
} from 'node:fs';
import {join} from 'node:path';
import {expect, onTestFinished, test} from 'vitest';
import {runExport} from '../../src/cli/export-command.ts';
import {keepDraft, withdrawDraft} from '../../src/store/drafts.ts';
import {openStore} from '../../src/store/open.ts';
import type {Db} from '../../src/store/schema.ts';
import {chooseSharing} from '../../src/store/sharing.ts';
import {draftWith, placed, uuid} from '../record/made-up.ts';
import {addFind, addPerson} from '../store/rows.ts';
import {quickFolder} from '../support/folder.ts';

const root = join(import.meta.dirname, '../..');
const hash = 'cd'.repeat(32);

test('saved records are written and counted', async () => {
	const {folder, exports, said} = await keeper(3);
	expect(await exports('--format', 'csv', '--out', 'out/finds.csv')).toBe(0);
	expect(said).toEqual(['out/finds.csv: 3 records']);
	expect(readFileSync(join(folder, 'out/finds.csv'), 'utf8').trimEnd().split('\r\n')).toHaveLength(4);
});

test('every form can be written, and an export made again replaces the last', async () => {
	const {folder, exports} = await keeper(2);
	for (const format of ['archive', 'csv', 'geojson', 'totals'])
		for (const _ of ['once', 'again']) expect(await exports('--format', format, '--out', format)).toBe(0);
	expect(readFileSync(join(folder, 'archive')).subarray(0, 2).toString()).toBe('PK');
	expect(JSON.parse(readFileSync(join(folder, 'geojson'), 'utf8')).features).toHaveLength(2);
	expect(JSON.parse(readFileSync(join(folder, 'totals'), 'utf8'))).toMatchObject({
		all: {finds: 2, cases: 6},
		months: {'2026-05': {finds: 2}},
		statuses: {unverified: {finds: 2}},
	});
	expect(readdirSync(folder).filter(name => name.includes('half') || name.startsWith('.export'))).toEqual([]);
});

test('a withdrawn record is not exported', async () => {
	const {db, exports, said} = await keeper(2);
	await withdrawDraft(db, {find: 1, now: 9});
	expect(await exports('--format', 'csv', '--out', 'finds.csv')).toBe(0);
	expect(said).toEqual(['finds.csv: 1 records']);
});

test.each([
	[['--from', '2026-05-03'], 1],
	[['--to', '2026-05-02'], 1],
	[['--from', '2026-05-02', '--to', '2026-05-03'], 2],
	[['--near', 'SW 46 30'], 1],
	[['--near', '50.12, -5.547', '--within', '1km'], 1],
	[['--near', 'SW 465 304', '--within', '500m'], 1],
	[['--near', 'SW 43', '--to', '2026-05-02'], 1],
	[['--area', 'south-west'], 1],
	[['--status', 'unverified,agreed'], 2],
])('%j narrows what is written', async (options, count) => {
	const {db, exports, said} = await keeper(1);
	await save(db, {find: await addFind(db, {chat: 1, person: 1}), date: '2026-05-03', place: 'Sandy Cove'});
	expect(await exports('--format', 'csv', '--out', 'finds.csv', ...options)).toBe(0);
	expect(said).toEqual([`finds.csv: ${count} records`]);
});

test('nothing that fits is said, and nothing is written', async () => {
	const {folder, exports, said} = await keeper(1);
	for (const format of ['archive', 'csv', 'geojson', 'totals'])
		expect(await exports('--format', format, '--out', 'finds', '--status', 'agreed')).toBe(1);
	expect(said[0]).toContain('there is none, and nothing was written');
	expect(existsSync(join(folder, 'finds'))).toBe(false);
});

test('a place that its finder wants hidden is shown with --exact alone', async () => {
	const {db, folder, exports} = await keeper(1);
	await chooseSharing(db, 1, {publicName: 'Shell Seeker', coarseM: 10_000});
	await exports('--format', 'csv', '--out', 'public.csv');
	await exports('--format', 'csv', '--out', 'exact.csv', '--exact');
	const [open, exact] = ['public.csv', 'exact.csv'].map(name => readFileSync(join(folder, name), 'utf8'));
	expect(open).toContain('Shell Seeker');
	expect(open).not.toContain('SW 465 304');
	expect(exact).toContain('SW 465 304');
});

test('a kind that a law protects is hidden by the region’s own mark', async () => {
	const {db, folder, exports} = await keeper(0);
	const taxon = 'rostroraja-alba';
	await save(db, {find: await addFind(db, {chat: 1, person: 1}), taxon});
	await exports('--format', 'csv', '--out', 'finds.csv');
	const text = readFileSync(join(folder, 'finds.csv'), 'utf8');
	expect(text).toContain('protected by Wildlife and Countryside Act 1981');
	expect(text).not.toContain('465');
});

test('with photos the archive holds them', async () => {
	const {folder, exports} = await keeper(1);
	mkdirSync(join(folder, 'photos', 'cd'), {recursive: true});
	writeFileSync(join(folder, 'photos', 'cd', `${hash}.jpg`), 'as if it were a photo');
	await exports('--format', 'archive', '--out', 'without.zip');
	await exports('--format', 'archive', '--out', 'with.zip', '--with-photos');
	const holds = (name: string) => readFileSync(join(folder, name)).includes(`media/${hash}.jpg`);
	expect([holds('without.zip'), holds('with.zip')]).toEqual([false, true]);
});

test('without a description of the data nothing is opened or written', async () => {
	const {folder, exports, said} = await keeper(1);
	rmSync(join(folder, 'dataset.yaml'));
	expect(await exports('--format', 'csv', '--out', 'new/finds.csv')).toBe(1);
	expect(said[0]).toContain(`${join(folder, 'dataset.yaml')}; there is none`);
	expect(existsSync(join(folder, 'new'))).toBe(false);
});

test('a description elsewhere is found by its setting', async () => {
	const {folder, exports} = await keeper(1);
	mkdirSync(join(folder, 'words'));
	copyFileSync(join(folder, 'dataset.yaml'), join(folder, 'words', 'ours.yaml'));
	rmSync(join(folder, 'dataset.yaml'));
	expect(await exports('--format', 'csv', '--out', 'finds.csv', 'DATASET_FILE=words/ours.yaml')).toBe(0);
});

test('an export of nothing says where it looked and makes no database', async () => {
	const {db, folder, exports, said} = await keeper(0);
	await db.destroy();
	rmSync(join(folder, 'pursekey.db'));
	expect(await exports('--format', 'csv', '--out', 'finds.csv')).toBe(1);
	expect(said[0]).toContain(`a database at ${join(folder, 'pursekey.db')}; there is none`);
	expect(existsSync(join(folder, 'pursekey.db'))).toBe(false);
});

test('the database itself is never written over', async () => {
	const {exports, said} = await keeper(1);
	expect(await exports('--format', 'csv', '--out', 'pursekey.db')).toBe(1);
	expect(said[0]).toContain('is the database itself');
});

test('a record of a region that is gone stops the export with its name', async () => {
	const {db, exports, said} = await keeper(0);
	await save(db, {find: await addFind(db, {chat: 1, person: 1}), region: 'atlantis'});
	expect(await exports('--format', 'csv', '--out', 'finds.csv')).toBe(1);
	expect(said[0]).toContain('got "atlantis"');
});

test('help is given when asked for', async () => {
	const {exports, said} = await keeper(0);
	expect(await exports('--help')).toBe(0);
	expect(said[0]).toContain('npm run export -- --format FORMAT --out FILE');
});

test.each([
	[[], 'Expected --format with one of archive, csv, geojson, totals; got none'],
	[['--format', 'pdf'], 'got "pdf"'],
	[['--format', 'csv'], 'Expected --out'],
	[
		['--format', 'csv', '--out', 'x', '--from', 'May'],
		'Expected --from with a day such as 2026-05-02; got "May"',
	],
	[['--format', 'csv', '--out', 'x', '--to', '2026-02-30'], 'got "2026-02-30"'],
	[
		['--format', 'csv', '--out', 'x', '--from', '2026-05-03', '--to', '2026-05-02'],
		'Expected --from before --to',
	],
	[['--format', 'csv', '--out', 'x', '--status', 'fine'], 'got "fine"'],
	[['--format', 'csv', '--out', 'x', '--near', 'Sandy Cove'], 'got "Sandy Cove"'],
	[['--format', 'csv', '--out', 'x', '--near', '50.1, -5.5'], 'Expected --within beside coordinates'],
	[['--format', 'csv', '--out', 'x', '--near', 'SW 46', '--within', 'far'], 'got "far"'],
	[['--format', 'csv', '--out', 'x', '--near', 'SW 46', '--within', '0m'], 'got "0m"'],
	[['--format', 'csv', '--out', 'x', '--within', '5km'], 'Expected --near beside --within'],
	[['--format', 'csv', '--out', 'x', '--near', 'SW 46', '--area', 'channel'], 'Expected --area alone'],
	[['--format', 'csv', '--out', 'x', '--with-photos'], 'Expected --with-photos with --format archive'],
	[['--format', 'csv', '--out', 'x', '--speed'], '--speed'],
])('%j is a wrong call, told in one line', async (args, told) => {
	const {exports, said} = await keeper(0);
	expect(await exports(...args)).toBe(2);
	expect(said).toHaveLength(1);
	expect(said[0]).toContain(told);
});

test('an area that no region has is told with those there are', async () => {
	const {exports, said} = await keeper(1);
	expect(await exports('--format', 'csv', '--out', 'x', '--area', 'atlantis')).toBe(1);
	expect(said[0]).toMatch(/Expected --area with one of .*channel.*; got "atlantis"/);
});

/** A folder with a description of the data and a database of so many records, and the command called there. */
async function keeper(records: number) {
	const folder = mkdtempSync(join(quickFolder(), 'export-'));
	const db = await openStore(join(folder, 'pursekey.db'));
	onTestFinished(async () => {
		await db.destroy();
		rmSync(folder, {recursive: true, force: true});
	});
	copyFileSync(join(root, 'deploy', 'dataset.example.yaml'), join(folder, 'dataset.yaml'));
	await db.insertInto('chat').values({kind: 'private', goneAt: null, createdAt: 0}).execute();
	await addPerson(db, 7);
	for (let made = 0; made < records; made++) await save(db, {find: await addFind(db, {chat: 1, person: 1})});
	const said: string[] = [];
	const say = (line: string) => void said.push(line);
	return {
		db,
		folder,
		said,
		/** The words of a call; one such as `NAME=value` is a setting. */
		exports: (...words: readonly string[]) => {
			const isSetting = (word: string) => /^[A-Z_]+=/.test(word);
			const settings = words.filter(isSetting).map(word => word.split('='));
			return runExport(
				words.filter(word => !isSetting(word)),
				{
					root,
					calledIn: folder,
					environment: {DATA_DIR: folder, ...Object.fromEntries(settings)},
					say,
					complain: say,
				},
			);
		},
	};
}

async function save(
	db: Db,
	made: {find: number; date?: string; place?: string; taxon?: string; region?: string},
): Promise<void> {
	const {find, date = '2026-05-02', place = 'SW 465 304', taxon, region = 'british-isles'} = made;
	const id = uuid.replace(/..$/, String(find).padStart(2, '0'));
	const draft = {
		...draftWith({date, place: placed(place)}),
		id,
		region: {id: region, version: '0'},
		said: taxon === undefined ? [] : [taxon],
		photos: [{id: 1, hash}],
	};
	await keepDraft(db, {find, person: 1, draft, now: 5});
}
