import {existsSync, mkdirSync, readdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {type MadeOrNot, makeNextParcel, type ParcelTools, sweepParcels} from '../../src/clockwork/parcels.ts';
import {post} from '../../src/store/outbox.ts';
import {forgetParcels, orderParcel, type Parcel} from '../../src/store/parcels.ts';
import {storeWithFinds} from '../record/kept.ts';
import {ownFolder} from '../support/folder.ts';

const order = {chat: 1, person: 1, wanted: {kind: 'my-data'}, now: 0} as const;

async function scene(make: ParcelTools['make']) {
	const db = await storeWithFinds(0);
	const parcelFolder = join(ownFolder('parcels'), 'parcels');
	const handed: {readonly parcel: Parcel; readonly made: MadeOrNot}[] = [];
	const lines: Readonly<Record<string, unknown>>[] = [];
	const tools: ParcelTools = {
		db,
		parcelFolder,
		now: () => 0,
		make,
		onMade: async (tx, parcel, made) => {
			handed.push({parcel, made});
			if (made.kind !== 'files') return;
			for (const name of made.names) {
				const call = {kind: 'document', file: `${parcel.id}/${name}`, html: ''} as const;
				await post(tx, {chat: parcel.chat, role: 'file', call, now: 0});
			}
		},
		log: line => void lines.push(line),
	};
	const ask = () => db.transaction().execute(tx => orderParcel(tx, order));
	return {db, parcelFolder, handed, lines, tools, ask};
}

const written = async (_: Parcel, folder: string) => {
	writeFileSync(join(folder, 'all.zip'), 'whole');
	return {kind: 'files', names: ['all.zip']} as const;
};

test('what is asked for twice while it is in the making is made once', async () => {
	const {db, ask, tools, handed} = await scene(written);
	expect([await ask(), await ask()]).toEqual([true, false]);
	expect(await makeNextParcel(tools)).toBe(true);
	expect(await makeNextParcel(tools)).toBe(false);
	expect(handed.map(({made}) => made)).toEqual([{kind: 'files', names: ['all.zip']}]);
	expect(await db.selectFrom('outbox').select(['role', 'state']).execute()).toEqual([
		{role: 'file', state: 'waiting'},
	]);
	expect(await ask()).toBe(true);
});

test('a program that died in the making begins anew, in an emptied folder', async () => {
	const {parcelFolder, ask, tools} = await scene(written);
	await ask();
	mkdirSync(join(parcelFolder, '1'), {recursive: true});
	writeFileSync(join(parcelFolder, '1', 'half.zip'), 'hal');
	await makeNextParcel(tools);
	expect(readdirSync(join(parcelFolder, '1'))).toEqual(['all.zip']);
});

test('what cannot be made is tried three times, then its person hears of it and nothing stays', async () => {
	let now = 0;
	const {parcelFolder, ask, tools, handed, lines} = await scene(async (_, folder) => {
		writeFileSync(join(folder, 'half.zip'), 'hal');
		throw new Error('no room on the disk');
	});
	await ask();
	const later = {...tools, now: () => now};
	for (let tries = 1; tries <= 3; tries++) {
		expect(await makeNextParcel(later)).toBe(true);
		expect(await makeNextParcel(later)).toBe(false);
		now += 30_000;
	}
	expect(handed.map(({made}) => made)).toEqual([{kind: 'failed'}]);
	expect(lines.filter(({what}) => what === 'parcel failed')).toHaveLength(3);
	expect(existsSync(join(parcelFolder, '1'))).toBe(false);
});

test('whoever takes it back while it is in the making gets nothing, and nothing stays', async () => {
	const {db, parcelFolder, ask, tools, handed} = await scene(async (parcel, folder) => {
		await db.transaction().execute(tx => forgetParcels(tx, 1));
		return written(parcel, folder);
	});
	await ask();
	await makeNextParcel(tools);
	expect(handed).toEqual([]);
	expect(existsSync(join(parcelFolder, '1'))).toBe(false);
});

test('files that nobody waits for are swept away, those on their way and in the making stay', async () => {
	const {db, parcelFolder, ask, tools} = await scene(written);
	await ask();
	await makeNextParcel(tools);
	await ask();
	for (const parcel of ['2', '7']) {
		mkdirSync(join(parcelFolder, parcel), {recursive: true});
		writeFileSync(join(parcelFolder, parcel, 'all.zip'), 'whole');
	}
	await sweepParcels({db, parcelFolder});
	expect(readdirSync(parcelFolder).toSorted()).toEqual(['1', '2']);
	await db.updateTable('outbox').set({state: 'failed'}).execute();
	await sweepParcels({db, parcelFolder});
	expect(readdirSync(parcelFolder)).toEqual(['2']);
});
