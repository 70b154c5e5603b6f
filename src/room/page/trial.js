import {act, byId, messagesHere, roomNow, say, state} from './room-calls.js';

/** Makes the buttons under "Try it out" work. */
export function startTrial() {
	for (const button of document.querySelectorAll('[data-forward]')) {
		button.addEventListener('click', () => moveTime(Number(button.dataset.forward)));
	}
	for (const button of document.querySelectorAll('[data-stand-in]')) {
		button.addEventListener('click', () => act('stand-in', {kind: button.dataset.standIn}));
	}
	byId('edit-form').addEventListener('submit', changeLast);
	byId('block').addEventListener('click', () => act('block', {on: !state.room.blocked}));
	byId('membership').addEventListener('click', () => act('bot-in-group', {on: !botIsHere()}));
	byId('repeat').addEventListener('click', async () => {
		const done = await act('repeat');
		if (done !== undefined) say(done ? 'The last update goes out once more.' : 'There was no update yet.');
	});
	setInterval(drawTime, 5000);
}

/** Brings the panel up to date. */
export function drawTrial() {
	byId('block').textContent = state.room.blocked ? 'Unblock the bot' : 'Block the bot';
	byId('membership').hidden = state.chat > 0;
	byId('membership').textContent = botIsHere() ? 'Remove the bot from this group' : 'Bring the bot back';
	const last = lastOwn();
	byId('edit-form').hidden = last === undefined;
	if (document.activeElement !== byId('edit-text')) byId('edit-text').value = last?.text ?? '';
	drawTime();
}

/** Shows the present time in the room. */
export function drawTime() {
	const now = new Date(roomNow());
	const options = {weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit'};
	byId('now').textContent = now.toLocaleString([], options);
	byId('now').dateTime = now.toISOString();
}

async function moveTime(ms) {
	const moved = await act('clock', {ms});
	if (moved === undefined) return;
	state.aheadMs = moved.now - Date.now();
	drawTime();
	say(`It is now ${byId('now').textContent} in the room.`);
}

async function changeLast(event) {
	event.preventDefault();
	const last = lastOwn();
	const text = byId('edit-text').value.trim();
	if (last === undefined || text === '') return say('Please type what your message should say now.');
	if ((await act('edit', {messageId: last.id, text})) !== undefined) say('Your message is changed.');
	return undefined;
}

function lastOwn() {
	return messagesHere().findLast(one => one.fromId === state.person?.id && one.text !== '');
}

function botIsHere() {
	return state.room.chats.find(one => one.id === state.chat)?.botIsIn ?? true;
}
