/** Between two cases that are sorted: what is saved, how many there are, and what the next one is like. */
import type {Ask} from '../find/question.ts';
import {type Draft, draftSchema} from '../record/draft.ts';
import type {Call, Keyboard} from '../store/call.ts';
import type {FindRow} from '../store/finds.ts';
import {countSorted, draftsSorted, openSorting} from '../store/sortings.ts';
import {headOf} from './asking.ts';
import {packButton} from './button.ts';
import {type Desk, readerAt} from './desk.ts';
import {draftName} from './draft-card.ts';
import {rowsOf} from './screen.ts';
import {nextWaiting} from './waiting.ts';
import {escaped, lineText} from './words.ts';

/** So many cases back, others are looked for that the next one may be like. */
const lookedBack = 15;
/** So many of these are offered beside the last one. */
const mostOthers = 3;

type Model = {readonly find: number; readonly body: Draft};

/** Whether a find has come to its end in a sorting that goes on, and is not only looked at or changed later. */
export async function isBetweenCases({tx, chat, now}: Desk, row: FindRow, ask: Ask): Promise<boolean> {
	if (row.sorting === null || ask.kind !== 'end' || ask.lead?.message === 'said-mended') return false;
	return (await openSorting(tx, {chat: chat.id, now})) === row.sorting;
}

/** The message between two cases. */
export async function sortScreen(
	desk: Desk,
	row: FindRow,
	{ask, turn}: {readonly ask: Ask; readonly turn: number},
): Promise<Extract<Call, {kind: 'send'}>> {
	const reader = readerAt(desk, row.region);
	const {say} = reader;
	const sorting = row.sorting ?? 0;
	const drafts = await draftsSorted(desk.tx, {sorting, limit: lookedBack}, draftSchema);
	const saved = drafts.find(({find}) => find === row.id);
	const [last, ...others] = modelsOf(saved ? [saved, ...drafts] : drafts);
	const count = await countSorted(desk.tx, sorting);
	const waiting = await nextWaiting(desk, {id: sorting, isBegun: true});
	const paragraphs = [
		// What is saved is told by its number.
		saved ? '' : (headOf(desk, row) ?? ''),
		ask.lead ? lineText(ask.lead, reader) : '',
		saved
			? say.say('sort-saved', {
					number: String(saved.find),
					name: draftName(saved.body, say),
					mm: saved.body.length?.mm ?? 0,
				})
			: lineText(ask.text, reader),
		say.say('sort-count', {count}),
		waiting ? say.say('sort-next-waiting', {number: String(waiting.id)}) : say.say('sort-next'),
		others.map(model => likeLine(model, desk)).join('\n'),
	];
	return {
		kind: 'send',
		html: escaped(paragraphs.filter(text => text !== '').join('\n')),
		keyboard: keyboardOf(desk, {row, turn, last, others, canBack: ask.canBack}),
	};
}

/** The last of each name, the newest first: those whose answers may be taken over. */
function modelsOf(drafts: readonly Model[]): readonly Model[] {
	const empty = drafts.filter(({body}) => body.kind === 'egg-case');
	const nameOf = ({body}: Model) => body.said.join(' ');
	const firsts = empty.filter(
		(one, index) => index === empty.findIndex(other => nameOf(other) === nameOf(one)),
	);
	return firsts.slice(0, mostOthers + 1);
}

function likeLine({find, body}: Model, desk: Desk): string {
	const {say} = readerAt(desk);
	return say.say('sort-like-line', {
		number: String(find),
		name: draftName(body, readerAt(desk, body.region.id).say),
	});
}

type Between = {
	readonly row: FindRow;
	readonly turn: number;
	readonly last: Model | undefined;
	readonly others: readonly Model[];
	readonly canBack: boolean;
};

function keyboardOf(desk: Desk, {row, turn, last, others, canBack}: Between): Keyboard {
	const {say} = readerAt(desk, row.region);
	const button = (act: string, text: string) => ({
		text,
		data: packButton({kind: 'sort', find: row.id, turn, act}),
	});
	const back = {
		text: say.say('option-back'),
		data: packButton({kind: 'find', find: row.id, turn, option: 'back'}),
	};
	return [
		...(last ? [[button(`like-${last.find.toString(36)}`, say.say('sort-same'))]] : []),
		...rowsOf(
			others.map(({find}) =>
				button(`like-${find.toString(36)}`, say.say('sort-like', {number: String(find)})),
			),
		),
		[button('different', say.say('sort-different'))],
		[button('done', say.say('sort-all-done'))],
		[button('pause', say.say('sort-pause')), ...(canBack ? [back] : [])],
	];
}
