import {execFileSync} from 'node:child_process';
import {existsSync, readdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import sharp from 'sharp';
import {expect} from 'vitest';
import {z} from 'zod';
import type {Actor} from '../support/actor.ts';
import {journeyTest} from '../support/journey.ts';
import {phonePhoto} from '../support/photo.ts';
import {begin, newestDraft, press, walkTo} from '../support/steps.ts';

const dataSchema = z.object({
	asOf: z.iso.datetime(),
	person: z.object({platformId: z.number(), zone: z.string().nullable(), createdAt: z.iso.datetime()}),
	finds: z.array(
		z.object({
			number: z.number(),
			uuid: z.uuid(),
			answers: z.array(z.object({question: z.string(), at: z.iso.datetime()})),
			record: z.array(z.object({status: z.string(), body: z.looseObject({note: z.string().optional()})})),
			photos: z.array(z.object({file: z.string()})),
		}),
	),
	messages: z.array(z.object({createdAt: z.iso.datetime()})),
});

/** The files of the zip that the bot sent last, read by a program that nobody here wrote. */
function unzipped({
	room,
	ada,
	folder,
}: {
	room: {fileBytes: (id: string) => Uint8Array | undefined};
	ada: Actor;
	folder: string;
}) {
	const sent = ada.all.findLast(({document}) => document !== undefined);
	const file = join(folder, 'received.zip');
	writeFileSync(file, room.fileBytes(sent?.document?.fileId ?? '') ?? Buffer.alloc(0));
	const read = (name: string) => execFileSync('unzip', ['-p', file, name]);
	const names = execFileSync('unzip', ['-Z1', file]).toString().trim().split('\n');
	return {sent, names, read};
}

journeyTest(
	'/mydata brings all that is held on a person, with the photos and what they wrote',
	async journey => {
		const {ada, db, folder, room} = journey;
		await begin(ada);
		await walkTo({db, person: ada}, 'photo');
		await ada.photo(await phonePhoto(400, 300));
		await walkTo({db, person: ada}, 'kept', {
			photo: press('Go on'),
			where: person => person.sends('Secret Cove'),
		});
		const {find, body} = await newestDraft(db, ada);
		await ada.sends('/mydata');
		const {sent, names, read} = unzipped(journey);
		expect(sent?.document?.fileName).toBe('my-data-2026-05-02.zip');
		expect(sent?.text).toContain('All that I hold on you');
		expect(names.slice(0, 2)).toEqual(['READ-ME.txt', 'my-data.json']);
		expect(names).toHaveLength(3);
		expect(read('READ-ME.txt').toString()).toContain('/forget erases everything');
		const data = dataSchema.parse(JSON.parse(read('my-data.json').toString()));
		expect(data.person.platformId).toBe(ada.id);
		const own = data.finds.find(({number}) => number === find.id);
		expect(own).toMatchObject({
			uuid: body.id,
			record: [{status: 'draft', body: {place: {name: 'Secret Cove'}}}],
		});
		expect(own?.answers.map(({question}) => question)).toEqual(find.trail.map(({question}) => question));
		const [photo] = own?.photos ?? [];
		expect(names).toContain(photo?.file);
		const {exif, width} = await sharp(read(photo?.file ?? '')).metadata();
		expect({exif, width}).toEqual({exif: undefined, width: 300});
		// Nothing of it stays once it is sent.
		await expect.poll(() => readdirSync(join(folder, 'parcels')), {timeout: 5000}).toEqual([]);
		expect(await db.selectFrom('parcel').select('id').execute()).toEqual([]);
		expect(room.calls().filter(({method}) => method === 'sendDocument').length).toBeGreaterThan(0);
	},
	['plain', 'delivered twice', 'restarted after each update'],
);

journeyTest(
	'/mydata holds nothing of anybody else, and is not answered in a group',
	async ({ada, db, person, folder, room}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'kept', {where: one => one.sends('Secret Cove')});
		const cato = person('Cato');
		await begin(cato);
		await cato.sends('/mydata');
		const {read, names} = unzipped({room, ada: cato, folder});
		const text = read('my-data.json').toString();
		expect(text).not.toContain('Secret Cove');
		expect(text).not.toContain(String(ada.id));
		expect(names).toEqual(['READ-ME.txt', 'my-data.json']);
		const inGroup = person('Cato', -1_001_000_000_001);
		await inGroup.sends('/mydata');
		expect(inGroup.sees.text).toContain('Let us do this in our private chat');
		expect(existsSync(join(folder, 'parcels', '2'))).toBe(false);
	},
	['plain'],
);
