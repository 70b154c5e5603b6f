/** Files that are made for somebody: in a folder for each parcel, and gone once they are sent. */
import {mkdir, readdir, rm} from 'node:fs/promises';
import {dirname, join} from 'node:path';

/** An empty folder for what is made of a parcel; what an earlier try left there goes. */
export async function clearedFolder(folder: string, parcel: number): Promise<string> {
	const own = join(folder, String(parcel));
	await rm(own, {recursive: true, force: true});
	await mkdir(own, {recursive: true, mode: 0o700});
	return own;
}

/** Erases a file that was sent or given up, and its folder with the last one. */
export async function eraseParcelFile(folder: string, file: string): Promise<void> {
	const path = join(folder, file);
	await rm(path, {force: true});
	const own = dirname(path);
	const left = await readdir(own).catch(() => []);
	if (left.length === 0) await rm(own, {recursive: true, force: true});
}

/** Every parcel that has a folder. */
export async function parcelFolders(folder: string): Promise<readonly number[]> {
	const names = await readdir(folder).catch(() => []);
	return names.filter(name => /^\d+$/.test(name)).map(Number);
}

/** Erases the folder of a parcel, whatever is in it. */
export async function eraseParcel(folder: string, parcel: number): Promise<void> {
	await rm(join(folder, String(parcel)), {recursive: true, force: true});
}
