import {drawChat, drawMessage, showAnswer} from './log.js';
import {act, byId, element, say, state} from './room-calls.js';
import {drawTrial, startTrial} from './trial.js';
import {drawWriting, replyTo, startWriting} from './writing.js';

const suggestions = ['Ada', 'Ben', 'Cato', 'Dora'];
const unread = new Map();
let isCaughtUp = false;

startWriting();
startTrial();
byId('door-form').addEventListener('submit', event => {
	event.preventDefault();
	location.hash = encodeURIComponent(byId('door-name').value.trim());
});
// The name stands in the address, so each tab is one person, also after a reload.
window.addEventListener('hashchange', () => location.reload());
byId('leave').addEventListener('click', () => {
	location.hash = '';
});
byId('begin').addEventListener('click', () => {
	byId('text').focus({preventScroll: true});
	void act('text', {text: '/start'});
});
document.addEventListener('chat-chosen', event => chooseChat(event.detail));
document.querySelector('.skip').addEventListener('click', event => {
	// The address holds the person's name, so a jump must not change it.
	event.preventDefault();
	byId(byId('room').hidden ? 'door-name' : 'log').focus();
});
void start();

async function start() {
	const name = decodeURIComponent(location.hash.slice(1));
	if (name === '') return openDoor();
	const person = await act('enter', {name});
	if (person === undefined) return openDoor();
	state.person = person;
	state.chat = person.id;
	state.aheadMs = person.now - Date.now();
	document.title = `${person.name} – Pursekey chat room`;
	byId('who-name').textContent = person.name;
	for (const id of ['who', 'room']) byId(id).hidden = false;
	byId('door').hidden = true;
	listen(person.id);
	return undefined;
}

function openDoor() {
	byId('door-names').replaceChildren(
		...suggestions.map(name => {
			const button = element('button', '', name);
			button.type = 'button';
			button.addEventListener('click', () => {
				location.hash = encodeURIComponent(name);
			});
			return button;
		}),
	);
}

function listen(person) {
	const live = new EventSource(`/room/live?person=${person}`);
	live.addEventListener('state', event => {
		state.room = JSON.parse(event.data);
		drawAround();
	});
	live.addEventListener('message', event => takeMessage(JSON.parse(event.data)));
	live.addEventListener('answer', event => {
		if (isCaughtUp) showAnswer(JSON.parse(event.data));
	});
	live.addEventListener('caught-up', event => {
		state.aheadMs = Number(event.data) - Date.now();
		if (!isCaughtUp) {
			isCaughtUp = true;
			drawAround();
			drawChat();
			byId('text').focus({preventScroll: true});
		} else say('The room is back.');
	});
	live.addEventListener('heartbeat', event => {
		state.aheadMs = Number(event.data) - Date.now();
		drawTrial();
	});
	live.addEventListener('error', () => say('The room does not answer. This page goes on trying.'));
}

function takeMessage(message) {
	const key = `${message.chat}:${message.id}`;
	const isNew = !state.messages.has(key) && !message.gone;
	if (message.gone) state.messages.delete(key);
	else state.messages.set(key, message);
	if (!isCaughtUp) return;
	if (message.chat === state.chat) {
		drawMessage(message);
		if (isNew && message.forceReply && isForMe(message)) replyTo(message);
	} else if (isNew) unread.set(message.chat, (unread.get(message.chat) ?? 0) + 1);
	drawAround();
}

/** A question to one person replies to that person's message or names them; to all others it is only talk. */
function isForMe(message) {
	const replied = state.messages.get(`${message.chat}:${message.replyTo}`);
	const isNamed = message.entities.some(entity => entity.user?.id === state.person.id);
	return message.chat > 0 || replied?.fromId === state.person.id || isNamed;
}

function chooseChat(id) {
	if (state.chat === id) return;
	state.chat = id;
	state.awaiting = undefined;
	unread.delete(id);
	say('');
	replyTo(undefined);
	drawAround();
	drawChat();
	byId('log').focus({preventScroll: true});
}

function drawAround() {
	const chat = state.room.chats.find(one => one.id === state.chat);
	byId('chat-title').textContent =
		chat === undefined || chat.id > 0 ? `${state.room.botName ?? 'Pursekey'} in private` : chat.title;
	byId('chat-note').textContent = note(chat);
	byId('begin').hidden = chat === undefined || chat.id < 0 || state.room.started || state.room.blocked;
	drawChats();
	drawWriting();
	drawTrial();
}

function note(chat) {
	if (chat === undefined) return '';
	if (!chat.botIsIn) return 'The bot is not in this group. You can bring it back under Try it out.';
	if (chat.id < 0)
		return 'Everyone in the room reads along. The bot hears commands and replies to its own messages.';
	if (state.room.blocked) return 'You have blocked the bot. Unblock it under Try it out to write again.';
	return state.room.started ? 'Only you and the bot.' : 'Only you and the bot. Press Begin, or write /start.';
}

function drawChats() {
	// Built once and then only relabelled, so that the focus stays where it is.
	const list = byId('chats');
	if (list.children.length !== state.room.chats.length) {
		list.replaceChildren(
			...state.room.chats.map(chat => {
				const button = element('button');
				button.type = 'button';
				button.addEventListener('click', () => chooseChat(chat.id));
				const item = element('li');
				item.append(button);
				return item;
			}),
		);
	}
	for (const [at, chat] of state.room.chats.entries()) {
		const button = list.children[at].firstElementChild;
		const count = unread.get(chat.id) ?? 0;
		button.textContent = count === 0 ? chat.title : `${chat.title} (${count} new)`;
		button.setAttribute('aria-current', String(chat.id === state.chat));
	}
}
