import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type Button, menuButton, mostBytes, packButton, unpackButton} from '../../src/bot/button.ts';

const id = fc.integer({min: 0, max: 2 ** 31});
const option = fc.stringMatching(/^[a-z0-9-]{1,24}$/);
const anyButton: fc.Arbitrary<Button> = fc.oneof(
	fc.record({kind: fc.constant('find' as const), find: id, turn: fc.integer({min: 0, max: 9999}), option}),
	fc.record({kind: fc.constant('draft' as const), find: id, act: fc.stringMatching(/^[a-z-]{1,20}$/)}),
	fc.record({kind: fc.constant('resume' as const), find: id}),
	fc.record({
		kind: fc.constant('menu' as const),
		menu: fc.stringMatching(/^[a-z]{1,12}$/),
		parts: fc.array(fc.oneof(option, fc.constantFrom('America/Port-au-Prince', 'Etc/GMT+12')), {
			maxLength: 2,
		}),
	}),
	fc.record({kind: fc.constant('answerers' as const), find: id, who: fc.constantFrom('owner', 'everyone')}),
	fc.record({
		kind: fc.constant('sort' as const),
		find: id,
		turn: fc.integer({min: 0, max: 9999}),
		act: option,
	}),
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
	const fits = 'é'.repeat(30);
	expect(Buffer.byteLength(menuButton('x', fits))).toBe(64);
	expect(() => menuButton('x', `${fits}x`)).toThrow('at most 64 bytes');
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

// Written out as they were sent; nobody may change the left side.
test.each([
	['i.verifier', ['invite', 'verifier']],
	['t.ask.coordinator.a', ['team', 'ask', 'coordinator', '10']],
	['t.withdraw.verifier.z1', ['team', 'withdraw', 'verifier', '1261']],
	['tp.a', ['team', 'more', '10']],
	['t.yesterday', ['tally', 'yesterday']],
	['l.zz', ['drafts', '1295']],
	['g.british-isles', ['region', 'british-isles']],
	['z.Europe/Isle_of_Man', ['settings', 'Europe/Isle_of_Man']],
	['z.Etc/GMT+12', ['settings', 'Etc/GMT+12']],
])('the button "%s" of an earlier program means what it meant', (data, [menu, ...parts]) => {
	expect(unpackButton(data)).toEqual({kind: 'menu', menu, parts});
});

test('no data at all makes it throw', () => {
	fc.assert(
		fc.property(fc.string({maxLength: 64}), data => {
			const button = unpackButton(data);
			expect(button === undefined || typeof button.kind === 'string').toBe(true);
		}),
	);
});
