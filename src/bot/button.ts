/** Callback data, packed and unpacked: short ids, and a stranger's text until looked up. */

/** What a button means; `find` ones carry the turn in which they were shown. */
export type Button =
	| {readonly kind: 'find'; readonly find: number; readonly turn: number; readonly option: string}
	| {readonly kind: 'draft'; readonly find: number; readonly act: string}
	| {readonly kind: 'resume'; readonly find: number}
	/** A button under the words of a command, and what it stands for there. */
	| {readonly kind: 'menu'; readonly menu: string; readonly parts: readonly string[]}
	/** Who may answer for a find in its group. */
	| {readonly kind: 'answerers'; readonly find: number; readonly who: 'owner' | 'everyone'}
	/** The next case of those that are sorted, after the one whose end this button stands under. */
	| {readonly kind: 'sort'; readonly find: number; readonly turn: number; readonly act: string}
	/** A command, for those who cannot write it as themselves. */
	| {readonly kind: 'command'; readonly command: string}
	| {readonly kind: 'begin'};

/** The most bytes of callback data (platform-limits.json, callback_data). */
export const mostBytes = 64;

/** Packs a button; throws when it would not fit, which the check of a region rules out. */
export function packButton(button: Button): string {
	const data = packed(button);
	if (Buffer.byteLength(data) > mostBytes) {
		throw new Error(
			`Expected callback data of at most ${mostBytes} bytes; "${data}" has ${Buffer.byteLength(data)}`,
		);
	}
	return data;
}

/** Packs a button under the words of a command. */
export function menuButton(menu: string, ...parts: readonly string[]): string {
	return packButton({kind: 'menu', menu, parts});
}

/** Reads callback data; nothing when no button of ours looks like this. */
export function unpackButton(data: string): Button | undefined {
	const [kind, first = '', second = '', third] = data.split('.');
	if (
		(kind === 'f' || kind === 's') &&
		third !== undefined &&
		isNumber(first) &&
		isNumber(second) &&
		/^[a-z0-9-]+$/.test(third)
	) {
		const at = {find: number(first), turn: number(second)};
		return kind === 'f' ? {kind: 'find', ...at, option: third} : {kind: 'sort', ...at, act: third};
	}
	if (kind === 'o' && isNumber(first) && (second === 'owner' || second === 'everyone'))
		return {kind: 'answerers', find: number(first), who: second};
	if (kind === 'c' && /^[a-z]+$/.test(first) && data === `c.${first}`)
		return {kind: 'command', command: first};
	if (kind === 'd' && isNumber(first) && /^[a-z-]+$/.test(second))
		return {kind: 'draft', find: number(first), act: second};
	if (kind === 'r' && isNumber(first)) return {kind: 'resume', find: number(first)};
	if (kind === 'm' && menuForm.test(data))
		return {kind: 'menu', menu: first, parts: data.split('.').slice(2)};
	return data === 'n' ? {kind: 'begin'} : readOlder(data);
}

/** Zones have signs of their own in their names (IANA time zone database, theory.html). */
const menuForm = /^m\.[a-z]+(?:\.[A-Za-z0-9_+/-]+)*$/;

type OlderForm = readonly [
	RegExp,
	(first: string, second: string, third: string) => readonly [string, ...string[]],
];

/** Buttons of earlier programs stand on screens for ever: each form, and the menu and parts it is now. */
const olderForms: readonly OlderForm[] = [
	[/^i\.([a-z]+)$/, role => ['invite', role]],
	[
		/^t\.(ask|withdraw|leave)\.([a-z]+)\.([0-9a-z]{1,10})$/,
		(act, role, person) => ['team', act, role, decimal(person)],
	],
	[/^tp\.([0-9a-z]{1,10})$/, from => ['team', 'more', decimal(from)]],
	[/^t\.([a-z]+)$/, span => ['tally', span]],
	[/^l\.([0-9a-z]{1,10})$/, before => ['drafts', decimal(before)]],
	[/^g\.([a-z][a-z0-9-]*)$/, region => ['region', region]],
	[/^z\.(.+)$/, zone => ['settings', zone]],
];

function readOlder(data: string): Button | undefined {
	for (const [form, menuOf] of olderForms) {
		const [, first, second = '', third = ''] = form.exec(data) ?? [];
		if (first === undefined) continue;
		const [menu, ...parts] = menuOf(first, second, third);
		return {kind: 'menu', menu, parts};
	}
	return undefined;
}

function packed(button: Button): string {
	switch (button.kind) {
		case 'find':
			return `f.${button.find.toString(36)}.${button.turn.toString(36)}.${button.option}`;
		case 'draft':
			return `d.${button.find.toString(36)}.${button.act}`;
		case 'resume':
			return `r.${button.find.toString(36)}`;
		case 'answerers':
			return `o.${button.find.toString(36)}.${button.who}`;
		case 'sort':
			return `s.${button.find.toString(36)}.${button.turn.toString(36)}.${button.act}`;
		case 'command':
			return `c.${button.command}`;
		case 'menu':
			return ['m', button.menu, ...button.parts].join('.');
		case 'begin':
			return 'n';
	}
}

function isNumber(text: string): boolean {
	return /^[0-9a-z]{1,10}$/.test(text);
}

function number(text: string): number {
	return Number.parseInt(text, 36);
}

function decimal(text: string): string {
	return String(number(text));
}
