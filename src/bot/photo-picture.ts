/** Photos drawn back with what was measured on them, as they wait with their words. */
import type {Proposal, Tray} from '../find/proposal.ts';
import type {CallPicture} from '../store/picture.ts';
import type {Reader} from './words.ts';

/** A photo with lines, of one case or of several. */
export type PhotoPicture = Extract<CallPicture, {kind: 'measured' | 'tray'}>;

/** The photo of one case with its lines. */
export function measuredPicture(
	{hash, lengths, width, outline, unsure}: Proposal,
	{say}: Reader,
): Extract<PhotoPicture, {kind: 'measured'}> {
	return {
		...{kind: 'measured', hash, lengths},
		...(width ? {width} : {}),
		...(outline ? {outline} : {}),
		...(unsure ? {unsure} : {}),
		title: say.say('picture-measured', {mm: lengths[0]?.mm ?? 0}),
	};
}

/** The photo of several cases, each with its number and its line. */
export function trayPicture(
	{hash, cases, sheet, unsure}: Tray,
	{say}: Reader,
): Extract<PhotoPicture, {kind: 'tray'}> {
	return {
		...{kind: 'tray', hash},
		cases: cases.map(({number, length, outline}) => ({number, length, ...(outline ? {outline} : {})})),
		...(sheet ? {sheet} : {}),
		...(unsure ? {unsure} : {}),
		title: say.say('picture-tray', {
			count: cases.length,
			list: cases.map(({number, length}) => `${number}: ${length.mm}`).join(', '),
		}),
	};
}
