/** Finished pictures on disk: used while they are wanted, erased when nobody does or when they take too much room. */
import {existsSync} from 'node:fs';
import {mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile} from 'node:fs/promises';
import {join} from 'node:path';

/** Pictures not used for so long are erased … */
export const unusedMs = 30 * 24 * 3_600_000;
/** … and the longest unused ones while all together are larger than this. */
export const mostKeptBytes = 200_000_000;

/** A picture as it was kept, or made now and kept; either way it counts as used `now` (UTC milliseconds). */
export async function keptPicture(
	file: string,
	{make, now}: {readonly make: () => Promise<Uint8Array>; readonly now: number},
): Promise<Uint8Array> {
	// Read without asking first: it may be erased between the two.
	const kept = await readFile(file).catch(() => undefined);
	if (kept) {
		await markUsed(file, now);
		return kept;
	}
	const bytes = await make();
	await mkdir(join(file, '..'), {recursive: true});
	// Renamed when whole: a program that dies while writing leaves no half picture under that name.
	await writeFile(`${file}.part`, bytes);
	await rename(`${file}.part`, file);
	await markUsed(file, now);
	return bytes;
}

/** Erases pictures that are long unused, and the longest unused while there are too many bytes of them. */
export async function tidyPictures(
	folder: string,
	{now, mostBytes = mostKeptBytes}: {readonly now: number; readonly mostBytes?: number},
): Promise<void> {
	if (!existsSync(folder)) return;
	const names = await readdir(folder);
	const files = await Promise.all(
		names.map(async name => {
			const file = join(folder, name);
			const found = await stat(file).catch(() => undefined);
			return found?.isFile() ? [{file, usedAt: found.mtimeMs, sizeBytes: found.size}] : [];
		}),
	);
	let room = mostBytes;
	for (const {file, usedAt, sizeBytes} of files.flat().toSorted((a, b) => b.usedAt - a.usedAt)) {
		room -= sizeBytes;
		if (room < 0 || usedAt < now - unusedMs) await rm(file, {force: true});
	}
}

/** One that was erased in this very moment is made anew the next time. */
async function markUsed(file: string, now: number): Promise<void> {
	const at = new Date(now);
	await utimes(file, at, at).catch(() => undefined);
}
