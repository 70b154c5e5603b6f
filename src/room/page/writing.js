import {firstWords} from './message-view.js';
import {act, byId, element, messagesHere, say, state} from './room-calls.js';

/** Makes the text box, the panels below it and the suggested answers work. */
export function startWriting() {
	byId('write-form').addEventListener('submit', event => {
		event.preventDefault();
		void sendText();
	});
	byId('text').addEventListener('keydown', event => {
		if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return;
		event.preventDefault();
		void sendText();
	});
	byId('reply-cancel').addEventListener('click', () => {
		replyTo(undefined);
		byId('text').focus();
	});
	for (const toggle of document.querySelectorAll('.tools button')) {
		toggle.addEventListener('click', () => showPanel(toggle.getAttribute('aria-controls'), true));
	}
	byId('panel-photos').addEventListener('submit', sendFiles);
	byId('panel-place').addEventListener('submit', sendPlace);
	byId('my-position').addEventListener('click', fillPosition);
}

/** Opens a panel and closes the others; an open one closes. */
export function showPanel(id, focuses) {
	for (const toggle of document.querySelectorAll('.tools button')) {
		const own = toggle.getAttribute('aria-controls');
		const panel = byId(own);
		const opens = own === id && panel.hidden;
		panel.hidden = !opens;
		toggle.setAttribute('aria-expanded', String(opens));
		if (opens && focuses) panel.querySelector('input, button')?.focus({preventScroll: true});
	}
	if (focuses) window.scrollTo(0, document.body.scrollHeight);
}

/** Chooses the message that the next one replies to, or none. */
export function replyTo(message) {
	state.replyTo = message?.id;
	byId('reply').hidden = message === undefined;
	byId('reply-words').textContent = message === undefined ? '' : `Replying to: ${firstWords(message)}`;
	byId('text').placeholder = message?.placeholder ?? 'Write here';
	if (message !== undefined) byId('text').focus({preventScroll: true});
}

/** Brings what lies around the text box up to date: suggested answers, commands, whether writing is allowed. */
export function drawWriting() {
	const chat = state.room.chats.find(one => one.id === state.chat);
	const isBlocked = state.room.blocked && state.chat > 0;
	byId('text').disabled = isBlocked;
	byId('write-form').querySelector('button').disabled = isBlocked;
	drawCommands(chat?.commands ?? []);
	drawKeyboard();
}

function drawCommands(commands) {
	const panel = byId('panel-commands');
	const list = element('ul');
	for (const {command, description} of commands) {
		const button = element('button', '', `/${command} – ${description}`);
		button.type = 'button';
		button.addEventListener('click', () => {
			showPanel('', false);
			byId('text').focus();
			void send(`/${command}`);
		});
		const item = element('li');
		item.append(button);
		list.append(item);
	}
	panel.replaceChildren(commands.length > 0 ? list : element('p', '', 'The bot has no commands here.'));
}

function drawKeyboard() {
	const setter = messagesHere().findLast(one => one.keyboard !== undefined || one.removesKeyboard);
	const rows = setter?.keyboard ?? [];
	byId('keyboard').hidden = rows.length === 0;
	byId('keyboard').replaceChildren(
		element('legend', 'unseen', 'Suggested answers'),
		...rows.map(row => {
			const line = element('div');
			for (const key of row) line.append(keyButton(key));
			return line;
		}),
	);
}

function keyButton(key) {
	const button = element('button', '', key.text);
	button.type = 'button';
	button.addEventListener('click', () => {
		if (!key.requestLocation) void send(key.text);
		else if (byId('panel-place').hidden) showPanel('panel-place', true);
	});
	return button;
}

async function sendText() {
	const text = byId('text').value.trim();
	if (text === '') return say('Please type something first.');
	const sent = await send(text);
	if (sent !== undefined && byId('text').value.trim() === text) byId('text').value = '';
	return undefined;
}

function send(text) {
	say('');
	return actInReply('text', {text});
}

/** Sends with the chosen reply and lets go of it first: the bot's next question may come before the room's answer. */
async function actInReply(deed, fields, files) {
	const chosen = state.messages.get(`${state.chat}:${state.replyTo}`);
	replyTo(undefined);
	const sent = await act(deed, {...fields, replyTo: chosen?.id}, files);
	if (sent === undefined) replyTo(chosen);
	return sent;
}

async function sendFiles(event) {
	event.preventDefault();
	const files = [...byId('photos').files];
	if (files.length === 0 || files.length > 10) return say('Please choose one to ten photos first.');
	const asFile = document.querySelector('input[name="as"]:checked').value === 'file';
	const caption = byId('caption').value.trim();
	say('Sending …');
	const sent = await actInReply('files', {asFile, ...(caption === '' ? {} : {caption})}, files);
	if (sent === undefined) return undefined;
	say('Sent.');
	event.target.reset();
	afterPanel();
	return undefined;
}

async function sendPlace(event) {
	event.preventDefault();
	const [latitude, longitude] = ['latitude', 'longitude'].map(id => Number(byId(id).value.replace(',', '.')));
	const isOnGlobe = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180;
	if (!isOnGlobe) return say('Please give the latitude from -90 to 90 and the longitude from -180 to 180.');
	const accuracy = byId('accuracy').value.trim();
	const around = accuracy === '' ? {} : {accuracyM: Number(accuracy)};
	if (!(around.accuracyM === undefined || (around.accuracyM >= 0 && around.accuracyM <= 1500))) {
		return say('Please give the accuracy in metres, from 0 to 1500, or leave it empty.');
	}
	say('');
	const sent = await actInReply('pin', {latitude, longitude, ...around});
	if (sent === undefined) return undefined;
	event.target.reset();
	afterPanel();
	return undefined;
}

function afterPanel() {
	showPanel('', false);
	byId('text').focus();
}

function fillPosition() {
	const failed = () => say('This computer does not say where it is. Please type the numbers.');
	if (navigator.geolocation === undefined) return failed();
	navigator.geolocation.getCurrentPosition(({coords}) => {
		byId('latitude').value = coords.latitude.toFixed(5);
		byId('longitude').value = coords.longitude.toFixed(5);
		byId('accuracy').value = String(Math.min(1500, Math.round(coords.accuracy)));
		say('Your position is filled in. Press Send place to send it.');
	}, failed);
	return undefined;
}
