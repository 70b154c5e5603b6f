/** /tellme: who wants to hear of survey days, and of which. */
import type {Message} from 'grammy/types';
import {readPlace} from '../../place/place.ts';
import {
	type Asked,
	askedIn,
	askToBeTold,
	type Listener,
	stopTelling,
	takeBackWish,
} from '../../store/audience.ts';
import type {Keyboard} from '../../store/call.ts';
import {listenFor, stopListening} from '../../store/seats.ts';
import {sharingOf} from '../../store/sharing.ts';
import {nearM} from '../../survey/news.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, regionOf, sayHere, shelfOf, sitterAt} from '../desk.ts';
import {lastSpot} from '../last-spot.ts';

/** Shows what a chat is told, and what it may ask for; or takes the place written after the command. */
export async function showTellMe(ctx: Ctx): Promise<void> {
	const written = typeof ctx.match === 'string' ? ctx.match.trim() : '';
	return written === '' ? showWishes(ctx.desk) : hearPlace(ctx.desk, written);
}

/** Does what a button about being told asks for. */
export async function actOnTellMe(desk: Desk, [act = '', what = '']: readonly string[]): Promise<void> {
	const {tx, chat} = desk;
	switch (act) {
		case 'coast':
			if (!desk.house.shelves.has(what)) return showWishes(desk);
			return ask(desk, {kind: 'coast', region: what});
		case 'last': {
			const spot = await lastSpot(desk);
			return spot ? ask(desk, nearAsked(spot)) : askPlace(desk);
		}
		case 'place':
			return askPlace(desk);
		case 'back':
			await takeBackWish(tx, {id: Number(what), chat: chat.id});
			return showWishes(desk);
		case 'stop':
			await stopTelling(tx, chat.id);
			return sayHere(desk, readerAt(desk).say.say('tellme-stopped'));
		default:
			return showWishes(desk);
	}
}

/** Takes a message as the place to be told about. */
export async function hearPlaceIn(desk: Desk, {location, venue, text = ''}: Message): Promise<void> {
	return hearPlace(desk, location ?? venue?.location ?? text);
}

/** Takes a place to be told about, as written or as a pin; anything else is asked for again. */
async function hearPlace(
	desk: Desk,
	heard: string | {readonly latitude: number; readonly longitude: number},
): Promise<void> {
	const seat = sitterAt(desk);
	if (typeof heard !== 'string') {
		await stopListening(desk.tx, seat);
		return ask(desk, nearAsked(heard));
	}
	const read = readPlace(heard);
	if (read.kind !== 'place' || read.place.kind !== 'spot') return askPlace(desk);
	await stopListening(desk.tx, seat);
	return ask(desk, nearAsked(read.place));
}

/** To a tenth of a degree: as near as is needed, and no nearer. */
function nearAsked({latitude, longitude}: {readonly latitude: number; readonly longitude: number}): Asked {
	return {kind: 'near', latitude: Number(latitude.toFixed(1)), longitude: Number(longitude.toFixed(1))};
}

async function ask(desk: Desk, asked: Asked): Promise<void> {
	const {tx, chat, person, now} = desk;
	await askToBeTold(tx, {chat: chat.id, person: person.id, asked, now});
	return showWishes(desk);
}

async function askPlace(desk: Desk): Promise<void> {
	const {say} = readerAt(desk);
	if (desk.chat.kind === 'group') return sayHere(desk, say.say('tellme-place-group'));
	await listenFor(desk.tx, sitterAt(desk), {kind: 'place'});
	return sayHere(desk, say.say('tellme-place'));
}

async function showWishes(desk: Desk): Promise<void> {
	const {say} = readerAt(desk);
	const wishes = await askedIn(desk.tx, desk.chat.id);
	const named = await Promise.all(wishes.map(async wish => ({wish, name: await nameOf(desk, wish)})));
	const lines = named.map(({name}) => `• ${name}`);
	const off = named.map(({wish, name}) => [
		{text: say.say('tellme-back', {name: cut(name)}), data: button('back', String(wish.id))},
	]);
	const text = say.say(wishes.length === 0 ? 'tellme-nothing' : 'tellme-now');
	const stop = wishes.length > 0 ? [[{text: say.say('tellme-stop'), data: button('stop')}]] : [];
	return sayHere(desk, [text, ...lines].join('\n'), [...(await offers(desk, wishes)), ...off, ...stop]);
}

/** What may be asked for beside what is told already. */
async function offers(desk: Desk, wishes: readonly Listener[]): Promise<Keyboard> {
	const {say} = readerAt(desk);
	const has = (region: string) => wishes.some(({asked}) => asked.kind === 'coast' && asked.region === region);
	const own = regionOf(desk);
	const coasts = [own, ...[...desk.house.shelves.keys()].filter(region => region !== own)].filter(
		region => !has(region),
	);
	const spot = await lastSpot(desk);
	return [
		...coasts.slice(0, 3).map(region => [{text: coastName(desk, region), data: button('coast', region)}]),
		...(spot ? [[{text: say.say('tellme-last'), data: button('last')}]] : []),
		[{text: say.say('tellme-near'), data: button('place')}],
	];
}

async function nameOf(desk: Desk, {asked}: Listener): Promise<string> {
	const {say} = readerAt(desk);
	switch (asked.kind) {
		case 'coast':
			return coastName(desk, asked.region);
		case 'near':
			return say.say('tellme-wish-near', {
				km: nearM / 1000,
				latitude: asked.latitude.toFixed(1),
				longitude: asked.longitude.toFixed(1),
			});
		case 'coordinator': {
			const {publicName} = await sharingOf(desk.tx, asked.coordinator);
			return publicName === undefined
				? say.say('tellme-wish-someone')
				: say.say('tellme-wish-name', {name: publicName});
		}
	}
}

function coastName(desk: Desk, region: string): string {
	return shelfOf(desk.house, region).texts.in(desk.person.language).say('region-name');
}

/** A label of a button has at most 24 characters. */
function cut(name: string): string {
	const letters = [...name];
	return letters.length <= 14 ? name : `${letters.slice(0, 13).join('')}…`;
}

function button(act: string, ...more: readonly string[]): string {
	return menuButton('tellme', act, ...more);
}
