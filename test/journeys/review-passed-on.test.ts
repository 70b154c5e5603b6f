import {expect, onTestFinished, test, vi} from 'vitest';
import {z} from 'zod';
import {startReceiver} from '../clockwork/receiver.ts';
import {changeNewest} from '../support/drafts.ts';
import {beginJourney, newestFind} from '../support/journey.ts';
import {oneToReview} from '../support/review.ts';

vi.setConfig({testTimeout: 60_000});

// Bytes 00 to 1f in base64.
const secret = 'whsec_AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=';
const bodySchema = z.object({type: z.string(), data: z.looseObject({occurrenceID: z.string()})});

test('what a verifier decides is passed on as a new version of the record, and later changes keep it', async () => {
	const time = {now: () => 0};
	const receiver = await startReceiver(secret, () => time.now());
	onTestFinished(receiver.close);
	const environment = {FORWARD_URL: receiver.url, FORWARD_SECRET: secret};
	const journey = await beginJourney({environment});
	time.now = journey.clock.now;
	const {ada, ben} = await oneToReview(journey);
	const {uuid, id} = await newestFind(journey.db, ada.id);
	const heard = async (count: number) => {
		await vi.waitFor(() => expect(receiver.heard).toHaveLength(count), 20_000);
		return receiver.heard.map(({webhookId, body}) => ({webhookId, ...bodySchema.parse(JSON.parse(body))}));
	};
	await ben.sends('/review');
	await ben.presses('Another kind');
	await ben.presses('Spotted ray');
	await ben.presses('Surface or edge');
	const [, verified] = await heard(2);
	expect(verified).toMatchObject({
		type: 'record.verified',
		webhookId: `${uuid}_2`,
		data: {
			occurrenceID: `urn:uuid:${uuid}`,
			scientificName: 'Raja montagui',
			scientificNameAuthorship: 'Fowler, 1910',
			taxonRank: 'species',
			identifiedBy: 'a verifier of the survey',
			identificationVerificationStatus: 'verified',
			identificationRemarks: 'a verifier gave another name: its surface or its rim',
		},
	});
	await changeNewest(ada, 'Change how many', '4');
	const [, , changed] = await heard(3);
	expect(changed).toMatchObject({
		type: 'record.changed',
		webhookId: `${uuid}_3`,
		data: {
			organismQuantity: 4,
			scientificName: 'Raja montagui',
			identificationVerificationStatus: 'verified',
		},
	});
	await changeNewest(ada, 'Delete', 'Yes, delete it');
	const [, , , withdrawn] = await heard(4);
	expect(withdrawn).toMatchObject({type: 'record.withdrawn', webhookId: `${uuid}_4`});
	expect(withdrawn?.data['scientificName']).toBeUndefined();
	const left = await journey.db.selectFrom('review').select('find').where('find', '=', id).execute();
	expect(left).toEqual([]);
	journey.check();
});
