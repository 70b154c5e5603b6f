/** What a call takes along: a drawing, stored photos, a file; and what becomes of it when that is not there. */
import {existsSync} from 'node:fs';
import {join} from 'node:path';
import type {Call} from '../store/call.ts';
import type {Posting, Waiting} from '../store/outbox.ts';
import type {Found, Pictures} from './pictures.ts';
import type {Sending} from './platform-call.ts';

/** A row whose call could be read. */
export type Readable = Waiting & {readonly call: Call};

/** Where luggage comes from. */
export type LuggageTools = {
	readonly now: () => number;
	readonly pictures: Pictures;
	/** Where the files of parcels stand. */
	readonly parcelFolder: string;
	readonly log: (line: Readonly<Record<string, unknown>>) => void;
};

/** Ready to be sent, to be looked for again, or not to be had, so that the call is pointless. */
export type Luggage =
	| {
			readonly kind: 'packed';
			readonly items: Pick<Sending, 'picture' | 'pictures' | 'document' | 'onFileId'>;
			/** The card that comes by itself after its words, since it was late. */
			readonly follow?: Omit<Posting, 'now'> | undefined;
	  }
	| {readonly kind: 'not-yet'; readonly afterMs: number}
	| {readonly kind: 'missing'};

/** How long a message waits for the photo that goes with it. */
const photoPatienceMs = 120_000;
/** How long the question whether lines lie right waits for its photo. */
const linesPatienceMs = 15_000;
/** How long an album waits for its drawing. */
const albumPatienceMs = 10_000;
/** Platform-limits.json, media_group. */
const mostInAlbum = 10;
/** A card that is not drawn after so many looks will not be. */
const mostFollowed = 20;
const notYet: Luggage = {kind: 'not-yet', afterMs: 1000};

/** Whether the call of a row could be read. */
export function isReadable(row: Waiting): row is Readable {
	return row.call !== undefined;
}

/** Gathers what a row's call takes along. */
export async function packLuggage(tools: LuggageTools, row: Readable): Promise<Luggage> {
	const {call} = row;
	switch (call.kind) {
		case 'send':
			return call.follows === true ? packFollowing(tools, row, call) : packPicture(tools, row, call);
		case 'album':
			return packAlbum(tools, row, call);
		case 'document':
			return packDocument(tools, row, call);
		case 'answer':
		case 'commands':
		case 'edit':
			return {kind: 'packed', items: {}};
	}
}

type Send = Extract<Call, {kind: 'send'}>;

async function packPicture({pictures, now}: LuggageTools, row: Readable, call: Send): Promise<Luggage> {
	const {picture, photo, photoOf} = call;
	if (picture) {
		// Lines on a photo are the question itself: without them there is nothing to say yes to.
		const patienceMs = picture.kind === 'measured' || picture.kind === 'tray' ? linesPatienceMs : undefined;
		const drawn = await pictures.drawing(picture, patienceMs);
		return drawn === 'late' ? {kind: 'packed', items: {}, follow: followOf(row, call)} : packed(drawn);
	}
	if (photo === undefined && photoOf === undefined) return {kind: 'packed', items: {}};
	const found = await (photo === undefined ? pictures.photoOf(photoOf ?? 0) : pictures.photo(photo));
	if (found === 'not-yet') return isPatient(now, row) ? notYet : {kind: 'packed', items: {}};
	return packed(found);
}

async function packFollowing(
	{pictures, log}: LuggageTools,
	row: Readable,
	{picture}: Send,
): Promise<Luggage> {
	const drawn = picture && (await pictures.drawing(picture));
	if (drawn === 'late' && row.attempts < mostFollowed) return notYet;
	if (drawn === 'late') log({level: 'warn', what: 'card given up', row: row.id});
	return drawn === undefined || drawn === 'late' ? {kind: 'missing'} : packed(drawn);
}

/** Stored photos, then the drawing, for which nobody waits at a question. */
async function packAlbum(
	{pictures, now}: LuggageTools,
	row: Readable,
	call: Extract<Call, {kind: 'album'}>,
): Promise<Luggage> {
	const stored = await pictures.photosOf(call.photosOf);
	if (stored === 'not-yet' && isPatient(now, row)) return notYet;
	const drawn = call.picture && (await pictures.drawing(call.picture, albumPatienceMs));
	const photos = stored === 'not-yet' ? [] : stored.slice(0, mostInAlbum - 1);
	const drawings = drawn && drawn !== 'late' ? [drawn.picture] : [];
	return {kind: 'packed', items: {pictures: [...photos, ...drawings]}};
}

async function packDocument(
	{parcelFolder, log}: LuggageTools,
	row: Readable,
	call: Extract<Call, {kind: 'document'}>,
): Promise<Luggage> {
	const path = join(parcelFolder, call.file);
	if (existsSync(path)) return {kind: 'packed', items: {document: path}};
	log({level: 'error', what: 'file gone before it was sent', row: row.id});
	return {kind: 'missing'};
}

function packed(found: Found | undefined): Luggage {
	if (!found) return {kind: 'packed', items: {}};
	return {kind: 'packed', items: {picture: found.picture, onFileId: found.remember}};
}

function followOf({chat, find}: Readable, {picture, thread, alone}: Send): Omit<Posting, 'now'> | undefined {
	if (alone === undefined) return undefined;
	const follow = {kind: 'send' as const, html: alone, keyboard: [], follows: true, picture};
	return {chat, find, role: 'say', call: thread === undefined ? follow : {...follow, thread}};
}

function isPatient(now: () => number, row: Readable): boolean {
	return now() - row.createdAt <= photoPatienceMs;
}
