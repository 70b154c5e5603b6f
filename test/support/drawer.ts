/** Draws in this thread, each picture once for all programs of a test file, and small. */
import {join} from 'node:path';
import sharp from 'sharp';
import type {Drawer} from '../../src/clockwork/drawer.ts';
import {openStudio} from '../../src/clockwork/studio.ts';
import {projectRoot} from '../../src/settings.ts';
import type {CallPicture} from '../../src/store/picture.ts';
import {quickFolder} from './folder.ts';

const drawn = new Map<string, Promise<Uint8Array>>();

/** How long tests have words wait for their drawing: a picture left out would be chance. */
export const testPictureMs = 20_000;

/** A drawer that never hangs; what it draws is a whole picture, a quarter as wide. */
export function quickDrawer(photoFolder = join(quickFolder(), 'no-photos')): Drawer {
	const studio = openStudio({
		flowsFolder: join(projectRoot(), 'flows'),
		keptFolder: join(quickFolder(), 'drawn-by-tests'),
		photoFolder,
	});
	const draw = (picture: CallPicture): Promise<Uint8Array> => {
		const name = JSON.stringify(picture.kind === 'card' ? {...picture, photoFolder} : picture);
		const known =
			drawn.get(name) ?? studio(picture).then(bytes => sharp(bytes).resize({width: 270}).png().toBuffer());
		drawn.set(name, known);
		return known;
	};
	return {draw, stop: async () => undefined};
}
