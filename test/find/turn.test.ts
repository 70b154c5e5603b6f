import {expect, test} from 'vitest';
import {beginning, goingOn, talked} from '../support/walk.ts';
import {after, asked, flow, kinds, secondMs, upToTheResult} from './turns.ts';

test('a button of an answered question changes nothing, says so and shows the present question', () => {
	const place = talked(flow, 'yes', 'empty');
	const late = after(place, {kind: 'press', turn: place.turn.turn - 2, option: 'no'});
	expect(late.trail).toBe(place.turn.trail);
	expect(late.turn).toBe(place.turn.turn);
	expect(kinds(late.effects)).toEqual(['ask']);
	expect(asked(late.effects)).toMatchObject({question: 'photo', lead: {message: 'said-moved-on'}});
});

test('the same button pressed twice within five seconds counts once and stays quiet', () => {
	const place = talked(flow, 'yes');
	const twice = after(place, {kind: 'press', turn: place.turn.turn - 1, option: 'yes'}, 4999);
	expect(twice.effects).toEqual([]);
	expect(twice.trail).toBe(place.turn.trail);
	const later = after(place, {kind: 'press', turn: place.turn.turn - 1, option: 'yes'}, 5000);
	expect(asked(later.effects).lead).toEqual({message: 'said-moved-on'});
});

test('a button of a question to come is as good as an old one', () => {
	const place = talked(flow, 'yes');
	const early = after(place, {kind: 'press', turn: place.turn.turn + 1, option: 'empty'});
	expect(early.trail).toBe(place.turn.trail);
	expect(asked(early.effects).lead).toEqual({message: 'said-moved-on'});
});

test.each(['purple', 'go-on', '', 'here', 'correct', 'fix-photo', '__proto__', 'constructor', 'toString'])(
	'the made-up option "%s" changes nothing',
	option => {
		const place = talked(flow, 'yes');
		const made = after(place, {kind: 'press', turn: place.turn.turn, option});
		expect(made.trail).toBe(place.turn.trail);
		expect(asked(made.effects)).toMatchObject({question: 'alive', lead: {message: 'said-moved-on'}});
	},
);

test.each(['purple', '__proto__', 'constructor'])(
	'the made-up state "%s" of a character changes nothing',
	option => {
		const place = talked(flow, ...upToTheResult.slice(0, -4));
		expect(place.ask.kind).toBe('look');
		const made = after(place, {kind: 'press', turn: place.turn.turn, option});
		expect(made.trail).toBe(place.turn.trail);
		expect(made.turn).toBe(place.turn.turn);
		expect(asked(made.effects).lead).toEqual({message: 'said-moved-on'});
	},
);

test('a button answers: the old question closes with the choice and the next one is asked under a new turn', () => {
	const place = beginning(flow);
	const next = after(place, {kind: 'press', turn: 1, option: 'yes'});
	expect(next.turn).toBe(2);
	expect(next.effects).toMatchObject([
		{kind: 'close', turn: 1, chosen: {message: 'option-egg-case-yes'}},
		{kind: 'ask', turn: 2, ask: {question: 'alive'}},
	]);
	expect(next.trail).toEqual([
		{question: 'egg-case', answer: {kind: 'option', option: 'yes'}, at: place.now + 60 * secondMs},
	]);
});

test('Back takes the last answer out of the trail and asks its question again', () => {
	const place = talked(flow, 'yes', 'empty');
	const back = after(place, {kind: 'press', turn: place.turn.turn, option: 'back'});
	expect(back.trail).toEqual(place.turn.trail.slice(0, 1));
	expect(asked(back.effects).question).toBe('alive');
	expect(back.turn).toBe(place.turn.turn + 1);
});

test('there is nothing to go back to at the beginning, nor from a saved find', () => {
	for (const place of [beginning(flow), talked(flow, ...upToTheResult, 'keep')]) {
		expect(place.ask.canBack).toBe(false);
		const back = after(place, {kind: 'press', turn: place.turn.turn, option: 'back'});
		expect(back.trail).toBe(place.turn.trail);
		expect(asked(back.effects).lead).toEqual({message: 'said-moved-on'});
	}
});

test('Why explains the question and leaves its buttons good', () => {
	const place = talked(flow, 'yes');
	const why = after(place, {kind: 'press', turn: place.turn.turn, option: 'why'});
	expect(why.turn).toBe(place.turn.turn);
	expect(why.effects).toMatchObject([{kind: 'explain', turn: place.turn.turn, ask: {why: 'why-alive'}}]);
	const answer = after({...place, turn: why}, {kind: 'press', turn: why.turn, option: 'empty'});
	expect(asked(answer.effects).question).toBe('photo');
});

test('a press of Here asks for the position and waits', () => {
	const place = talked(flow, 'yes', 'empty', 'go-on');
	const here = after(place, {kind: 'press', turn: place.turn.turn, option: 'here'});
	expect(here.effects).toEqual([{kind: 'ask-position'}]);
	expect(here.trail).toBe(place.turn.trail);
});

