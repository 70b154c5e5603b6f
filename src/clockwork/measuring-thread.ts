/** The thread in which one photo is measured: its bytes come with the start, the outcome is its one message. */
import {parentPort, workerData} from 'node:worker_threads';
import {z} from 'zod';
import {measurePhoto} from '../capsule/measure.ts';

const {bytes} = z.object({bytes: z.instanceof(Uint8Array)}).parse(workerData);
parentPort?.postMessage(await measurePhoto(bytes));
