/** The thread in which pictures are drawn: hears what is wanted, answers with bytes or with why not. */
import {parentPort, workerData} from 'node:worker_threads';
import {z} from 'zod';
import {callSchema} from '../store/call.ts';
import {openStudio} from './studio.ts';

const folders = z
	.object({flowsFolder: z.string(), keptFolder: z.string(), photoFolder: z.string()})
	.parse(workerData);
const asked = z.object({id: z.number().int(), question: callSchema.options[0].shape.picture.unwrap()});
const studio = openStudio(folders);

parentPort?.on('message', async (message: unknown) => {
	const {id, question} = asked.parse(message);
	try {
		parentPort?.postMessage({id, answer: await studio(question)});
	} catch (error) {
		parentPort?.postMessage({id, error: String(error)});
	}
});
