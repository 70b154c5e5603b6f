import {expect, test} from 'vitest';
import {openPace} from '../../src/clockwork/pace.ts';

function scene() {
	const time = {now: 0};
	return {time, pace: openPace(() => time.now)};
}

test('a message counts until a second after it was answered, however long the answer took', () => {
	const {time, pace} = scene();
	const ends = Array.from({length: 29}, (_, index) => pace.begin(index));
	expect(pace.isOpen()).toBe(false);
	time.now = 5000;
	expect(pace.isOpen()).toBe(false);
	for (const end of ends) end();
	expect(pace.opensAt()).toBe(6000);
	time.now = 5999;
	expect(pace.isOpen()).toBe(false);
	time.now = 6000;
	expect(pace.isOpen()).toBe(true);
});

test('one chat is left alone for a second, and a group after twenty messages for a minute', () => {
	const {time, pace} = scene();
	for (let index = 0; index < 20; index += 1) {
		expect(pace.isOpenFor(7, 'group')).toBe(true);
		pace.begin(7)();
		expect(pace.isOpenFor(7, 'private')).toBe(false);
		time.now += 1000;
	}
	expect(pace.isOpenFor(7, 'private')).toBe(true);
	expect(pace.isOpenFor(7, 'group')).toBe(false);
	time.now = 60_000;
	expect(pace.isOpenFor(7, 'group')).toBe(true);
});

test('one refusal holds its chat, two at once hold everything until the first is over', () => {
	const {time, pace} = scene();
	pace.limit(1, 3000);
	expect(pace.isOpenFor(1, 'private')).toBe(false);
	expect(pace.isOpen()).toBe(true);
	pace.limit(2, 5000);
	expect(pace.isOpen()).toBe(false);
	expect(pace.isHeld()).toBe(true);
	time.now = 3000;
	expect(pace.isOpen()).toBe(true);
	expect(pace.isOpenFor(1, 'private')).toBe(true);
	expect(pace.isOpenFor(2, 'private')).toBe(false);
});
