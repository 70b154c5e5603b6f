import {expect, test} from 'vitest';
import {drawWords} from '../../src/draw/lettering.ts';

test('letters are whole wherever they stand', () => {
	const faulty = Array.from({length: 3000}, (_, index) => index * 1.3 + 0.1 * (index % 7)).filter(
		y => !/^<path d="[-MLQCZ0-9. ]+" fill="#[0-9a-f]{6}"\/>$/.test(drawWords('Kind 8', {size: 38, x: 24, y})),
	);
	expect(faulty).toEqual([]);
});
