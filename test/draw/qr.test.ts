import readCode from 'jsqr';
import sharp from 'sharp';
import {expect, test} from 'vitest';
import {type Code, drawCode} from '../../src/draw/qr.ts';

test.each([
	'https://chat.example/join?start=day-larkin-2026-05-02',
	'https://chat.example/a',
	`https://chat.example/${'long-'.repeat(60)}`,
])('a reader that nobody here wrote reads %s', async link => {
	expect(await read(drawCode(link))).toBe(link);
});

test('letters that a link may not hold as they are, a code holds in their written-out form', async () => {
	expect(await read(drawCode('https://chat.example/Llan-ŵŷ'))).toBe('https://chat.example/Llan-%C5%B5%C5%B7');
});

test('four dots of white stand round a code', () => {
	const {box, dots, svg} = drawCode('https://chat.example/a');
	expect(box.right).toBe(dots + 8);
	const lefts = [...svg.matchAll(/M(\d+) (\d+)h/g)].flatMap(match => [Number(match[1]), Number(match[2])]);
	expect(Math.min(...lefts)).toBe(4);
});

test('a link too long for any code is refused', () => {
	expect(() => drawCode(`https://chat.example/${'x'.repeat(2400)}`)).toThrow('at most 2331 bytes');
	expect(() => drawCode(`https://chat.example/${'x'.repeat(2310)}`)).not.toThrow();
	expect(() => drawCode('chat.example')).toThrow('Expected a whole link for a QR code; got "chat.example"');
});

async function read({svg, box}: Code): Promise<string | undefined> {
	const whole = `<svg xmlns="http://www.w3.org/2000/svg" width="${box.right * 5}" height="${box.bottom * 5}" viewBox="0 0 ${box.right} ${box.bottom}">${svg}</svg>`;
	const {data, info} = await sharp(Buffer.from(whole))
		.ensureAlpha()
		.raw()
		.toBuffer({resolveWithObject: true});
	const found = readCode.default(new Uint8ClampedArray(data), info.width, info.height);
	return found ? Buffer.from(found.binaryData).toString('utf8') : undefined;
}
