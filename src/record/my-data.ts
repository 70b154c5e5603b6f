/** All that is held on one person as zip files: JSON that can be read, and the photos. */
import {createWriteStream, existsSync} from 'node:fs';
import {join} from 'node:path';
import {pipeline} from 'node:stream/promises';
import {ZipFile} from 'yazl';
import type {Held} from '../store/held.ts';

/** What the files are made from, and where they go. */
export type MyDataWanted = {
	readonly held: Held;
	readonly folder: string;
	/** The first words of the zip: what is in it, as a text for people. */
	readonly explained: string;
	/** Where the photo with this SHA-256 stands. */
	readonly photoFile: (hash: string) => string;
	/** UTC milliseconds. */
	readonly now: number;
	/** The most bytes of photos in one zip; the platform takes files of 50 MB. */
	readonly mostBytes?: number;
};

type Photo = {readonly hash: string; readonly name: string; readonly sizeBytes: number};

/** Files are sent up to 50 MB (platform-limits.json, send_document); what stands beside the photos needs room, too. */
const usualMostBytes = 40_000_000;

/** Writes one zip, or as many as the photos need; gives their names in order. */
export async function writeMyData(wanted: MyDataWanted): Promise<readonly string[]> {
	const {held, folder, explained, photoFile, now} = wanted;
	const photos = photosIn(held).filter(({hash}) => existsSync(photoFile(hash)));
	const parts = partsOf(photos, wanted.mostBytes ?? usualMostBytes);
	const day = new Date(now).toISOString().slice(0, 10);
	const names = parts.map((_, index) =>
		parts.length === 1 ? `my-data-${day}.zip` : `my-data-${day}-${index + 1}-of-${parts.length}.zip`,
	);
	for (const [index, part] of parts.entries()) {
		const zip = new ZipFile();
		if (index === 0) {
			zip.addBuffer(Buffer.from(`${explained}\n`), 'READ-ME.txt');
			zip.addBuffer(Buffer.from(`${JSON.stringify(told(held, now), undefined, '\t')}\n`), 'my-data.json');
		}
		for (const {hash, name} of part) zip.addFile(photoFile(hash), name, {compress: false});
		await writeZip(zip, join(folder, names[index] ?? ''));
	}
	return names;
}

async function writeZip(zip: ZipFile, file: string): Promise<void> {
	zip.end();
	const stop = new AbortController();
	// yazl tells of a file that cannot be read on the zip, and leaves its stream open.
	zip.on('error', (error: Error) => stop.abort(error));
	await pipeline(zip.outputStream, createWriteStream(file, {mode: 0o600}), {signal: stop.signal});
}

function photosIn({photos}: Held): readonly Photo[] {
	return photos.flatMap(({id, find, hash, sizeBytes}) =>
		hash === null ? [] : [{hash, name: photoName(find, id), sizeBytes: sizeBytes ?? 0}],
	);
}

function photoName(find: number, photo: number): string {
	return `photos/find-${find}-photo-${photo}.jpg`;
}

/** Photos in the order they came, as many to a part as its size allows; the first part is there without any. */
function partsOf(photos: readonly Photo[], mostBytes: number): readonly (readonly Photo[])[] {
	const parts: Photo[][] = [[]];
	let bytes = 0;
	for (const photo of photos) {
		if (bytes > 0 && bytes + photo.sizeBytes > mostBytes) {
			parts.push([]);
			bytes = 0;
		}
		parts.at(-1)?.push(photo);
		bytes += photo.sizeBytes;
	}
	return parts;
}

/** Find by find instead of table by table, with times as people read them. */
function told(held: Held, now: number): unknown {
	const {finds, drafts, photos, reminders, decisions, letters, passedOn, messages, daysPlanned, ...rest} =
		held;
	const of = <Row extends {readonly find: number}>(rows: readonly Row[], id: number) =>
		rows.filter(({find}) => find === id).map(({find: _, ...row}) => row);
	return readable({
		asOf: new Date(now).toISOString(),
		...rest,
		finds: finds.map(({id, uuid, trail, ...find}) => ({
			number: id,
			uuid,
			...find,
			answers: JSON.parse(trail),
			record: of(drafts, id).map(({body, ...draft}) => ({...draft, body: JSON.parse(body)})),
			photos: photos
				.filter(photo => photo.find === id)
				.map(({find: _, ...photo}) => ({
					...photo,
					file: photo.hash === null ? undefined : photoName(id, photo.id),
				})),
			reminders: of(reminders, id),
			decisions: of(decisions, id),
			letters: of(letters, id),
			passedOn: passedOn.filter(({record}) => record === uuid).map(({record: _, ...row}) => row),
		})),
		daysPlanned: daysPlanned.map(({body, plan, ...day}) => ({
			...day,
			body: parsed(body),
			plan: parsed(plan),
		})),
		messages: messages.map(({content, ...message}) => ({...message, message: JSON.parse(content)})),
		requests: held.requests.map(({wanted, ...request}) => ({...request, wanted: JSON.parse(wanted)})),
	});
}

function parsed(json: string | null): unknown {
	return json === null ? undefined : JSON.parse(json);
}

/** Milliseconds as ISO 8601, wherever a name says that a number is an instant. */
function readable(value: unknown, name = ''): unknown {
	if (typeof value === 'number' && /^at$|At$/.test(name)) return new Date(value).toISOString();
	if (Array.isArray(value)) return value.map(one => readable(one));
	if (typeof value !== 'object' || value === null) return value;
	return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, readable(one, key)]));
}
