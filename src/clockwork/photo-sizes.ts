/** Sizes read from one photo, made ready for its find. */
import {type PhotoReading, type ReadSize, readingFrom} from '../capsule/reading.ts';
import type {MeasuredPhoto, Proposal} from '../find/proposal.ts';
import type {Measurer} from './measurer.ts';

type Pixels = readonly [number, number];

/** What to hide in the photo before it is kept, and what its find hears once it is. */
export type PhotoSizes = {
	readonly hidden?: readonly Pixels[] | undefined;
	readonly outcome: (kept: {readonly photo: number; readonly hash: string}) => MeasuredPhoto;
};

/** Reads sizes; a measurer that fails is an answer too, so that nobody waits for ever. */
export async function readSizes(
	{measure, log}: {measure: Measurer['measure']; log: (line: Readonly<Record<string, unknown>>) => void},
	{photo, bytes}: {readonly photo: number; readonly bytes: Uint8Array},
): Promise<PhotoSizes> {
	try {
		const reading = readingFrom(await measure(bytes));
		return {hidden: reading.hidden, outcome: kept => outcomeOf(reading, kept)};
	} catch (error) {
		log({level: 'error', what: 'photo not measured', photo, error: String(error)});
		return {outcome: () => ({kind: 'declined', why: 'failed'})};
	}
}

function outcomeOf(
	reading: PhotoReading,
	kept: {readonly photo: number; readonly hash: string},
): MeasuredPhoto {
	if (reading.kind === 'declined') return {kind: 'declined', why: reading.why};
	const {reference, lengths, width} = reading;
	return {
		kind: 'proposed',
		proposal: {
			...kept,
			reference,
			lengths: lengths.map(whole),
			...(width ? {width: whole(width)} : {}),
		},
	};
}

type Size = Proposal['lengths'][number];

function whole({mm, uncertaintyMm, line: [from, to]}: ReadSize): Size {
	return {mm, uncertaintyMm, line: [wholePoint(from), wholePoint(to)]};
}

function wholePoint([x, y]: Pixels): [number, number] {
	return [Math.round(x), Math.round(y)];
}
