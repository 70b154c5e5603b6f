/** What verifiers decided, in words for verifiers and for finders. */
import type {Region} from '../key/region.ts';
import {nameGiven, reasons} from '../record/verification.ts';
import type {Decision, Said} from '../store/decisions.ts';
import type {Say, Values} from '../text/text.ts';
import {type Reader, timeText} from './words.ts';

/** How a verifier is called: by the name they chose, else by what they are. */
export function verifierName(publicName: string | undefined, say: Say): string {
	return publicName ?? say.say('review-somebody');
}

/** A scientific name as people call it, if they do. */
export function nameText(scientificName: string, {region, say}: {region: Region; say: Say}): string {
	const known = Object.entries(region.profiles.taxa).find(
		([, taxon]) => taxon.scientificName === scientificName,
	);
	const id = known && `taxon-${known[0]}`;
	return id !== undefined && say.has(id) ? say.say(id) : scientificName;
}

/** What was decided, in a few words for a list: who, when, what and why. */
export function decisionText(decision: Decision, region: Region, reader: Reader): string {
	const {say} = reader;
	return say.say('review-decision', {
		who: verifierName(decision.publicName, say),
		when: timeText(decision.at, reader),
		what: outcomeText(decision, region, say),
	});
}

/** What was decided and why, as a part of a sentence. */
export function outcomeText(said: Said, region: Region, say: Say): string {
	const what = say.say(`review-outcome-${said.outcome}`, nameValues(said, region, say));
	const why = reasonText(said, say);
	return why === '' ? what : say.say('review-outcome-why', {what, why});
}

/** What the finder hears of it. */
export function finderText(
	decision: Decision & {readonly isFirst: boolean},
	{number, name, region, say}: {number: string; name: string; region: Region; say: Say},
): string {
	const why = reasonText(decision, say);
	const message = `review-told-${decision.outcome}`;
	return [
		say.say(message, {
			number,
			who: verifierName(decision.publicName, say),
			first: decision.isFirst ? 'yes' : 'no',
			old: name,
			...nameValues(decision, region, say),
		}),
		...(why === '' ? [] : [say.say('review-told-why', {why})]),
		say.say(`review-thanks-${decision.outcome}`),
	].join('\n\n');
}

function nameValues({name = ''}: Said, region: Region, say: Say): Values {
	return {name: nameText(name, {region, say}), scientific: name, rank: nameGiven(name, region).taxonRank};
}

function reasonText({reason, words}: Said, say: Say): string {
	if (words !== undefined) return words;
	const known = reasons.find(one => one === reason);
	return known ? say.say(`review-because-${known}`) : '';
}
