import sharp from 'sharp';
import {expect} from 'vitest';
import {groups} from '../../src/room/people.ts';
import {journeyTest, newestFind, waysOfEntry} from '../support/journey.ts';
import {fileWithHash, phonePhoto, storedPhotos} from '../support/photo.ts';
import {begin, newestDraft, questionOf, walkTo} from '../support/steps.ts';

const asPhoneFile = {asFile: true, fileName: 'IMG_0001.JPG', mimeType: 'image/jpeg'} as const;

for (const [index, asFile] of [true, false].entries()) {
	journeyTest(
		`a picture sent as a ${asFile ? 'file' : 'photo'} is stored upright, without its metadata`,
		async ({ada, db, folder}) => {
			const sent = await phonePhoto(600, 400);
			const before = await sharp(sent).metadata();
			expect(before.orientation).toBe(6);
			expect(before.exif?.toString('latin1')).toContain('Made-up phone');
			await begin(ada);
			await walkTo({db, person: ada}, 'photo');
			await ada.photo(sent, {asFile, fileName: 'IMG_0001.JPG', mimeType: 'image/jpeg'});
			expect(ada.sees.text).toContain('I have one photo.');
			const find = await newestFind(db, ada.id);
			const [photo] = await storedPhotos(db, {find: find.id, folder});
			const stored = fileWithHash(photo?.file ?? '');
			expect(stored?.sha256).toBe(photo?.hash);
			const after = await sharp(stored?.bytes).metadata();
			expect(after).toMatchObject({format: 'jpeg', width: 400, height: 600});
			expect([after.exif, after.orientation, after.xmp, after.iptc]).toEqual(Array(4).fill(undefined));
			expect(Buffer.from(stored?.bytes ?? []).toString('latin1')).not.toMatch(/Made-up|Somebody|Exif/);
		},
		waysOfEntry(index),
	);
}

journeyTest(
	'a file that says where it was taken has the place offered, and a yes puts it in the record',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'photo');
		await ada.photo(await phonePhoto(600, 400), asPhoneFile);
		await ada.presses('Go on', {on: question(ada.all)});
		expect(ada.sees.text).toContain('The file of your photo says: 50.1200, -5.5300, within 30 metres.');
		await ada.presses('Where my photo was taken');
		await walkTo({db, person: ada}, 'kept');
		expect((await newestDraft(db, ada)).body.place).toMatchObject({
			...{kind: 'spot', latitude: 50.12, longitude: -5.53, uncertaintyM: 30, how: 'photo'},
		});
	},
	['plain', 'delivered twice', 'restarted after each update'],
);

journeyTest(
	'a file that is read once another find is begun moves nobody back to the first',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'photo');
		const sent = await phonePhoto(600, 400);
		await ada.deed(() => {
			ada.room.photo(sent, asPhoneFile);
			ada.room.sends('/find');
		});
		const [first, second] = await db.selectFrom('find').select(['id', 'trail']).orderBy('id').execute();
		expect(first?.trail).toContain('photo-place');
		const seats = await db.selectFrom('seat').select('find').execute();
		expect(seats).toEqual([{find: second?.id}]);
	},
	['plain'],
);

journeyTest('in a group nobody is shown where a photo was taken', async ({ada, db, person}) => {
	await begin(ada);
	const there = person('Ada', groups[0].id);
	await there.sends('/find');
	await walkTo({db, person: there}, 'photo');
	await there.photo(await phonePhoto(600, 400), asPhoneFile);
	await there.presses('Go on', {on: question(there.all)});
	expect(await questionOf(db, there)).toBe('where');
	expect(there.all.map(({text}) => text).join()).not.toMatch(/file of your photo|50\.1200/);
	expect((await newestFind(db, there.id)).trail).not.toContain('photo-place');
});

const refused = [
	{
		what: 'a HEIC file',
		fileName: 'IMG_0002.HEIC',
		mimeType: 'image/heic',
		says: 'send it as a photo, not as a file',
	},
	{
		what: 'a HEIC file without a type',
		fileName: 'IMG_0003.heic',
		mimeType: 'application/octet-stream',
		says: 'send it as a photo, not as a file',
	},
	{
		what: 'a text file',
		fileName: 'notes.txt',
		mimeType: 'text/plain',
		says: 'I cannot use this kind of file',
	},
] as const;

for (const [index, {what, says, ...file}] of refused.entries()) {
	journeyTest(
		`${what} is refused kindly, and the question stays`,
		async ({ada, db}) => {
			await begin(ada);
			await walkTo({db, person: ada}, 'photo');
			const {turn} = await newestFind(db, ada.id);
			await ada.photo(new TextEncoder().encode('no picture'), {asFile: true, ...file});
			expect(ada.sees.text).toContain(says);
			expect(ada.sees.text).toContain('Please send a photo of the top');
			const find = await newestFind(db, ada.id);
			expect(find.turn).toBe(turn);
			expect(find.standing.facts.photos).toEqual([]);
			expect(await db.selectFrom('photo').select('id').execute()).toEqual([]);
			await ada.presses('No photo, go on');
			expect(await questionOf(db, ada)).toBe('where');
		},
		waysOfEntry(index),
	);
}

// Once is enough: 20 MB go through the room's database.
journeyTest(
	'a picture file over 20 MB is refused with its limit',
	async ({ada, db}) => {
		await begin(ada);
		await walkTo({db, person: ada}, 'photo');
		await ada.photo(new Uint8Array(20_000_001), {asFile: true, fileName: 'big.jpg'});
		expect(ada.sees.text).toContain('20 MB is the most');
		expect(await db.selectFrom('photo').select('id').execute()).toEqual([]);
		expect(await questionOf(db, ada)).toBe('photo');
	},
	['plain'],
);

journeyTest('a file that only says it is a picture is told to the finder', async ({ada, db, folder}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'photo');
	await ada.photo(new TextEncoder().encode('no picture'), {asFile: true});
	expect(ada.all.at(-1)?.text).toMatch(/I could not read a photo|I have one photo/);
	const find = await newestFind(db, ada.id);
	expect(ada.all.map(({text}) => text)).toContainEqual(
		expect.stringContaining(
			`I could not read a photo of find no. ${find.id}. Please send it again as a photo`,
		),
	);
	const [photo] = await storedPhotos(db, {find: find.id, folder});
	expect(photo).toMatchObject({state: 'failed', hash: null});
	await walkTo({db, person: ada}, 'where', {
		photo: person => person.presses('Go on', {on: question(person.all)}),
	});
});

function question<Message extends {readonly text: string}>(all: readonly Message[]): Message {
	const found = all.findLast(({text}) => text.includes('I have one photo'));
	if (!found) throw new Error('Expected the photo question among the messages; it is not there');
	return found;
}
