import {expect, test} from 'vitest';
import {readHeight} from '../../src/survey/height.ts';

test.each([
	['0.8', 0.8],
	['0,85 m', 0.85],
	['-0.2m', -0.2],
	['−0.2 metres', -0.2],
	['12', 12],
])('“%s” is %d m', (text, heightM) => {
	expect(readHeight(text)).toBe(heightM);
});

test.each(['', 'low', '0.8 ft', '18', '-4', '0.123', '1.2.3'])('“%s” is no height of a tide', text => {
	expect(readHeight(text)).toBeUndefined();
});
