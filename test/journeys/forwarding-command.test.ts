import {expect, onTestFinished, test, vi} from 'vitest';
import {grantRole} from '../../src/store/roles.ts';
import {startReceiver} from '../clockwork/receiver.ts';
import {beginJourney, newestFind} from '../support/journey.ts';
import {begin, walkTo} from '../support/steps.ts';
import {idOf} from '../support/team.ts';

vi.setConfig({testTimeout: 60_000});

// Bytes 00 to 1f in base64.
const secret = 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=';

async function scene() {
	const time = {now: () => 0};
	const receiver = await startReceiver(secret, () => time.now());
	onTestFinished(receiver.close);
	const journey = await beginJourney({environment: {FORWARD_URL: receiver.url, FORWARD_SECRET: secret}});
	time.now = journey.clock.now;
	const {db, ada, clock} = journey;
	await begin(ada);
	const own = async () => {
		const id = await idOf(db, ada);
		await grantRole(db, {person: id, role: 'owner', now: clock.now()});
	};
	return {...journey, receiver, own};
}

test('an owner sees what was given up and why, and it arrives after another round', async () => {
	const {ada, db, receiver, own, check} = await scene();
	await own();
	receiver.answer({status: 410});
	await walkTo({db, person: ada}, 'kept');
	const {uuid} = await newestFind(db, ada.id);
	const states = () => db.selectFrom('forward').select('state').execute();
	await expect.poll(states, {timeout: 20_000}).toEqual([{state: 'dead'}]);
	await ada.sends('/forwarding');
	expect(ada.sees.text).toContain('0 on their way, 0 arrived, 1 given up');
	expect(ada.sees.text).toContain(
		`record ${uuid.slice(0, 8)}, version 1, one try, last answer: answered 410`,
	);
	expect(ada.labels()).toEqual(['Try all again', 'Try no. 1 again']);
	const list = ada.sees;
	receiver.answer({status: 204});
	await ada.presses('Try no. 1 again');
	expect(ada.sees.text).toContain('I try it again now');
	await expect.poll(states, {timeout: 20_000}).toEqual([{state: 'sent'}]);
	await ada.presses('Try all again', {on: list});
	expect(ada.sees.text).toContain('There is nothing left to try again');
	expect(receiver.heard.map(({webhookId}) => webhookId)).toEqual([`${uuid}_1`, `${uuid}_1`]);
	await ada.sends('/forwarding');
	expect(ada.sees.text).toContain('0 on their way, 1 arrived, 0 given up');
	check();
});

test('nobody but an owner sees or revives what was given up, not even by a made-up button', async () => {
	const {ada, db, receiver, person} = await scene();
	receiver.answer({status: 410});
	await walkTo({db, person: ada}, 'kept');
	const states = () => db.selectFrom('forward').select('state').execute();
	await expect.poll(states, {timeout: 20_000}).toEqual([{state: 'dead'}]);
	const cato = person('Cato');
	await begin(cato);
	await cato.sends('/forwarding');
	expect(cato.sees.text).toContain('This is only for people who help to run the survey');
	await cato.makesUp('m.forwarding.all');
	expect(cato.sees.text).toContain('This is only for people who help to run the survey');
	await cato.makesUp('m.nowhere.all');
	expect(cato.sees.text).toContain('I do not have a find open with you here');
	expect(await states()).toEqual([{state: 'dead'}]);
});
