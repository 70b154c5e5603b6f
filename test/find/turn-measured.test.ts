import {expect, test} from 'vitest';
import type {MeasuredPhoto, Proposal} from '../../src/find/proposal.ts';
import {goingOn, talked} from '../support/walk.ts';
import {after, asked, flow, kinds, upToTheResult} from './turns.ts';

const toTheLength = upToTheResult.slice(0, upToTheResult.indexOf('66 mm'));

const proposal: Proposal = {
	photo: 7,
	hash: 'a'.repeat(64),
	reference: 'a4',
	lengths: [
		{
			mm: 65.8,
			uncertaintyMm: 0.7,
			line: [
				[10, 20],
				[10, 220],
			],
		},
	],
	width: {
		mm: 48.2,
		uncertaintyMm: 0.9,
		line: [
			[0, 120],
			[150, 120],
		],
	},
};
const proposed: MeasuredPhoto = {kind: 'proposed', proposal};

test('a photo sent where the length is asked for is measured, and the question stays open', () => {
	const place = talked(flow, ...toTheLength);
	expect(place.ask.kind).toBe('length');
	const sent = after(place, {kind: 'photo', photo: 7});
	expect(sent.effects).toEqual([
		{kind: 'measure', photo: 7},
		{kind: 'say', line: {message: 'said-measuring'}},
	]);
	expect(sent.turn).toBe(place.turn.turn);
	expect(sent.standing.facts.photos).toContain(7);
});

test('what was measured is shown on the photo, and yes makes it the length and the width', () => {
	const place = talked(flow, ...toTheLength);
	expect(asked(after(place, {kind: 'measured', outcome: proposed}).effects)).toMatchObject({
		kind: 'proposal',
		shows: {kind: 'measured', proposal},
		options: [{id: 'right'}, {id: 'not-quite'}],
	});
	const yes = goingOn(flow, place, {kind: 'measured', outcome: proposed}, 'right').turn;
	expect(yes.standing.facts.length).toEqual({mm: 65.8, uncertaintyMm: 0.7, method: 'photo', reference: 'a4'});
	expect(yes.standing.facts.width).toMatchObject({mm: 48.2, method: 'photo'});
	expect(asked(yes.effects).kind).toBe('look');
});

test('not quite leads to writing the length, and nothing measured is kept', () => {
	const no = talked(flow, ...toTheLength, {kind: 'measured', outcome: proposed}, 'not-quite');
	expect(no.ask).toMatchObject({kind: 'length', question: 'length'});
	const written = after(no, {kind: 'text', text: '66 mm'});
	expect(written.standing.facts.length).toMatchObject({mm: 66, method: 'typed'});
	expect(written.standing.facts.width).toBeUndefined();
});

test('where two edges compete the person chooses a line', () => {
	const second = {
		mm: 71.1,
		uncertaintyMm: 0.8,
		line: proposal.lengths[0]?.line ?? [
			[0, 0],
			[0, 1],
		],
	} satisfies Proposal['lengths'][number];
	const outcome: MeasuredPhoto = {
		kind: 'proposed',
		proposal: {...proposal, lengths: [...proposal.lengths, second]},
	};
	const shown = talked(flow, ...toTheLength, {kind: 'measured', outcome});
	expect(shown.ask.options.map(({id}) => id)).toEqual(['line-a', 'line-b', 'not-quite']);
	expect(goingOn(flow, shown, 'line-b').turn.standing.facts.length).toMatchObject({mm: 71.1});
});

test('a photo that cannot be measured leaves the question open and says what to do', () => {
	const place = talked(flow, ...toTheLength);
	const declined = after(place, {kind: 'measured', outcome: {kind: 'declined', why: 'no-reference'}});
	expect(declined.trail).toBe(place.turn.trail);
	expect(asked(declined.effects)).toMatchObject({kind: 'length', lead: {message: 'help-photo-no-reference'}});
});

test('a length that no case has is not offered', () => {
	const [length] = proposal.lengths;
	const outcome: MeasuredPhoto = {
		kind: 'proposed',
		proposal: {...proposal, lengths: length ? [{...length, mm: 900}] : []},
	};
	const huge = after(talked(flow, ...toTheLength), {kind: 'measured', outcome});
	expect(asked(huge.effects).lead).toMatchObject({message: 'help-photo-impossible'});
});

test('a photo measured after the length was written changes nothing and stays quiet', () => {
	const place = talked(flow, ...toTheLength, '66 mm');
	const late = after(place, {kind: 'measured', outcome: proposed});
	expect(kinds(late.effects)).toEqual([]);
	expect(late.trail).toBe(place.turn.trail);
});
