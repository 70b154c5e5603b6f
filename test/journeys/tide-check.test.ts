import {expect, vi} from 'vitest';
import {journeyTest} from '../support/journey.ts';
import {planAnswers, planDay, surveyTeam} from '../support/survey-days.ts';

vi.setConfig({testTimeout: 60_000});

const estimated = /Only you see this|estimate|Newlyn|https:/;

journeyTest(
	'a coordinator sees whether a typed low water fits an estimate, and nobody else sees the estimate',
	async journey => {
		const {dora, cato} = await surveyTeam(journey);
		await planDay(dora);
		expect(dora.sees.text).toContain('Low water: 12:28, 0.9 m');
		expect(dora.sees.text).toContain(
			'An estimate for Newlyn, about 1 km away, has low water around 11:30. Yours differs by 1 h: look again',
		);
		expect(dora.sees.text).toContain('Licensed CC BY 4.0');
		await dora.presses('Change something');
		await dora.presses('Low water');
		await dora.sends('16:40');
		await dora.sends('0.9');
		expect(dora.sees.text).toContain('Yours differs by 5 h 15 min: look again');
		await dora.presses('Change something');
		await dora.presses('Low water');
		await dora.sends('11:35');
		await dora.sends('0.9');
		expect(dora.sees.text).toContain('has low water around 11:30. That fits yours.');
		// The platform takes so many messages a second; the still clock of a journey has to go on.
		await journey.forward(60_000);
		const before = cato.all.length;
		await dora.presses('Publish and tell');
		expect(cato.sees.text).toContain('Low water: 11:35, 0.9 m, as read from: Official tables');
		await cato.presses('Coming');
		expect(cato.all.length).toBeGreaterThan(before);
		for (const {text} of cato.all.slice(before)) expect(text).not.toMatch(estimated);
	},
	{modes: ['plain'], environment: {TIDE_CHECK: 'on'}},
);

journeyTest(
	'no estimate stands where the keeper has not asked for it',
	async journey => {
		const {dora} = await surveyTeam(journey);
		await planDay(dora);
		expect(dora.sees.text).toContain('Low water: 12:28, 0.9 m');
		expect(dora.sees.text).not.toMatch(estimated);
	},
	['plain'],
);

journeyTest(
	'a beach without a free gauge within 25 km is planned without an estimate',
	async journey => {
		const {dora} = await surveyTeam(journey);
		// Cardigan Bay: the nearest gauge may not be used, the next free one lies 70 km away.
		await planDay(
			dora,
			planAnswers.map(answer => (answer === '50.103, -5.543' ? '52.717, -4.055' : answer)),
		);
		expect(dora.sees.text).toContain('Low water: 12:28, 0.9 m');
		expect(dora.sees.text).not.toMatch(estimated);
	},
	{modes: ['plain'], environment: {TIDE_CHECK: 'on'}},
);
