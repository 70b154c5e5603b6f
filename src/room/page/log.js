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
	const isAnswer = awaiting !== undefined && awaiting.chat === message.chat && message.from === 'bot';
	if (isAnswer && Date.now() < awaiting.until) {
		const first = view.querySelector('.choices button, .choices a');
		const isFocusFree = !awaiting.moved || document.activeElement === awaiting.moved;
		if (isFocusFree) {
			(first ?? view).focus({preventScroll: true});
			state.awaiting = first === null ? {...awaiting, moved: view} : undefined;
		}
	}
	window.scrollTo(0, document.body.scrollHeight);
	if (view.offsetHeight > window.innerHeight * 0.6) view.scrollIntoView({block: 'start'});
}

async function press(message, button, made) {
	const buttons = made.closest('.choices').querySelectorAll('button');
	for (const one of buttons) one.setAttribute('aria-disabled', 'true');
	state.awaiting = {chat: message.chat, until: Date.now() + 15_000, moved: undefined};
	say('');
	const sent = await act('press', {chat: message.chat, messageId: message.id, data: button.data});
	const free = () => {
		for (const one of buttons) one.removeAttribute('aria-disabled');
	};
	if (sent === undefined) free();
	else state.pressed.set(sent.queryId, free);
	setTimeout(free, 10_000);
}

/** Ends the wait of a pressed button and shows what the bot says to it. */
export function showAnswer(answer) {
	state.pressed.get(answer.queryId)?.();
	state.pressed.delete(answer.queryId);
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
