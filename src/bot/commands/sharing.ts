/** /sharing: by what name somebody is called in published records, and how finely their places are told. */
import {coarseSquare} from '../../place/coarse-square.ts';
import {type Draft, draftSchema} from '../../record/draft.ts';
import {coarseSideFrom} from '../../record/for-export.ts';
import {hidingOf} from '../../record/protection.ts';
import {draftsOf} from '../../store/drafts.ts';
import {chooseSharing, type Sharing, sharingOf} from '../../store/sharing.ts';
import {menuButton} from '../button.ts';
import {type Ctx, type Desk, readerAt, sayHere, shelfOf} from '../desk.ts';

const longestName = 60;
/** Squares to choose from, by their side in metres. */
const squares = {none: undefined, small: 1000, large: 10_000} as const;

const names = ['none', 'small', 'large'] as const;

/** Shows how records look in public, or takes the name written after the command. */
export async function showSharing(ctx: Ctx): Promise<void> {
	const {desk} = ctx;
	const {say} = readerAt(desk);
	const written = tidy(typeof ctx.match === 'string' ? ctx.match : '');
	if (written === '') return tellSharing(desk);
	if ([...written].length > longestName)
		return sayHere(desk, say.say('sharing-name-long', {most: longestName}));
	// What others could reach them by does not belong into published records.
	if (/@|\/\/|(?:\d[\s-]?){6}/.test(written)) return sayHere(desk, say.say('sharing-name-contact'));
	const sharing = await sharingOf(desk.tx, desk.person.id);
	return choose(desk, {...sharing, publicName: written});
}

/** Takes a button: how finely places are told, or to be nobody. */
export async function setSharing(desk: Desk, [what, value]: readonly string[]): Promise<void> {
	const sharing = await sharingOf(desk.tx, desk.person.id);
	if (what === 'nobody') return choose(desk, {...sharing, publicName: undefined});
	const name = names.find(known => known === value);
	if (what !== 'places' || name === undefined) return tellSharing(desk);
	return choose(desk, {...sharing, coarseM: squares[name]});
}

async function choose(desk: Desk, sharing: Sharing): Promise<void> {
	await chooseSharing(desk.tx, desk.person.id, sharing);
	return tellSharing(desk);
}

async function tellSharing(desk: Desk): Promise<void> {
	const {say} = readerAt(desk);
	const sharing = await sharingOf(desk.tx, desk.person.id);
	const {publicName, coarseM} = sharing;
	const present = names.find(name => squares[name] === coarseM) ?? 'large';
	const example = await exampleFor(desk, sharing);
	const values = {
		name: publicName ?? '',
		named: publicName === undefined ? 'no' : 'yes',
		side: present,
	};
	const text = [say.say('sharing', values), ...(example === '' ? [] : [example]), say.say('sharing-how')];
	const button = (message: string, parts: readonly string[]) => [
		{text: say.say(message), data: menuButton('sharing', ...parts)},
	];
	return sayHere(desk, text.join('\n\n'), [
		...names.filter(name => name !== present).map(name => button(`sharing-places-${name}`, ['places', name])),
		...(publicName === undefined ? [] : [button('sharing-nobody', ['nobody'])]),
	]);
}

/** How the newest record would be told; nothing before there is one. */
async function exampleFor(desk: Desk, sharing: Sharing): Promise<string> {
	const {say} = readerAt(desk);
	const [newest] = await draftsOf(desk.tx, {person: desk.person.id, limit: 1}, draftSchema);
	if (!newest) return '';
	const place = placeTold(desk, newest.body, sharing);
	return say.say('sharing-example', {
		number: String(newest.find),
		place: place ?? '',
		isTold: place === undefined ? 'no' : 'yes',
		name: sharing.publicName ?? '',
		named: sharing.publicName === undefined ? 'no' : 'yes',
	});
}

/** The place as an export tells it; nothing where that leaves it out. */
function placeTold(desk: Desk, draft: Draft, sharing: Sharing): string | undefined {
	const {region} = shelfOf(desk.house, draft.region.id).flow;
	const coarseM = coarseSideFrom(sharing.coarseM);
	const hiding = hidingOf({draft, savedAt: 0, changedAt: 0, coarseM}, region);
	const {place} = draft;
	if (place.kind === 'named') return hiding ? undefined : place.name;
	const square = hiding && coarseSquare(place, hiding.sideM);
	if (square) return square.name;
	return place.verbatim ?? `${place.latitude.toFixed(4)}, ${place.longitude.toFixed(4)}`;
}

function tidy(text: string): string {
	return text
		.normalize('NFC')
		.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
		.trim();
}
