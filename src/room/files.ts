import {createHash} from 'node:crypto';
import {z} from 'zod';
import type {Core} from './core.ts';
import {nextNumber} from './core.ts';
import type {ImageSize} from './image-size.ts';
import * as limits from './limits.ts';
import type {PhotoSize, SentDocument} from './message.ts';

const fileRow = z.object({
	id: z.string(),
	unique_id: z.string(),
	kind: z.enum(['photo', 'document']),
	path: z.string(),
	name: z.string().nullable(),
	mime: z.string().nullable(),
	size_bytes: z.number(),
	width: z.number(),
	height: z.number(),
	link_until: z.number(),
});
const contentRow = z.object({bytes: z.instanceof(Uint8Array)});
const columns = 'id, unique_id, kind, path, name, mime, size_bytes, width, height, link_until';

type FileRow = z.infer<typeof fileRow>;

/** A file the room keeps; `linkUntil` is UTC milliseconds. */
export type KeptFile = {
	readonly id: string;
	readonly uniqueId: string;
	readonly kind: 'photo' | 'document';
	readonly path: string;
	readonly name: string | undefined;
	readonly mime: string | undefined;
	readonly sizeBytes: number;
	readonly linkUntil: number;
};

/** A file on its way in. */
export type NewFile = {
	readonly bytes: Uint8Array;
	readonly name?: string | undefined;
	readonly mime?: string | undefined;
};

/** Keeps a photo and gives its sizes, smallest first; all of them point at the same untouched bytes. */
export function keepPhoto(core: Core, bytes: Uint8Array, full: ImageSize): PhotoSize[] {
	const hash = keepContent(core, bytes);
	const number = nextNumber(core, 'file', 1);
	const longest = Math.max(full.width, full.height);
	const sizes = [
		{letter: 's', side: 90},
		{letter: 'm', side: 320},
		{letter: 'y', side: longest},
	].filter(size => size.letter === 'y' || size.side < longest);
	for (const {letter, side} of sizes) {
		core.db.run(
			"insert into file (id, unique_id, kind, hash, path, size_bytes, width, height) values (?, ?, 'photo', ?, ?, ?, ?, ?)",
			`room-photo-${number}-${letter}`,
			`${hash.slice(0, 14)}${letter}`,
			hash,
			`photos/file_${number}_${letter}.${bytes[0] === 0x89 ? 'png' : 'jpg'}`,
			bytes.length,
			Math.max(1, Math.round((full.width * side) / longest)),
			Math.max(1, Math.round((full.height * side) / longest)),
		);
	}
	return photoSizes(core, `room-photo-${number}-y`);
}

/** Keeps a file as it is. */
export function keepDocument(core: Core, file: NewFile): SentDocument {
	const hash = keepContent(core, file.bytes);
	const number = nextNumber(core, 'file', 1);
	const ending = /\.[A-Za-z0-9]{1,8}$/.exec(file.name ?? '')?.[0] ?? '';
	core.db.run(
		"insert into file (id, unique_id, kind, hash, path, name, mime, size_bytes, width, height) values (?, ?, 'document', ?, ?, ?, ?, ?, 0, 0)",
		`room-document-${number}`,
		`${hash.slice(0, 14)}d`,
		hash,
		`documents/file_${number}${ending}`,
		file.name,
		file.mime,
		file.bytes.length,
	);
	const kept = rowWithId(core, `room-document-${number}`);
	if (kept === undefined) throw new Error(`Expected file ${number} to be there right after it was kept`);
	return asDocument(kept);
}

/** All sizes of the photo that one size belongs to, smallest first; empty when there is no such photo. */
export function photoSizes(core: Core, id: string): PhotoSize[] {
	const family = /^(room-photo-\d+)-[smy]$/.exec(id)?.[1];
	if (family === undefined) return [];
	const rows = core.db.all(
		fileRow,
		`select ${columns} from file where id glob ? order by width * height`,
		`${family}-?`,
	);
	return rows.map(row => ({...asFile(row), width: row.width, height: row.height}));
}

/** The document with that file id, as a message shows it. */
export function documentWithId(core: Core, id: string): SentDocument | undefined {
	const row = rowWithId(core, id);
	return row?.kind === 'document' ? asDocument(row) : undefined;
}

/** The file with that id. */
export function fileWithId(core: Core, id: string): KeptFile | undefined {
	const row = rowWithId(core, id);
	return row === undefined ? undefined : fromRow(row);
}

/** The file at that path, if its link is still good. */
export function fileAtPath(core: Core, path: string): KeptFile | undefined {
	const row = core.db.one(fileRow, `select ${columns} from file where path = ?`, path);
	return row === undefined || row.link_until < core.clock.now() ? undefined : fromRow(row);
}

/** Makes the link to a file good for another hour. */
export function openLink(core: Core, id: string): void {
	core.db.run('update file set link_until = ? where id = ?', core.clock.now() + limits.downloadLinkMs, id);
}

/** The bytes of a file, as they came in; undefined when there is no such file. */
export function fileBytes(core: Core, id: string): Uint8Array | undefined {
	const sql = 'select bytes from content join file on file.hash = content.hash where file.id = ?';
	return core.db.one(contentRow, sql, id)?.bytes;
}

function keepContent(core: Core, bytes: Uint8Array): string {
	const hash = createHash('sha256').update(bytes).digest('base64url').replaceAll(/[-_]/g, 'x');
	core.db.run('insert or ignore into content (hash, bytes) values (?, ?)', hash, bytes);
	return hash;
}

function rowWithId(core: Core, id: string): FileRow | undefined {
	return core.db.one(fileRow, `select ${columns} from file where id = ?`, id);
}

function asFile(row: FileRow): {file_id: string; file_unique_id: string; file_size: number} {
	return {file_id: row.id, file_unique_id: row.unique_id, file_size: row.size_bytes};
}

function asDocument(row: FileRow): SentDocument {
	const name = row.name === null ? {} : {file_name: row.name};
	const mime = row.mime === null ? {} : {mime_type: row.mime};
	return {...asFile(row), ...name, ...mime};
}

function fromRow(row: FileRow): KeptFile {
	return {
		id: row.id,
		uniqueId: row.unique_id,
		kind: row.kind,
		path: row.path,
		name: row.name ?? undefined,
		mime: row.mime ?? undefined,
		sizeBytes: row.size_bytes,
		linkUntil: row.link_until,
	};
}
