import {expect, test} from 'vitest';
import {readLength} from '../../src/capsule/length.ts';

// One inch is 25.4 mm exactly: international yard and pound agreement, 1959 (1 yard = 0.9144 m, 36 inches). The
// millimetres below are multiplied by hand and rounded to a tenth.
test.each([
	['1 in', 25.4],
	['2 inches', 50.8],
	['2.4 inches', 61],
	['2⅜"', 60.3],
	['2⅜″', 60.3],
	["2 3/8''", 60.3],
	['2-3/8 in', 60.3],
	['2 and 3/8 in', 60.3],
	['3/4 in', 19.1],
	['3 1/16 in', 77.8],
	['5½ ins', 139.7],
	['ten inches', 254],
])('%s is %d mm', (text, mm) => {
	expect(readLength(text, {possibleMm: [10, 300]})).toMatchObject({kind: 'length', length: {mm}});
});

// Half the step as written, by hand: 1/16 in is 1.5875 mm, 0.05 in is 1.27 mm, 1/32 in is 0.79 mm (under our 1 mm).
test.each([
	['2 3/8 in', 1.6],
	['2.4 in', 1.3],
	['3 1/16 in', 1],
])('%s is known to %d mm', (text, uncertaintyMm) => {
	expect(readLength(text, {possibleMm: [10, 300]})).toMatchObject({length: {uncertaintyMm}});
});