test('a mended answer takes the place of the old one, and the record is kept again', () => {
	const kept = talked(flow, ...upToTheResult, 'keep');
	const open = after(kept, {kind: 'mend', question: 'count'});
	expect(asked(open.effects).question).toBe('count');
	const mended = after({...kept, turn: open}, {kind: 'text', text: '4'});
	expect(mended.standing.facts.count).toBe(4);
	expect(kinds(mended.effects)).toEqual(['keep', 'close', 'ask']);
	expect(asked(mended.effects)).toMatchObject({question: 'kept', lead: {message: 'said-mended'}});
	expect(mended.trail.filter(({question}) => question === 'count')).toHaveLength(1);
});

test('a mending given up with Back leaves the saved find as it was', () => {
	const kept = talked(flow, ...upToTheResult, 'keep');
	const open = after(kept, {kind: 'mend', question: 'where'});
	const back = after({...kept, turn: open}, {kind: 'press', turn: open.turn, option: 'back'});
	expect(back.trail).toEqual(kept.turn.trail);
	expect(asked(back.effects).question).toBe('kept');
});

test('a note is written, changed and never lost from the record', () => {
	const kept = talked(flow, ...upToTheResult, 'keep');
	const noted = goingOn(flow, kept, {kind: 'mend', question: 'note'}, 'under weed');
	expect(noted.turn.standing.facts.note).toBe('under weed');
	expect(kinds(noted.turn.effects)).toContain('keep');
	const changed = goingOn(flow, noted, {kind: 'mend', question: 'note'}, 'in a pool');
	expect(changed.turn.standing.facts.note).toBe('in a pool');
	expect(changed.turn.trail.filter(({question}) => question === 'note')).toHaveLength(1);
});

test('a photo keeps the turn, so that a button pressed between two photos still counts', () => {
	const asking = talked(flow, 'yes', 'empty');
	const one = after(asking, {kind: 'photo', photo: 7});
	expect(one.turn).toBe(asking.turn.turn);
	expect(one.effects).toMatchObject([
		{kind: 'ask', settleMs: 1500, ask: {text: {message: 'question-photos-so-far', values: {count: 1}}}},
	]);
	const two = after({...asking, turn: one}, {kind: 'photo', photo: 8});
	expect(two.standing.facts.photos).toEqual([7, 8]);
	const on = after({...asking, turn: two}, {kind: 'press', turn: asking.turn.turn, option: 'go-on'});
	expect(asked(on.effects).question).toBe('where');
	expect(on.standing.facts.photos).toEqual([7, 8]);
});

test('a photo at another question is added and the question put again', () => {
	const place = talked(flow, 'yes', 'empty', 'go-on');
	const added = after(place, {kind: 'photo', photo: 9});
	expect(added.standing.facts.photos).toEqual([9]);
	expect(asked(added.effects)).toMatchObject({question: 'where', lead: {message: 'said-photo-added'}});
});

test('a photo of a saved find is kept with its record', () => {
	const kept = talked(flow, ...upToTheResult, 'keep');
	const added = after(kept, {kind: 'photo', photo: 9});
	expect(kinds(added.effects)).toEqual(['ask', 'keep']);
});

test('saving keeps the record, throwing away drops it, and Back takes that back', () => {
	const result = talked(flow, ...upToTheResult);
	const kept = after(result, {kind: 'press', turn: result.turn.turn, option: 'keep'});
	expect(kinds(kept.effects)).toEqual(['keep', 'close', 'ask']);
	const thrown = after(result, {kind: 'press', turn: result.turn.turn, option: 'throw'});
	expect(kinds(thrown.effects)).toEqual(['throw', 'close', 'ask']);
	const back = after({...result, turn: thrown}, {kind: 'press', turn: thrown.turn, option: 'back'});
	expect(back.trail).toEqual(result.turn.trail);
	expect(kinds(back.effects)).toEqual(['close', 'ask']);
});

test('a part marked shows on the same message', () => {
	const place = talked(flow, 'yes', 'empty', 'go-on', 'Gwithian', 'today', '1');
	const marked = after(place, {kind: 'press', turn: place.turn.turn, option: 'horns'});
	expect(marked.effects).toMatchObject([{kind: 'refresh', turn: place.turn.turn + 1, of: place.turn.turn}]);
	const unmarked = after({...place, turn: marked}, {kind: 'press', turn: marked.turn, option: 'horns'});
	expect(unmarked.standing.facts.lost).toEqual([]);
});

test('a number without a unit is asked for its unit, and a size that cannot be is refused with the reason', () => {
	const place = talked(flow, ...upToTheResult.slice(0, -5));
	const bare = goingOn(flow, place, 'about 6');
	expect(bare.ask).toMatchObject({kind: 'unit', question: 'length'});
	const sized = goingOn(flow, bare, 'cm');
	expect(sized.turn.standing.facts.length).toMatchObject({mm: 60});
	const huge = goingOn(flow, place, '9 m');
	expect(huge.turn.trail).toBe(place.turn.trail);
	expect(asked(huge.turn.effects).lead?.message).toMatch(/^help-length-/);
});
