import {expect, test} from 'vitest';
import {standAt} from '../../src/find/stand.ts';
import {trailSchema} from '../../src/find/trail.ts';
import {restOf} from '../../src/find/tray.ts';
import {trailOfRest} from '../../src/find/tray-turn.ts';
import {goingOn, talked} from '../support/walk.ts';
import {photoOf, toTheLength} from './trays.ts';
import {after, asked, flow, kinds} from './turns.ts';

const rays = [{mm: 65}, {mm: 44, shape: 'long'}, {mm: 67}, {mm: 42, shape: 'long'}, {mm: 66}] as const;
const measured = {kind: 'measured', outcome: photoOf(rays)} as const;
const soft = ['broad', 'lines', 'blade', '50 mm'];

test('several cases on a photo for the length are asked about: which are one kind', () => {
	const shown = talked(flow, ...toTheLength, measured);
	expect(shown.ask).toMatchObject({kind: 'tray', shows: {kind: 'tray', tray: {photo: 7}}});
	expect(shown.ask.text).toMatchObject({message: 'question-tray', values: {count: 5, least: 42, most: 67}});
	expect(shown.ask.options.map(({id}) => id)).toEqual([
		...['group-long', 'tick-1', 'tick-2', 'tick-3', 'tick-4', 'tick-5'],
		...['one-kind', 'not-quite', 'leave'],
	]);
});

test('a chosen set answers for count and length, each length is kept, and the key goes on', () => {
	const shown = talked(flow, ...toTheLength, measured);
	const chosen = goingOn(flow, shown, 'tick-1', 'tick-3', 'tick-5', 'one-kind');
	const {facts} = chosen.turn.standing;
	expect(facts.count).toBe(3);
	expect(facts.length).toMatchObject({mm: 66, method: 'photo', reference: 'a4'});
	expect(facts.each.map(({mm}) => mm)).toEqual([65, 67, 66]);
	expect(chosen.ask.kind).toBe('look');
	// The same from what is stored: nothing but the trail says so.
	expect(standAt(flow, trailSchema.parse(JSON.parse(JSON.stringify(chosen.turn.trail)))).facts).toEqual(
		facts,
	);
});

test('nothing is ticked before somebody ticks it, and nothing ticked is no set', () => {
	const shown = talked(flow, ...toTheLength, measured);
	expect(shown.turn.standing.trayed?.picked).toEqual([]);
	const none = after(shown, {kind: 'press', turn: shown.turn.turn, option: 'one-kind'});
	expect(asked(none.effects).lead).toEqual({message: 'help-tray-none'});
	expect(none.trail).toBe(shown.turn.trail);
});

test('a suggested group only sets the ticks', () => {
	const grouped = goingOn(flow, talked(flow, ...toTheLength, measured), 'group-long');
	expect(grouped.turn.standing.trayed).toMatchObject({stage: 'shown', picked: [2, 4]});
	expect(kinds(grouped.turn.effects)).toEqual(['refresh']);
});

test('ticks that come quicker than the message changes all count', () => {
	const shown = talked(flow, ...toTheLength, measured);
	const turn = shown.turn.turn;
	const quick = ['tick-1', 'tick-3', 'tick-5'].reduce(
		(place, option) => goingOn(flow, place, {kind: 'press', turn, option}),
		shown,
	);
	expect(quick.turn.standing.trayed?.picked).toEqual([1, 3, 5]);
	const chosen = goingOn(flow, quick, 'one-kind');
	const late = after(chosen, {kind: 'press', turn, option: 'tick-2'});
	expect(asked(late.effects).lead).toEqual({message: 'said-moved-on'});
});

test('numbers can be written', () => {
	const shown = talked(flow, ...toTheLength, measured);
	const written = after(shown, {kind: 'text', text: '5, 1 and 3'});
	expect(written.standing.trayed?.picked).toEqual([1, 3, 5]);
	expect(asked(after(shown, {kind: 'text', text: '9'}).effects).lead).toEqual({message: 'help-tray-numbers'});
});

test('a line that lies wrong takes its number out of every set', () => {
	const shown = talked(flow, ...toTheLength, measured);
	const menu = after(shown, {kind: 'press', turn: shown.turn.turn, option: 'not-quite'});
	expect(asked(menu.effects).options.map(({id}) => id)).toContain('out-3');
	const out = goingOn(flow, shown, 'tick-3', {kind: 'press', turn: shown.turn.turn + 1, option: 'out-3'});
	expect(out.ask.options.map(({id}) => id)).not.toContain('tick-3');
	const chosen = goingOn(flow, out, 'tick-1', 'tick-5', 'one-kind');
	expect(chosen.turn.standing.facts.each.map(({mm}) => mm)).toEqual([65, 66]);
	expect(restOf(chosen.turn.standing.trayed)?.cases.map(({number}) => number)).toEqual([2, 4]);
});

test('Back takes back the choice, and one tick after the other', () => {
	const chosen = goingOn(flow, talked(flow, ...toTheLength, measured), 'tick-1', 'tick-3', 'one-kind');
	const back = goingOn(flow, chosen, 'back');
	expect(back.turn.standing.trayed).toMatchObject({stage: 'shown', picked: [1, 3]});
	expect(goingOn(flow, back, 'back', 'back').turn.standing.trayed?.picked).toEqual([]);
	expect(goingOn(flow, back, 'back', 'back', 'back').ask.kind).toBe('length');
});

