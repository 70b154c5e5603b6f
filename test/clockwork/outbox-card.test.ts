/** The card of a result on its way: with its words, after them, or not at all, and never in their way. */
import sharp from 'sharp';
import {expect, test, vi} from 'vitest';
import type {CallPicture} from '../../src/store/picture.ts';
import {cardOf, shortlist} from '../support/cards.ts';
import {deskScene, say} from './desk.ts';

vi.setConfig({testTimeout: 60_000});

const card = cardOf();
const result = say('Likely: Thornback ray', {picture: card, alone: 'Find no. 7 as a card.'});

async function dot(background: string): Promise<Uint8Array> {
	return sharp({create: {width: 9, height: 9, channels: 3, background}})
		.png()
		.toBuffer();
}

/** A drawer that waits until it is told to go on. */
function slowDrawer() {
	let finish: (bytes: Uint8Array) => void = () => undefined;
	const drawn = new Promise<Uint8Array>(resolve => {
		finish = resolve;
	});
	return {draw: () => drawn, finish: async () => finish(await dot('red'))};
}

test('a card that is drawn in time goes with its words, as one message', async () => {
	const {put, pump, room, said, ada} = await deskScene();
	await put(ada.chat, result, {role: 'ask'});
	await pump();
	expect(said(ada.person)).toEqual(['Likely: Thornback ray']);
	expect(room.messages(ada.person.id).at(-1)?.photo).toBeDefined();
});

test('a card that is late keeps nobody waiting, and follows its words by itself', async () => {
	const drawer = slowDrawer();
	const {put, pump, room, said, clock, lines, ada} = await deskScene({drawer, patienceMs: 200});
	await put(ada.chat, result, {role: 'ask'});
	await pump();
	expect(said(ada.person)).toEqual(['Likely: Thornback ray']);
	await put(ada.chat, say('The next question'), {role: 'ask'});
	await pump();
	expect(said(ada.person)).toEqual(['Likely: Thornback ray', 'The next question']);
	await drawer.finish();
	clock.forward(1000);
	await pump();
	expect(said(ada.person).at(-1)).toBe('Find no. 7 as a card.');
	expect(room.messages(ada.person.id).at(-1)?.photo).toBeDefined();
	expect(JSON.stringify(lines)).not.toMatch(/Larkin|raja|Find no/);
});

test('a card whose words are too long for a caption goes before them, so that their buttons stand last', async () => {
	const {put, pump, room, said, ada} = await deskScene();
	const long = 'x'.repeat(1025);
	await put(ada.chat, {...result, html: long}, {role: 'ask'});
	await pump();
	expect(said(ada.person)).toEqual(['Find no. 7 as a card.', long]);
	const photos = room.messages(ada.person.id).map(({photo}) => photo !== undefined);
	expect(photos.slice(-2)).toEqual([true, false]);
});

test('a card that is never drawn is given up, and its words were there all along', async () => {
	const {put, pump, said, states, clock, ada} = await deskScene({drawer: slowDrawer(), patienceMs: 1});
	await put(ada.chat, result, {role: 'ask'});
	for (let second = 0; second < 25; second++) {
		await pump();
		clock.forward(1000);
	}
	expect(said(ada.person)).toEqual(['Likely: Thornback ray']);
	expect(await states()).toEqual(['sent', 'failed']);
});

test('where a card cannot be drawn its one name is shown instead; of several, none', async () => {
	const wanted: CallPicture[] = [];
	const draw = async (picture: CallPicture) => {
		wanted.push(picture);
		if (picture.kind === 'card') throw new Error('no ink');
		return dot('green');
	};
	const {put, pump, room, said, lines, ada} = await deskScene({drawer: {draw}});
	await put(ada.chat, result, {role: 'ask'});
	await pump();
	expect(wanted.at(-1)).toMatchObject({kind: 'taxon', taxon: 'raja-clavata'});
	expect(room.messages(ada.person.id).at(-1)?.photo).toBeDefined();
	await put(
		ada.chat,
		say('Several', {picture: cardOf({sure: 'shortlist', names: [...shortlist]}), alone: 'x'}),
	);
	await pump();
	expect(room.messages(ada.person.id).at(-1)?.photo).toBeUndefined();
	expect(said(ada.person)).toEqual(['Likely: Thornback ray', 'Several']);
	expect(lines[0]).toEqual({
		level: 'error',
		what: 'drawing failed',
		picture: 'card of british-isles',
		error: 'Error: no ink',
	});
});

test('a card that the platform refuses costs nothing but itself', async () => {
	const {put, pump, room, said, states, ada} = await deskScene();
	const error = {error_code: 400, description: 'Bad Request: IMAGE_PROCESS_FAILED'};
	room.refuse({method: 'sendPhoto', times: 1, error});
	await put(ada.chat, {...result, html: 'x'.repeat(1025)}, {role: 'ask'});
	await put(ada.chat, say('The next question'));
	await pump();
	expect(said(ada.person).map(text => text.slice(0, 17))).toEqual(['x'.repeat(17), 'The next question']);
	expect(await states()).toEqual(['sent', 'sent']);
});

test('a card shown again goes by the id that the platform gave it', async () => {
	const {put, pump, room, ada} = await deskScene();
	await put(ada.chat, result, {role: 'ask'});
	await put(ada.chat, result, {role: 'ask'});
	await pump();
	const [first, second] = room.messages(ada.person.id).slice(-2);
	expect(second?.photo?.fileId).toBe(first?.photo?.fileId);
});
