/** A finished find becomes a draft record: kept, passed on, shown to verifiers. */
import type {Standing} from '../find/stand.ts';
import {trailSchema} from '../find/trail.ts';
import {checkedRecord} from '../record/checked-record.ts';
import {occurrenceFrom} from '../record/darwin-core.ts';
import {type Draft, draftFrom, draftSchema} from '../record/draft.ts';
import {verificationFrom} from '../record/verification.ts';
import {messageFor, type RecordNews} from '../record/webhook.ts';
import {chatFor} from '../store/chats.ts';
import {decisionsOf, emptyDecisions} from '../store/decisions.ts';
import {draftOfFind, keepDraft, withdrawDraft} from '../store/drafts.ts';
import type {FindRow} from '../store/finds.ts';
import {forgetForwards, queueForward} from '../store/forwards.ts';
import {forgetLettersOf} from '../store/letters.ts';
import {post} from '../store/outbox.ts';
import {dropPhotos, photosOf} from '../store/photos.ts';
import {leaveReview, waitForReview} from '../store/review.ts';
import {type Desk, readerAt, shelfOf} from './desk.ts';
import {draftCard} from './draft-card.ts';
import {reviewButton} from './review-button.ts';
import {escaped} from './words.ts';

/** Keeps or changes the draft of a find, and tells those who are to know. */
export async function keepRecord(desk: Desk, row: FindRow, standing: Standing): Promise<void> {
	const {tx, now, house} = desk;
	const {flow} = shelfOf(house, row.region);
	const photos = await photosOf(tx, row.id);
	const draft = draftFrom({
		uuid: row.uuid,
		region: flow.region,
		facts: standing.facts,
		found: standing.found,
		trail: trailSchema.parse(JSON.parse(row.trail)),
		zone: desk.person.zone ?? house.zone,
		language: readerAt(desk).say.language,
		photoHashes: new Map(photos.flatMap(({id, hash}) => (hash === null ? [] : [[id, hash] as const]))),
	});
	const {version} = await keepDraft(tx, {find: row.id, person: row.person, draft, now});
	await waitForReview(tx, {find: row.id, isUnusual: draft.unusual.length > 0, now});
	await passOn(desk, row.id, version === 1 ? 'record.submitted' : 'record.changed');
	if (version === 1) await showVerifiers(desk, row, draft);
}

/** Takes a draft back: record, photos and text go, and the receiver is told. */
export async function withdrawRecord(desk: Desk, row: FindRow): Promise<boolean> {
	const {tx, now, house} = desk;
	const {flow} = shelfOf(house, row.region);
	const kept = await draftOfFind(tx, row.id, draftSchema);
	if (kept?.kind !== 'draft') return false;
	const withdrawn = await withdrawDraft(tx, {find: row.id, now});
	if (!withdrawn) return false;
	await dropPhotos(tx, row.id);
	await leaveReview(tx, row.id);
	await forgetLettersOf(tx, row.id);
	await emptyDecisions(tx, row.id);
	// What has not left yet need not leave any more, also where nobody is told any longer.
	await forgetForwards(tx, row.uuid);
	if (house.isForwarding) {
		const data = occurrenceFrom(kept.body, flow.region, {
			recordedAt: kept.savedAt,
			modifiedAt: now,
			withdrawn: true,
		});
		await queueForward(tx, {
			record: row.uuid,
			version: withdrawn.version,
			webhookId: `${row.uuid}_${withdrawn.version}`,
			body: messageFor({type: 'record.withdrawn', at: now, data}),
			now,
		});
	}
	return true;
}

/** Passes on a record as it is kept now, with what a verifier said of it. */
export async function passOn(desk: Desk, find: number, type: RecordNews['type']): Promise<void> {
	const {house, tx, now} = desk;
	const kept = await draftOfFind(tx, find, draftSchema);
	if (!house.isForwarding || kept?.kind !== 'draft') return;
	const {region} = shelfOf(house, kept.body.region.id).flow;
	const decision = (await decisionsOf(tx, find)).at(-1);
	const telling = {recordedAt: kept.savedAt, modifiedAt: now};
	const data = decision
		? checkedRecord(kept.body, region, {...telling, verification: verificationFrom(decision, region)})
		: occurrenceFrom(kept.body, region, telling);
	await queueForward(tx, {
		record: kept.uuid,
		version: kept.version,
		// One id for one version of one record, however often it is sent.
		webhookId: `${kept.uuid}_${kept.version}`,
		body: messageFor({type, at: now, data}),
		now,
	});
}

async function showVerifiers(desk: Desk, row: FindRow, draft: Draft): Promise<void> {
	const {house, tx, now} = desk;
	if (house.verifiersChat === undefined) return;
	const kind = house.verifiersChat < 0 ? ('group' as const) : ('private' as const);
	const chat = await chatFor(tx, {platformId: house.verifiersChat, kind, now});
	const say = shelfOf(house, row.region).texts.in(undefined);
	const text = say.say('verifiers-draft', draftCard(draft, {say, number: row.id}));
	await post(tx, {
		chat: chat.id,
		role: 'say',
		// So that it goes with the draft when that is deleted before it was shown.
		find: row.id,
		call: {
			kind: 'send',
			html: escaped(text),
			keyboard: [[{text: say.say('review-look'), data: reviewButton({act: 'open', find: row.id})}]],
			...(draft.photos.length > 0 ? {photoOf: row.id} : {}),
		},
		now,
	});
}