test('a tray left where one length was asked for leads back to that question', () => {
	const left = goingOn(flow, talked(flow, ...toTheLength, measured), 'leave', '66 mm');
	expect(left.turn.standing.facts).toMatchObject({length: {method: 'typed'}, each: []});
	expect(left.turn.standing.facts.count).toBe(1);
});

test('lengths too far apart for one kind are asked about once more', () => {
	const shown = goingOn(flow, talked(flow, ...toTheLength, measured), 'tick-1', 'tick-2');
	const wide = after(shown, {kind: 'press', turn: shown.turn.turn, option: 'one-kind'});
	expect(asked(wide.effects)).toMatchObject({
		text: {message: 'question-tray-spread', values: {least: 44, most: 65}},
		options: [{id: 'one-kind-yes'}, {id: 'again'}],
	});
	expect(wide.trail).toBe(shown.turn.trail);
	const yes = after(shown, {kind: 'press', turn: shown.turn.turn, option: 'one-kind-yes'});
	expect(yes.standing.facts.each).toHaveLength(2);
});

test('what is left goes on in a find of its own once the first is saved, and only once', () => {
	const chosen = goingOn(flow, talked(flow, ...toTheLength, measured), 'tick-1', 'tick-3', 'one-kind');
	const kept = goingOn(flow, chosen, ...soft, 'keep').turn;
	expect(kept.effects.at(-1)).toMatchObject({
		kind: 'begin',
		how: 'rest',
		rest: {cases: [{number: 2}, {}, {}]},
	});
	const standing = standAt(flow, kept.trail);
	expect(restOf(standing.trayed)).toBeUndefined();
	const mended = goingOn(
		flow,
		{turn: kept, ask: chosen.ask, path: [], now: 0},
		{kind: 'mend', question: 'count'},
		'4',
	);
	expect(kinds(mended.turn.effects)).not.toContain('begin');
	expect(mended.turn.standing.facts).toMatchObject({count: 4, length: {mm: 66}});
});

test('a find put aside hands the rest on, and does not when it is saved later', () => {
	const chosen = goingOn(flow, talked(flow, ...toTheLength, measured), 'tick-1', 'one-kind');
	const aside = after(chosen, {kind: 'put-aside'});
	expect(kinds(aside.effects)).toEqual(['begin']);
	expect(aside.turn).toBe(chosen.turn.turn);
	const later = goingOn(flow, {...chosen, turn: aside}, ...soft, 'keep');
	expect(kinds(later.turn.effects)).not.toContain('begin');
});

test('the find of the rest knows place and day, asks which are one kind, and can be left', () => {
	const chosen = goingOn(
		flow,
		talked(flow, ...toTheLength, measured),
		'tick-1',
		'tick-3',
		'tick-5',
		'one-kind',
	);
	const {trail, standing} = chosen.turn;
	const rest = restOf(standing.trayed);
	if (!rest) throw new Error('Expected something to be left; nothing is');
	const begun = {turn: 1, trail: trailOfRest(flow, {trail, standing, rest}, {photo: 9, now: 1})};
	const next = goingOn(
		flow,
		{turn: {...begun, standing, effects: []}, ask: chosen.ask, path: [], now: 1},
		{
			kind: 'begin',
		},
	);
	expect(next.ask.text).toMatchObject({message: 'question-tray', values: {rest: 'yes', count: 2}});
	expect(next.ask.canBack).toBe(false);
	expect(next.turn.standing.facts.photos).toEqual([9]);
	const set = goingOn(flow, next, 'group-all', 'one-kind');
	expect(asked(set.turn.effects)).toMatchObject({
		question: 'egg-case',
		canBack: true,
		lead: {message: 'said-tray-set', values: {count: 2, numbers: '2, 4'}},
	});
	expect(goingOn(flow, set, 'back').ask.kind).toBe('tray');
	// Place, day and count are known.
	const walked = goingOn(flow, set, 'yes', 'empty', 'go-on');
	expect(walked.ask.question).toBe('broken');
	expect(walked.turn.standing.facts).toMatchObject({place: {name: 'Gwithian'}, count: 2});
	const left = goingOn(flow, next, 'leave');
	expect(left.ask).toMatchObject({kind: 'end', text: {message: 'question-tray-left'}});
	expect(kinds(left.turn.effects)).not.toContain('begin');
});

test('cases of lengths that no case has are told as seen and not measured; one that is left is asked about alone', () => {
	const outcome = photoOf([{mm: 900}, {mm: 66}, {mm: 68}]);
	const shown = talked(flow, ...toTheLength, {kind: 'measured', outcome});
	expect(shown.turn.standing.trayed?.tray).toMatchObject({
		cases: [
			{number: 1, length: {mm: 66}},
			{number: 2, length: {mm: 68}},
		],
		unsure: [[100, 175]],
	});
	const one = talked(flow, ...toTheLength, {kind: 'measured', outcome: photoOf([{mm: 900}, {mm: 66}])});
	expect(one.ask).toMatchObject({kind: 'proposal', text: {values: {mm: 66, unsure: 1}}});
});

test('a coin is told in words and tells the find nothing', () => {
	const place = talked(flow, ...toTheLength);
	const coin = after(place, {
		kind: 'measured',
		outcome: {kind: 'declined', why: 'coin', aboutMm: [52, 81]},
	});
	expect(asked(coin.effects).lead).toEqual({
		message: 'help-photo-coin',
		values: {instead: 'length', about: 'yes', low: 5, high: 8},
	});
	expect(coin.trail).toBe(place.turn.trail);
	expect(coin.standing.facts.length).toBeUndefined();
});
