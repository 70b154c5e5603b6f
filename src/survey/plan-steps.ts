/** The questions that lead a coordinator through a survey day, in their order. */

/** One question: what it takes, and whether it may be passed over. */
export type PlanStep = {
	readonly id: string;
	readonly takes: 'words' | 'spot' | 'date' | 'time' | 'height';
	/** The most characters of words. */
	readonly most?: number;
	/** There is a button for having nothing to say here. */
	readonly mayBeNone?: boolean;
	/** Asked only where this step was answered with a time. */
	readonly needs?: string;
};

/** Every step; place and date come before the times, since the clocks are those of the place on that date. */
export const planSteps: readonly PlanStep[] = [
	{id: 'title', takes: 'words', most: 60},
	{id: 'spot', takes: 'spot'},
	{id: 'place', takes: 'words', most: 80},
	{id: 'date', takes: 'date'},
	{id: 'start', takes: 'time'},
	{id: 'end', takes: 'time'},
	{id: 'low-water', takes: 'time', mayBeNone: true},
	{id: 'low-height', takes: 'height', mayBeNone: true, needs: 'low-water'},
	{id: 'table', takes: 'words', most: 60, needs: 'low-water'},
	{id: 'meeting', takes: 'words', most: 120},
	{id: 'bring', takes: 'words', most: 120, mayBeNone: true},
	{id: 'contact', takes: 'words', most: 80},
	{id: 'risks', takes: 'words', most: 160, mayBeNone: true},
];

/** What is asked again with a step that is changed: another date has other tides, another place other words. */
export const goWith: Readonly<Record<string, readonly string[]>> = {
	spot: ['place', 'meeting'],
	date: ['start', 'end', 'low-water', 'low-height'],
	start: ['end'],
	'low-water': ['low-height'],
};
