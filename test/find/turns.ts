/** Ways to a question of the British Isles, and what a turn there wants done. */
import {join} from 'node:path';
import type {Effect, FindEvent, Turn} from '../../src/find/events.ts';
import {readFlow} from '../../src/find/flow.ts';
import {takeTurn} from '../../src/find/turn.ts';
import type {Place} from '../support/walk.ts';

export const flow = readFlow(join(import.meta.dirname, '../../flows'), 'british-isles');
export const secondMs = 1000;
export const hourMs = 3_600_000;
export const zone = 'Europe/London';
export const upToTheBowl = ['yes', 'empty', 'go-on', 'Gwithian', 'today', '1', 'go-on', 'dry'];
export const upToTheResult = [
	...['yes', 'empty', 'go-on', 'Gwithian', 'today', '1', 'go-on', 'soft', 'both', '66 mm'],
	...['broad', 'lines', 'blade', '50 mm'],
];

/** One event, `afterMs` after the last. */
export function after({turn, now}: Place, event: FindEvent, afterMs = 60 * secondMs): Turn {
	const {trail, turn: number} = turn;
	return takeTurn(flow, {trail, turn: number}, {event, moment: {now: now + afterMs, zone}});
}

export function kinds(effects: readonly Effect[]): readonly string[] {
	return effects.map(({kind}) => kind);
}

/** The question among the effects. */
export function asked(effects: readonly Effect[]) {
	const effect = effects.find(one => one.kind === 'ask');
	if (!effect) throw new Error(`Expected a question among ${kinds(effects).join(', ')}`);
	return effect.ask;
}
