/** Buttons of reviewing: what is done, with which draft, and how many decisions were known when it was shown. */
import {menuButton} from './button.ts';

/** What a button of reviewing asks for. */
export type ReviewDeed = {
	readonly act: (typeof acts)[number];
	readonly find: number;
	/** So many decisions its reader knew; another one made meanwhile is told before anything is done. */
	readonly known: number;
	/** A name, or the number of a page. */
	readonly what: string | undefined;
	readonly why: string | undefined;
};

const acts = ['open', 'next', 'menu', 'agree', 'kinds', 'kind', 'ranks', 'rank', 'nothing', 'ask'] as const;

/** The menu that these buttons belong to. */
export const reviewMenu = 'review';

/** The data of a button. */
export function reviewButton(
	deed: Pick<ReviewDeed, 'act' | 'find'> & {
		readonly known?: number;
		readonly what?: string | undefined;
		readonly why?: string | undefined;
	},
): string {
	const {act, find, known = 0, what, why} = deed;
	// What is asked for last may only stand behind what it is about.
	const rest = why === undefined ? (what === undefined ? [] : [dashed(what)]) : [dashed(what ?? ''), why];
	const parts = [act, String(find), String(known), ...rest].map(part => (part === '' ? '-' : part));
	return menuButton(reviewMenu, ...parts);
}

/** Reads what stands behind the name of the menu; nothing when no button of ours looks like this. */
export function reviewDeed([name, find = '', known = '', what, why]: readonly string[]):
	| ReviewDeed
	| undefined {
	const act = acts.find(one => one === name);
	if (!act || !/^\d{1,10}$/.test(find) || !/^\d{1,4}$/.test(known)) return undefined;
	return {
		act,
		find: Number(find),
		known: Number(known),
		what: what === undefined || what === '-' ? undefined : what.replaceAll('-', ' '),
		why,
	};
}

/** Scientific names are letters and blanks alone (ICZN, 4th edition, article 11.2). */
function dashed(name: string): string {
	return name.replaceAll(' ', '-');
}
