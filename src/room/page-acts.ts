import type {HttpBindings} from '@hono/node-server';
import type {Hono} from 'hono';
import {z} from 'zod';
import * as acts from './acts.ts';
import type {Body} from './body.ts';
import {flagField, numberField, readBody} from './body.ts';
import {joinGroup, leaveGroup, setBlocked} from './membership.ts';
import type {PageRoom} from './page-room.ts';
import {asUser, chatWithId, everyone, personNamed, personWithId} from './people.ts';
import {pressButton} from './press.ts';
import {repeatLastUpdate} from './updates.ts';

const longestJumpMs = 31 * 24 * 3_600_000;
const placeShape = {person: numberField, chat: numberField, replyTo: numberField.optional()};
const textSchema = z.object({...placeShape, text: z.string()});
const pinSchema = z.object({
	...placeShape,
	latitude: numberField,
	longitude: numberField,
	accuracyM: numberField.optional(),
});
const filesSchema = z.object({
	...placeShape,
	caption: z.string().optional(),
	asFile: flagField.default(false),
});

type Deed = (room: PageRoom, body: Body) => unknown;

/** Takes in what people do on the page. */
export function serveActs(app: Hono<{Bindings: HttpBindings}>, room: PageRoom): void {
	app.get('/room/people', ctx => ctx.json(everyone(room.core).map(person => person.name)));
	app.post('/room/:deed', async ctx => {
		const deed = deeds.get(ctx.req.param('deed'));
		if (deed === undefined) return ctx.json({ok: false, trouble: 'unknown deed'}, 404);
		try {
			return ctx.json({ok: true, result: deed(room, await readBody(ctx.req.raw)) ?? true});
		} catch (error) {
			return ctx.json({ok: false, trouble: error instanceof Error ? error.message : String(error)}, 400);
		}
	});
}

const deeds: ReadonlyMap<string, Deed> = new Map<string, Deed>([
	['enter', enter],
	['text', (room, body) => acts.say(room.core, placeIn(room, body), textSchema.parse(body.fields).text)],
	['open', openCode],
	['files', sendFiles],
	['pin', (room, body) => acts.pin(room.core, placeIn(room, body), pinSchema.parse(body.fields))],
	['press', press],
	['edit', edit],
	['stand-in', standIn],
	['block', block],
	['bot-in-group', changeGroup],
	['clock', moveClock],
	['repeat', room => repeatLastUpdate(room.core)],
]);

function enter(room: PageRoom, body: Body): unknown {
	const {name} = z.object({name: z.string()}).parse(body.fields);
	const person = personNamed(room.core, name);
	return {id: person.id, name: person.name, now: room.core.clock.now()};
}

function openCode(room: PageRoom, body: Body): unknown {
	const {payload} = z.object({payload: z.string()}).parse(body.fields);
	return acts.openLinkToBot(
		room.core,
		placeIn(room, {...body, fields: {chat: 0, ...body.fields}}).person,
		payload,
	);
}

function sendFiles(room: PageRoom, body: Body): unknown {
	const {caption, asFile} = filesSchema.parse(body.fields);
	const place = placeIn(room, body);
	const uploads = [...body.uploads.values()];
	if (uploads.length === 0 || uploads.length > 10) {
		throw new Error(`Expected 1 to 10 files; got ${uploads.length}`);
	}
	if (!asFile) return acts.showPhotos(room.core, place, {photos: uploads.map(one => one.bytes), caption});
	return uploads.map((file, at) =>
		acts.giveFile(room.core, place, {...file, ...(at === 0 && caption !== undefined ? {caption} : {})}),
	);
}

function press(room: PageRoom, body: Body): unknown {
	const read = z.object({data: z.string(), messageId: numberField, inaccessible: flagField.optional()});
	return pressButton(room.core, placeIn(room, body), read.parse(body.fields));
}

function edit(room: PageRoom, body: Body): unknown {
	const {messageId, text} = z.object({messageId: numberField, text: z.string()}).parse(body.fields);
	return acts.editOwn(room.core, {...placeIn(room, body), messageId}, text);
}

function standIn(room: PageRoom, body: Body): unknown {
	const {kind} = z.object({kind: z.enum(['sticker', 'voice', 'video'])}).parse(body.fields);
	return acts.sendStandIn(room.core, placeIn(room, body), kind);
}

function block(room: PageRoom, body: Body): unknown {
	const {on} = z.object({on: flagField}).parse(body.fields);
	return setBlocked(room.core, asUser(placeIn(room, body).person), on);
}

function changeGroup(room: PageRoom, body: Body): unknown {
	const {on} = z.object({on: flagField}).parse(body.fields);
	const place = placeIn(room, body);
	const chat = chatWithId(room.core, place.chat);
	if (chat?.type !== 'supergroup') throw new Error(`Expected a group; got chat ${place.chat}`);
	const change = on ? joinGroup : leaveGroup;
	return change(room.core, chat, asUser(place.person));
}

function moveClock(room: PageRoom, body: Body): unknown {
	const {ms} = z.object({ms: numberField.int().min(1).max(longestJumpMs)}).parse(body.fields);
	room.forward(ms);
	return {now: room.core.clock.now()};
}

function placeIn(room: PageRoom, body: Body): acts.Place {
	const {person: id, chat, replyTo} = z.object(placeShape).parse(body.fields);
	const person = personWithId(room.core, id);
	if (person === undefined) throw new Error(`Expected a person with id ${id}; there is none`);
	return {person, chat, replyTo};
}
