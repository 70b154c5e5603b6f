/** Pictures as phones take them, and what became of them on disk. */
import {createHash} from 'node:crypto';
import {existsSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import sharp from 'sharp';
import type {Db} from '../../src/store/schema.ts';

/** A JPEG that lies on its side (orientation 6) and says in its metadata where and by which phone it was taken. */
export async function phonePhoto(widthPx: number, heightPx: number): Promise<Uint8Array> {
	return sharp({create: {width: widthPx, height: heightPx, channels: 3, background: '#c9b48a'}})
		.jpeg()
		.withExif({
			IFD0: {Make: 'Made-up phone', Copyright: 'Somebody'},
			IFD3: {
				GPSLatitudeRef: 'N',
				GPSLatitude: '50/1 7/1 12/1',
				GPSLongitudeRef: 'W',
				GPSLongitude: '5/1 31/1 48/1',
			},
		})
		.withMetadata({orientation: 6})
		.toBuffer();
}

/** The stored photos of a find, oldest first, each with its file. */
export async function storedPhotos(db: Db, {find, folder}: {readonly find: number; readonly folder: string}) {
	const rows = await db
		.selectFrom('photo')
		.select(['id', 'state', 'hash'])
		.where('find', '=', find)
		.orderBy('id')
		.execute();
	return rows.map(({hash, ...row}) => ({...row, hash, file: photoFile(folder, hash ?? 'none')}));
}

/** Where a photo lies under the data folder: in a folder named by the first two digits of its hash. */
export function photoFile(folder: string, hash: string): string {
	return join(folder, 'photos', hash.slice(0, 2), `${hash}.jpg`);
}

/** The bytes of a file and their SHA-256, or nothing when there is no such file. */
export function fileWithHash(
	file: string,
): {readonly bytes: Uint8Array; readonly sha256: string} | undefined {
	if (!existsSync(file)) return undefined;
	const bytes = readFileSync(file);
	return {bytes, sha256: createHash('sha256').update(bytes).digest('hex')};
}
