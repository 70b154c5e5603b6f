import {element} from './room-calls.js';

const tags = {
	bold: 'b',
	italic: 'i',
	underline: 'u',
	strikethrough: 's',
	code: 'code',
	pre: 'pre',
	blockquote: 'blockquote',
	text_mention: 'b',
};

/** A block of words with the marks that the bot gave them; links go through `follow`. */
export function wordsBlock(text, entities, follow) {
	const block = element('div', 'words');
	const sorted = [...entities].sort((a, b) => a.offset - b.offset || b.length - a.length);
	fill({into: block, text, from: 0, to: text.length, entities: sorted, follow});
	return block;
}

function fill({into, text, from, to, entities, follow}) {
	let at = from;
	for (let index = 0; index < entities.length; index += 1) {
		const mark = entities[index];
		const end = mark.offset + mark.length;
		if (mark.offset < at || end > to) continue;
		into.append(text.slice(at, mark.offset));
		const inside = entities.slice(index + 1).filter(other => other.offset + other.length <= end);
		const made = markElement(mark, text.slice(mark.offset, end), follow);
		fill({into: made, text, from: mark.offset, to: end, entities: inside, follow});
		into.append(made);
		at = end;
	}
	into.append(text.slice(at, to));
}

function markElement(mark, words, follow) {
	const url = mark.type === 'url' ? words : mark.url;
	if (url !== undefined) return linkElement(url, follow);
	return element(tags[mark.type] ?? 'span');
}

/** A link; one that leads to the bot stays in the room. */
export function linkElement(url, follow) {
	const link = element('a');
	link.href = url;
	link.target = '_blank';
	link.rel = 'noopener noreferrer';
	link.addEventListener('click', event => {
		if (follow(url)) event.preventDefault();
	});
	return link;
}
