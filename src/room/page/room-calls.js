/** The person on this page and what the room says; one object, so that every part of the page sees the same. */
export const state = {
	person: undefined,
	chat: 0,
	room: {chats: [], blocked: false, botUsername: ''},
	messages: new Map(),
	replyTo: undefined,
	awaiting: undefined,
	pressed: new Set(),
	aheadMs: 0,
};

/** The part of the page with that id. */
export function byId(id) {
	return document.getElementById(id);
}

/** A new element with a class and words. */
export function element(name, className = '', words = '') {
	const made = document.createElement(name);
	if (className !== '') made.className = className;
	made.textContent = words;
	return made;
}

/** Says something in the status line, where a screen reader hears it. */
export function say(words) {
	byId('status').textContent = words;
}

/** Present time in the room, UTC milliseconds. */
export function roomNow() {
	return Date.now() + state.aheadMs;
}

/** The messages of the chat in sight, oldest first. */
export function messagesHere() {
	return [...state.messages.values()].filter(one => one.chat === state.chat).sort((a, b) => a.id - b.id);
}

/** Tells the room what the person does; gives the room's answer, or undefined after saying what is wrong. */
export async function act(deed, fields = {}, files = []) {
	const place = {person: state.person?.id, chat: state.chat};
	const all = {...place, ...fields};
	try {
		const response = await fetch(`/room/${deed}`, request(all, files));
		const answer = await response.json();
		if (answer.ok) return answer.result;
		say(`That did not go through. The room says: ${answer.trouble}`);
	} catch {
		say('The room does not answer. Please see whether the program still runs, then try again.');
	}
	return undefined;
}

function request(fields, files) {
	if (files.length === 0) {
		const headers = {'content-type': 'application/json'};
		return {method: 'POST', headers, body: JSON.stringify(fields)};
	}
	const form = new FormData();
	for (const [name, value] of Object.entries(fields)) {
		if (value !== undefined) form.set(name, String(value));
	}
	for (const [at, file] of files.entries()) form.set(`file${at}`, file, file.name);
	return {method: 'POST', body: form};
}
