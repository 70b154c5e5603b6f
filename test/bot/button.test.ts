import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type Button, mostBytes, packButton, unpackButton} from '../../src/bot/button.ts';
import {everyRole} from '../../src/store/roles.ts';

const id = fc.integer({min: 0, max: 2 ** 31});
const option = fc.stringMatching(/^[a-z0-9-]{1,24}$/);
const anyButton: fc.Arbitrary<Button> = fc.oneof(
	fc.record({kind: fc.constant('find' as const), find: id, turn: fc.integer({min: 0, max: 9999}), option}),
	fc.record({kind: fc.constant('draft' as const), find: id, act: fc.stringMatching(/^[a-z-]{1,20}$/)}),
	fc.record({kind: fc.constant('list' as const), before: id}),
	fc.record({kind: fc.constant('resume' as const), find: id}),
	fc.record({kind: fc.constant('zone' as const), zone: fc.constantFrom('Europe/Paris', 'Etc/GMT+12')}),
	fc.record({kind: fc.constant('invite' as const), role: fc.constantFrom(...everyRole)}),
	fc.record({
		kind: fc.constant('team' as const),
		act: fc.constantFrom('ask' as const, 'withdraw' as const, 'leave' as const),
		role: fc.constantFrom(...everyRole),
		person: id,
	}),
	fc.record({kind: fc.constant('people' as const), from: id}),
	fc.record({kind: fc.constant('answerers' as const), find: id, who: fc.constantFrom('owner', 'everyone')}),
	fc.record({
		kind: fc.constant('sort' as const),
		find: id,
		turn: fc.integer({min: 0, max: 9999}),
		act: option,
	}),
	fc.record({kind: fc.constant('tally' as const), span: fc.constantFrom('today', 'yesterday', 'month')}),
	fc.record({kind: fc.constant('command' as const), command: fc.stringMatching(/^[a-z]{1,20}$/)}),
	fc.constant({kind: 'begin' as const}),
);

test('what a button means comes back as it was packed, and fits', () => {
	fc.assert(
		fc.property(anyButton, button => {
			const data = packButton(button);
			expect(Buffer.byteLength(data)).toBeLessThanOrEqual(mostBytes);
			expect(unpackButton(data)).toEqual(button);
		}),
	);
});

test('a button that would not fit is an error, counted in bytes', () => {
	const fits = 'é'.repeat(31);
	expect(Buffer.byteLength(packButton({kind: 'zone', zone: fits}))).toBe(64);
	expect(() => packButton({kind: 'zone', zone: `${fits}x`})).toThrow('at most 64 bytes');
});

test.each([
	'',
	'x',
	'f',
	'f.1.2',
	'f.1.2.',
	'f.1.2.Option',
	'f.1.2.a b',
	'f.-1.2.yes',
	'f.1.2e99999999999.yes',
	'f..2.yes',
	'd.1',
	'd.1.DROP TABLE',
	'l.',
	'r.',
	'r.zzzzzzzzzzzzzzzz',
	'z.',
	'nn',
	'i.admin',
	'i.verifier.1',
	't.ask.verifier',
	't.give.verifier.1',
	'tp.',
	'f.1.2.yes\n',
	'o.1',
	'o.1.nobody',
	's.1.2',
	's.1.x.',
	't.',
	't.today.2',
	'c.tally\n',
	'c.TALLY',
	'🐚',
])('made-up data "%s" is no button', data => {
	expect(unpackButton(data)).toBeUndefined();
});

test('no data at all makes it throw', () => {
	fc.assert(
		fc.property(fc.string({maxLength: 64}), data => {
			const button = unpackButton(data);
			expect(button === undefined || typeof button.kind === 'string').toBe(true);
		}),
	);
});
