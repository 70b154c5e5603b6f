import {element, state} from './room-calls.js';
import {linkElement, wordsBlock} from './words.js';

const standIns = {sticker: 'A sticker', voice: 'A voice message', video: 'A video'};
const services = {joined: 'brought the bot into the group.', left: 'took the bot out of the group.'};

/** A message as an article; `handle` has what its buttons do: press, reply, follow, copy. */
export function messageView(message, handle) {
	const article = element('article', message.from === 'bot' ? 'bot' : '');
	article.id = `message-${message.chat}-${message.id}`;
	article.tabIndex = -1;
	article.dataset.id = String(message.id);
	article.append(heading(message, article));
	if (message.service !== undefined) {
		article.classList.add('service');
		const who = message.from === 'bot' ? state.room.botName : message.from;
		article.append(element('p', 'words', `${who} ${services[message.service]}`));
		return article;
	}
	if (message.replyTo !== undefined) article.append(element('p', 'about', aboutReply(message)));
	for (const part of attached(message)) article.append(part);
	if (message.text !== '') article.append(wordsBlock(message.text, message.entities, handle.follow));
	if (message.buttons.length > 0) article.append(choices(message, handle));
	if (message.chat < 0) article.append(replyButton(message, handle));
	return article;
}

/** The first words of a message, to name it by. */
export function firstWords(message) {
	if (message === undefined) return 'a message that is gone';
	const what = message.photo
		? 'a photo'
		: message.document
			? 'a file'
			: message.location
				? 'a place'
				: 'a message';
	const words = message.text.replaceAll(/\s+/g, ' ');
	return words === '' ? what : words.length > 60 ? `${words.slice(0, 60)}…` : words;
}

/** A short time of day, in this computer's time zone. */
export function timeOfDay(at) {
	return new Date(at).toLocaleTimeString([], {hour: '2-digit', minute: '2-digit'});
}

function heading(message, article) {
	const line = element('h3', '', message.from === 'bot' ? state.room.botName : message.from);
	line.id = `${article.id}-head`;
	article.setAttribute('aria-labelledby', line.id);
	const day = new Date(message.at).toLocaleDateString([], {day: 'numeric', month: 'short'});
	const time = element('time', '', `${day}, ${timeOfDay(message.at)}`);
	time.dateTime = new Date(message.at).toISOString();
	const about = element('span');
	about.append(time, message.edited ? ' · changed' : '');
	line.append(' ', about);
	return line;
}

function aboutReply(message) {
	const replied = state.messages.get(`${message.chat}:${message.replyTo}`);
	const who = replied === undefined ? '' : `${replied.from === 'bot' ? state.room.botName : replied.from}: `;
	return `In reply to ${who}${firstWords(replied)}`;
}

function attached(message) {
	const parts = [];
	if (message.photo !== undefined) {
		const image = element('img');
		image.src = `/room/file/${message.photo.fileId}`;
		image.width = message.photo.width;
		image.height = message.photo.height;
		image.alt =
			message.text === ''
				? `Photo from ${message.from === 'bot' ? state.room.botName : message.from}`
				: `Photo: ${firstWords(message)}`;
		parts.push(image);
	}
	if (message.document !== undefined) parts.push(fileLine(message.document));
	if (message.location !== undefined) parts.push(element('p', 'words', placeWords(message.location)));
	if (message.standIn !== undefined) parts.push(element('p', 'words', standIns[message.standIn]));
	return parts;
}

function fileLine(file) {
	const line = element('p', 'words', 'File: ');
	const link = element('a', '', file.fileName);
	link.href = `/room/file/${file.fileId}`;
	link.download = file.fileName;
	const size =
		file.sizeBytes < 100_000
			? `${Math.ceil(file.sizeBytes / 1000)} kB`
			: `${(file.sizeBytes / 1e6).toFixed(1)} MB`;
	line.append(link, ` (${size})`);
	return line;
}

function placeWords({latitude, longitude, accuracyM}) {
	const around = accuracyM === undefined ? '' : `, give or take ${Math.round(accuracyM)} m`;
	return `Place: ${latitude}, ${longitude}${around}`;
}

function choices(message, handle) {
	const group = element('fieldset', 'choices');
	group.append(element('legend', 'unseen', 'Choices'));
	for (const row of message.buttons) {
		const line = element('div');
		for (const button of row) line.append(choice(message, button, handle));
		group.append(line);
	}
	return group;
}

function choice(message, button, handle) {
	if (button.url !== undefined) {
		const link = linkElement(button.url, handle.follow);
		link.textContent = button.text;
		return link;
	}
	const made = element('button', 'choice', button.text);
	made.type = 'button';
	made.addEventListener('click', () => {
		if (button.copies !== undefined) handle.copy(button.copies);
		else if (made.getAttribute('aria-disabled') !== 'true') handle.press(message, button, made);
	});
	return made;
}

function replyButton(message, handle) {
	const made = element('button', 'quiet', 'Reply');
	made.type = 'button';
	made.setAttribute('aria-label', `Reply to ${firstWords(message)}`);
	made.addEventListener('click', () => handle.reply(message));
	return made;
}
