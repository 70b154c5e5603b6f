import {expect} from 'vitest';
import {journeyTest, newestFind} from '../support/journey.ts';
import {begin, draftOf, newestDraft, press, questionOf, walkTo, write} from '../support/steps.ts';

const cantTell = press("Can't tell");
const allUnsure = Object.fromEntries(
	['outline', 'net', 'keel', 'taper', 'edge', 'coat', 'flaps', 'corners', 'front-flap', 'back-horns'].map(
		id => [id, cantTell],
	),
);

journeyTest('who can tell nothing at all gets a shortlist with what would help', async ({ada, db}) => {
	await begin(ada);
	const asked = await walkTo({db, person: ada}, 'result', allUnsure);
	expect(asked).toContain('outline');
	expect(ada.sees.text).toContain('I cannot say for sure');
	expect(ada.sees.text).toContain('Its length is 66 mm');
	expect(ada.sees.text).toContain('What would help most now: good photos');
	expect(ada.sees.text.match(/about \d+ in 100/g)?.length).toBeGreaterThan(1);
	expect(ada.sees.text).not.toContain('What speaks for it');
	expect(ada.labels()).toEqual(['Save this find', 'Change an answer', 'Throw it away', 'Back']);
	await ada.presses('Save this find');
	const {body} = await newestDraft(db, ada);
	expect(body.sure).toBe('shortlist');
	expect(body.said.length).toBeGreaterThan(1);
	expect(body.leaves.length).toBeGreaterThan(1);
	expect(body.seen.every(({state}) => state === 'cant-tell')).toBe(true);
});

journeyTest('a plain case gets one name, how sure it is, and what speaks for it', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'result');
	expect(ada.sees.text).toMatch(/(Very likely|Likely): (a )?thornback ray/i);
	expect(ada.sees.text).toMatch(/Raja clavata\W+(about )?\d+ in 100/);
	expect(ada.sees.text).toContain('a thin flat blade along both sides');
	expect(ada.sees.text).toMatch(/published (length )?55 to 90 mm/i);
	expect(ada.sees.text).toContain('Until then it is a draft');
	await ada.presses('Save this find');
	const {body} = await newestDraft(db, ada);
	expect(body.said).toEqual(['raja-clavata']);
	expect(body.ranking[0]).toMatchObject({taxon: 'raja-clavata', scientificName: 'Raja clavata'});
	const sum = body.ranking.reduce((all, {probability}) => all + probability, 0);
	expect(sum).toBeGreaterThan(0.9);
	expect(sum).toBeLessThanOrEqual(1.001);
});

journeyTest('Why? shows a picture, says what it shows, and keeps the buttons', async ({ada, db, room}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'outline');
	const {turn} = await newestFind(db, ada.id);
	const labels = ada.labels();
	expect(labels).toEqual([
		'A\u2002Longer than two widths',
		'B\u2002Two widths or less',
		"Can't tell",
		'Back',
		'Why?',
	]);
	const question = ada.sees;
	expect(question.photo).toBeDefined();
	await ada.presses('Why?');
	expect(ada.sees.photo).toBeDefined();
	expect(ada.sees.photo?.fileId).not.toBe(question.photo?.fileId);
	expect(
		Buffer.from(room.fileBytes(ada.sees.photo?.fileId ?? '') ?? [])
			.subarray(1, 4)
			.toString(),
	).toBe('PNG');
	expect(ada.sees.text).toContain('The small sharks of this region lay slim capsules');
	expect(ada.sees.text).toContain('A: a slim case, more than twice as long as wide.');
	expect(ada.labels()).toEqual(labels.filter(label => label !== 'Why?'));
	expect((await newestFind(db, ada.id)).turn).toBe(turn);
	await ada.presses('Two widths or less');
	expect(await questionOf(db, ada)).toBe('net');
	const shown = ada.all.filter(({id}) => id >= question.id && id < ada.sees.id);
	expect(shown.map(({buttons}) => buttons)).toEqual(shown.map(() => []));
	expect(shown.at(-1)?.text).toContain('→ Two widths or less');
});

journeyTest('the question itself still counts after Why? was read', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'outline');
	const question = ada.sees;
	await ada.presses('Why?');
	await ada.presses('Two widths or less', {on: question});
	expect(await questionOf(db, ada)).toBe('net');
});

journeyTest('Back leads one answer at a time to the beginning, and the trail is empty', async ({ada, db}) => {
	await begin(ada);
	const answers = {photo: press('No photo, go on'), condition: press('Soaked and soft')};
	const asked = await walkTo({db, person: ada}, 'result', answers);
	const back: string[] = [];
	while ((await newestFind(db, ada.id)).trail.length > 0) {
		await ada.presses('Back');
		back.push(await questionOf(db, ada));
	}
	expect(back).toEqual([...asked].reverse());
	expect(ada.sees.text).toContain('four corners');
	expect(ada.labels()).not.toContain('Back');
	expect(await newestFind(db, ada.id)).toMatchObject({trail: [], state: 'open'});
});

journeyTest('one answer changed at the end changes the name and leaves the others', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'result');
	const before = await newestFind(db, ada.id);
	await ada.presses('Change an answer');
	expect(ada.sees.text).toContain('Which answer do you want to give anew?');
	expect(ada.labels()).toContain('Keel along the sides');
	await ada.presses('Length');
	await ada.sends('120 mm');
	expect(await questionOf(db, ada)).toBe('coat');
	await walkTo({db, person: ada}, 'result');
	expect(ada.sees.text).toContain('Blonde ray');
	const after = await newestFind(db, ada.id);
	expect(after.standing.facts).toMatchObject({
		place: before.standing.facts.place,
		date: before.standing.facts.date,
		count: before.standing.facts.count,
		length: {mm: 120},
	});
	await ada.presses('Save this find');
	expect((await newestDraft(db, ada)).body.length).toMatchObject({mm: 120});
});

journeyTest('who changes an answer and thinks again goes Back to the result', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'result');
	const {trail} = await newestFind(db, ada.id);
	await ada.presses('Change an answer');
	await ada.presses('How many');
	expect(await questionOf(db, ada)).toBe('count');
	await ada.presses('Back');
	expect(await questionOf(db, ada)).toBe('result');
	expect((await newestFind(db, ada.id)).trail).toEqual(trail);
});

journeyTest('a find thrown away is no draft, and Back takes it up again', async ({ada, db}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'result', {length: write('64 mm')});
	await ada.presses('Throw it away');
	expect(ada.sees.text).toContain('Thrown away');
	expect(ada.labels()).toEqual(['Look at another find', 'Back']);
	const {id, state} = await newestFind(db, ada.id);
	expect(state).toBe('thrown');
	expect(await draftOf(db, id)).toBeUndefined();
	await ada.presses('Back');
	expect(await questionOf(db, ada)).toBe('result');
	expect((await newestFind(db, ada.id)).state).toBe('open');
	await ada.presses('Save this find');
	expect((await newestDraft(db, ada)).body.length).toMatchObject({mm: 64});
});

journeyTest('a find thrown away is emptied after a day', async ({ada, db, forward}) => {
	await begin(ada);
	await walkTo({db, person: ada}, 'result');
	await ada.presses('Throw it away');
	await forward(25 * 3_600_000);
	await ada.sends('/help');
	await expect.poll(async () => (await newestFind(db, ada.id)).trail, {timeout: 5000}).toEqual([]);
});
