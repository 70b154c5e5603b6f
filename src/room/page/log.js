import {messageView} from './message-view.js';
import {act, byId, messagesHere, say, state} from './room-calls.js';
import {replyTo} from './writing.js';

const handle = {press, reply: replyTo, follow, copy};

/** Draws the chat in sight from the beginning and goes to its end. */
export function drawChat() {
	const log = byId('log');
	// A whole chat read aloud at once helps nobody; only what comes after is announced.
	log.setAttribute('aria-live', 'off');
	log.replaceChildren(...messagesHere().map(message => messageView(message, handle)));
	window.scrollTo(0, document.body.scrollHeight);
	setTimeout(() => log.setAttribute('aria-live', 'polite'), 200);
}

/** Puts one message into the chat in sight: a new one at its end, a changed one in its place. */
export function drawMessage(message) {
	const log = byId('log');
	const old = byId(`message-${message.chat}-${message.id}`);
	const hadFocus = old?.contains(document.activeElement) ?? false;
	if (message.gone) {
		old?.remove();
		if (hadFocus) log.focus();
		return;
	}
	const view = messageView(message, handle);
	if (old !== null) {
		old.replaceWith(view);
		if (hadFocus) view.focus({preventScroll: true});
		return;
	}
	const later = [...log.children].find(one => Number(one.dataset.id) > message.id);
	log.insertBefore(view, later ?? null);
	bringIntoSight(message, view);
}

function bringIntoSight(message, view) {
	const {awaiting} = state;
	const isAnswer = awaiting?.chat === message.chat && message.from === 'bot' && Date.now() < awaiting.until;
	const active = document.activeElement;
	// Someone who has begun to write meanwhile is left in peace.
	if (isAnswer && (active === document.body || byId('log').contains(active))) {
		const first = view.querySelector('.choices button, .choices a');
		(first ?? view).focus({preventScroll: true});
		if (first !== null) state.awaiting = undefined;
	}
	window.scrollTo(0, document.body.scrollHeight);
	if (view.offsetHeight > window.innerHeight * 0.6) view.scrollIntoView({block: 'start'});
}

async function press(message, button, made) {
	const buttons = made.closest('.choices').querySelectorAll('button');
	for (const one of buttons) one.setAttribute('aria-disabled', 'true');
	state.awaiting = {chat: message.chat, until: Date.now() + 15_000};
	const free = () => {
		for (const one of buttons) one.removeAttribute('aria-disabled');
	};
	// Kept before the press goes out: the bot's answer may be here before the room's.
	state.pressed.add(free);
	say('');
	const sent = await act('press', {chat: message.chat, messageId: message.id, data: button.data});
	if (sent === undefined) free();
	else setTimeout(free, 10_000);
}

/** Ends the wait of pressed buttons and shows what the bot says to it. */
export function showAnswer(answer) {
	for (const free of state.pressed) free();
	state.pressed.clear();
	if (answer.text !== '') say(answer.text);
}

/** Follows a link to the bot inside the room; false for any other link. */
function follow(url) {
	const link = URL.canParse(url) ? new URL(url) : undefined;
	const isOurs = link?.hostname === 't.me' && link.pathname === `/${state.room.botUsername}`;
	if (!isOurs) return false;
	const payload = link.searchParams.get('start');
	if (payload === null) say('The bot is in both groups of this room already.');
	else void openInPrivate(payload);
	return true;
}

async function openInPrivate(payload) {
	document.dispatchEvent(new CustomEvent('chat-chosen', {detail: state.person.id}));
	await act('open', {payload});
}

async function copy(text) {
	try {
		await navigator.clipboard.writeText(text);
		say(`Copied: ${text}`);
	} catch {
		say(`Please copy this yourself: ${text}`);
	}
}
