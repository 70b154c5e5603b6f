/** The thread in which photos are measured: hears their bytes, answers with sizes or with why not. */
import {parentPort} from 'node:worker_threads';
import sharp from 'sharp';
import {z} from 'zod';
import {measurePhoto} from '../capsule/measure.ts';

const asked = z.object({id: z.number().int(), question: z.instanceof(Uint8Array)});

// Each photo is decoded once; what libvips would keep of it helps nobody.
sharp.cache(false);

parentPort?.on('message', async (message: unknown) => {
	const {id, question} = asked.parse(message);
	try {
		parentPort?.postMessage({id, answer: await measurePhoto(question)});
	} catch (error) {
		parentPort?.postMessage({id, error: String(error)});
	}
});
