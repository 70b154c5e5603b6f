import {expect, onTestFinished, test, vi} from 'vitest';
import {openMeasurer} from '../../src/clockwork/measurer.ts';

vi.setConfig({testTimeout: 60_000});

/** A measurer whose thread runs this code, written into its own address, so that no file is left behind. */
function measurerOf(code: string, longestMs = 20_000) {
	const script = new URL(`data:text/javascript,${encodeURIComponent(code)}`);
	const measurer = openMeasurer({script, longestMs});
	onTestFinished(measurer.stop);
	return measurer;
}

const port = "import {parentPort} from 'node:worker_threads';";
const photo = new Uint8Array(1);

test('a file that is no photo is declined by the thread as it is without one', async () => {
	const measurer = openMeasurer();
	onTestFinished(measurer.stop);
	expect(await measurer.measure(Buffer.from('not a photo'))).toEqual({kind: 'declined', why: 'no-photo'});
});

test.each([
	['dies', "throw new Error('dead')", 'dead'],
	['leaves without a word', 'process.exit(3)', 'left with 3'],
	['answers nothing', "port.on('message', ({id}) => port.postMessage({id}))", 'came to nothing'],
])('a thread that %s fails its photo and nothing else', async (_, code, words) => {
	const measurer = measurerOf(`${port} const port = parentPort; ${code}`);
	await expect(measurer.measure(photo)).rejects.toThrow(words);
	// Another thread takes the next photo.
	await expect(measurer.measure(photo)).rejects.toThrow(words);
});

test('a thread that hangs is ended when its time is up', async () => {
	const measurer = measurerOf('while (true);', 300);
	await expect(measurer.measure(photo)).rejects.toThrow('the measuring took too long');
});
