/** How long the card of a result takes, and how large it is. */
import sharp from 'sharp';
import {cardImage} from '../../src/clockwork/card.ts';
import {storePhoto} from '../../src/clockwork/photo-files.ts';
import {cardOf, drawnFrom, shortlist} from '../support/cards.ts';
import {inMs, median, percentile} from './table.ts';

const rounds = 30;
const warming = 3;

/** Rows of the table: cards with a photo as large as phones' are kept, one after another. */
export async function measureCards(folder: string): Promise<readonly (readonly string[])[]> {
	const from = drawnFrom('british-isles');
	const photo = {hash: await storePhoto(folder, await madePhoto())};
	const cards = [
		['one name, with its photo', cardOf({photo})],
		['four of a shortlist, with its photo', cardOf({sure: 'shortlist', names: [...shortlist], photo})],
		['one name, without a photo', cardOf()],
	] as const;
	const rows: (readonly string[])[] = [];
	for (const [name, card] of cards) {
		const times: {readonly ms: number; readonly processorMs: number}[] = [];
		let sizeBytes = 0;
		for (let round = 0; round < rounds + warming; round += 1) {
			const [began, used] = [performance.now(), process.cpuUsage()];
			sizeBytes = (await cardImage(card, {from, photoFolder: folder})).byteLength;
			const {user, system} = process.cpuUsage(used);
			times.push({ms: performance.now() - began, processorMs: (user + system) / 1000});
		}
		const warm = times.slice(warming);
		const all = warm.map(({ms}) => ms);
		const kilobytes = `${Math.round(sizeBytes / 1000)} kB`;
		const processor = `${inMs(median(warm.map(({processorMs}) => processorMs)))} of it processor`;
		rows.push([name, inMs(median(all)), inMs(percentile(all, 0.95)), `${processor}, ${kilobytes}`]);
	}
	return rows;
}

/** As large as photos are kept, with the small grains of sand that make a JPEG large. */
function madePhoto(): Promise<Buffer> {
	const grains = `<svg xmlns="http://www.w3.org/2000/svg" width="2560" height="1920"><filter id="sand"><feTurbulence type="fractalNoise" baseFrequency="0.05" numOctaves="4"/></filter><rect width="100%" height="100%" fill="#b9a684"/><rect width="100%" height="100%" filter="url(#sand)" opacity="0.5"/></svg>`;
	return sharp(Buffer.from(grains), {density: 72}).flatten().jpeg({quality: 85}).toBuffer();
}
