/** Callback data, packed and unpacked: short ids, and a stranger's text until looked up. */

import {everyRole, type Role} from '../store/roles.ts';

/** What a button means; `find` ones carry the turn in which they were shown. */
export type Button =
	| {readonly kind: 'find'; readonly find: number; readonly turn: number; readonly option: string}
	| {readonly kind: 'draft'; readonly find: number; readonly act: string}
	| {readonly kind: 'list'; readonly before: number}
	| {readonly kind: 'resume'; readonly find: number}
	| {readonly kind: 'zone'; readonly zone: string}
	| {readonly kind: 'region'; readonly region: string}
	| {readonly kind: 'invite'; readonly role: Role}
	| {readonly kind: 'team'; readonly act: TeamAct; readonly role: Role; readonly person: number}
	| {readonly kind: 'people'; readonly from: number}
	/** A button under the words of a command, and what it stands for there. */
	| {readonly kind: 'menu'; readonly menu: string; readonly parts: readonly string[]}
	/** Who may answer for a find in its group. */
	| {readonly kind: 'answerers'; readonly find: number; readonly who: 'owner' | 'everyone'}
	/** The next case of those that are sorted, after the one whose end this button stands under. */
	| {readonly kind: 'sort'; readonly find: number; readonly turn: number; readonly act: string}
	| {readonly kind: 'tally'; readonly span: string}
	/** A command, for those who cannot write it as themselves. */
	| {readonly kind: 'command'; readonly command: string}
	| {readonly kind: 'begin'};

const teamActs = ['ask', 'withdraw', 'leave'] as const;

/** What is done about somebody's role. */
type TeamAct = (typeof teamActs)[number];

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
	if ((kind === 't' || kind === 'c') && /^[a-z]+$/.test(first) && data === `${kind}.${first}`)
		return kind === 't' ? {kind: 'tally', span: first} : {kind: 'command', command: first};
	if (kind === 'd' && isNumber(first) && /^[a-z-]+$/.test(second))
		return {kind: 'draft', find: number(first), act: second};
	if (kind === 'l' && isNumber(first)) return {kind: 'list', before: number(first)};
	if (kind === 'r' && isNumber(first)) return {kind: 'resume', find: number(first)};
	if (kind === 'g' && /^[a-z][a-z0-9-]*$/.test(first) && data === `g.${first}`)
		return {kind: 'region', region: first};
	if (kind === 'i' || kind === 't' || kind === 'tp') return unpackTeam(data.split('.'));
	if (kind === 'z' && first !== '') return {kind: 'zone', zone: data.slice(2)};
	if (kind === 'm' && /^m\.[a-z]+(?:\.[A-Za-z0-9-]+)*$/.test(data))
		return {kind: 'menu', menu: first, parts: data.split('.').slice(2)};
	return data === 'n' ? {kind: 'begin'} : undefined;
}

function unpackTeam(parts: readonly string[]): Button | undefined {
	const [kind, first = '', second = '', third = ''] = parts;
	const role = everyRole.find(one => one === (kind === 'i' ? first : second));
	if (kind === 'tp' && parts.length === 2 && isNumber(first)) return {kind: 'people', from: number(first)};
	if (kind === 'i' && parts.length === 2 && role) return {kind: 'invite', role};
	const act = teamActs.find(one => one === first);
	if (kind !== 't' || parts.length !== 4 || !act || !role || !isNumber(third)) return undefined;
	return {kind: 'team', act, role, person: number(third)};
}

function packed(button: Button): string {
	switch (button.kind) {
		case 'find':
			return `f.${button.find.toString(36)}.${button.turn.toString(36)}.${button.option}`;
		case 'draft':
			return `d.${button.find.toString(36)}.${button.act}`;
		case 'list':
			return `l.${button.before.toString(36)}`;
		case 'resume':
			return `r.${button.find.toString(36)}`;
		case 'region':
			return `g.${button.region}`;
		case 'answerers':
			return `o.${button.find.toString(36)}.${button.who}`;
		case 'sort':
			return `s.${button.find.toString(36)}.${button.turn.toString(36)}.${button.act}`;
		case 'tally':
			return `t.${button.span}`;
		case 'command':
			return `c.${button.command}`;
		case 'zone':
			return `z.${button.zone}`;
		case 'invite':
			return `i.${button.role}`;
		case 'team':
			return `t.${button.act}.${button.role}.${button.person.toString(36)}`;
		case 'people':
			return `tp.${button.from.toString(36)}`;
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
