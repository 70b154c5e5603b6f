import type {HttpBindings} from '@hono/node-server';
import type {Hono} from 'hono';
import type {SSEStreamingApi} from 'hono/streaming';
import {streamSSE} from 'hono/streaming';
import {commandsSeen} from './command-lists.ts';
import type {Core} from './core.ts';
import {messagesChanged} from './messages.ts';
import type {PageRoom} from './page-room.ts';
import {bot, groups, isBotIn, personWithId} from './people.ts';
import {answersSince} from './press.ts';
import {snapshot} from './snapshot.ts';

const heartbeatMs = 20_000;

type Event = {readonly event: string; readonly data: string; readonly id?: string};
type Viewer = {readonly person: number; readonly chats: readonly number[]; since: number; lastState: string};

/** Sends a person everything they can see, and from then on what changes; takes up where a lost line broke off. */
export function serveLive(app: Hono<{Bindings: HttpBindings}>, room: PageRoom): void {
	app.get('/room/live', ctx => {
		const person = Number(ctx.req.query('person'));
		if (personWithId(room.core, person) === undefined) return ctx.text('Nobody has that number.', 404);
		const since = Number(ctx.req.header('last-event-id') ?? ctx.req.query('since') ?? 0);
		const chats = [person, ...groups.map(group => group.id)];
		const viewer: Viewer = {person, chats, since: Number.isFinite(since) ? since : 0, lastState: ''};
		return streamSSE(ctx, stream => keepSending(stream, room, viewer));
	});
}

async function keepSending(stream: SSEStreamingApi, room: PageRoom, viewer: Viewer): Promise<void> {
	const ended = new AbortController();
	stream.onAbort(() => ended.abort());
	const over = AbortSignal.any([ended.signal, room.stopping]);
	let isFirst = true;
	while (!over.aborted) {
		const changed = nextChange(room.core, over);
		for (const event of eventsFor(room.core, viewer)) await stream.writeSSE(event);
		if (isFirst) await stream.writeSSE({event: 'caught-up', data: String(room.core.clock.now())});
		isFirst = false;
		await changed;
		if (!over.aborted) await stream.writeSSE({event: 'heartbeat', data: String(room.core.clock.now())});
	}
}

/** Resolves with the next change, or after a while, so that a broken line is noticed. */
function nextChange(core: Core, over: AbortSignal): Promise<void> {
	return new Promise(resolve => {
		const finish = (): void => {
			clearTimeout(timer);
			stop();
			over.removeEventListener('abort', finish);
			resolve();
		};
		const timer = setTimeout(finish, heartbeatMs);
		const stop = core.changes.listen(finish);
		over.addEventListener('abort', finish);
		if (over.aborted) finish();
	});
}

function eventsFor(core: Core, viewer: Viewer): readonly Event[] {
	const messages = viewer.chats.flatMap(chat => messagesChanged(core, chat, viewer.since));
	const answers = answersSince(core, viewer.since).filter(answer => answer.person === viewer.person);
	const state = JSON.stringify(stateFor(core, viewer));
	const news: Event[] = state === viewer.lastState ? [] : [{event: 'state', data: state}];
	viewer.lastState = state;
	viewer.since = Math.max(
		viewer.since,
		...messages.map(one => one.changed),
		...answers.map(one => one.changed),
	);
	const id = String(viewer.since);
	// The number goes with the last event only: a line that breaks off halfway gets all of these again.
	const shown = [
		...messages.map(kept => ({
			event: 'message',
			data: JSON.stringify({...snapshot(core, kept), gone: kept.gone}),
		})),
		...answers.map(answer => ({event: 'answer', data: JSON.stringify(answer)})),
	];
	return [...news, ...shown.map((event, at) => (at === shown.length - 1 ? {...event, id} : event))];
}

function stateFor(core: Core, viewer: Viewer): unknown {
	const person = personWithId(core, viewer.person);
	return {
		botName: bot.first_name,
		botUsername: bot.username,
		blocked: person?.blocked ?? false,
		started: person?.started ?? false,
		chats: viewer.chats.map(id => ({
			id,
			title: groups.find(group => group.id === id)?.title ?? 'Private',
			botIsIn: id > 0 || isBotIn(core, id),
			commands: commandsSeen(core, id, viewer.person),
		})),
	};
}
