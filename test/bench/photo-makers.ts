/** The two makers of photos with known truth, behind one door: one lays drawn layers, one casts lines of sight. */
import {inventPhoto, type Wish} from '../support/photos/invent.ts';
import {shoot} from '../support/photos/shoot.ts';
import {castPhoto} from '../support/photos-cast/cast.ts';
import type {Wish as CastWish} from '../support/photos-cast/wish.ts';

/** What every maker can be asked for. */
export type SetWish = Omit<Wish, 'seed'>;

/** A photo, what was asked for, and what is true of it. */
export type Made = {
	readonly jpeg: Uint8Array;
	readonly wish: {readonly seed: number; readonly reference: string; readonly level: string};
	readonly cases: readonly {readonly lengthMm: number}[];
	readonly tilt: number;
};

/** A kind of photo that one maker alone knows. */
export type OwnTrap = {readonly name: string; readonly make: (seed: number) => Promise<Made>};

/** One way to make photos; names of its files begin with its stem. */
export type Maker = {
	readonly stem: string;
	readonly make: (wish: Wish) => Promise<Made>;
	readonly traps: readonly OwnTrap[];
};

/** The maker of this name; throws where there is none. */
export function makerNamed(name: string): Maker {
	const maker = makers.get(name);
	if (!maker) throw new Error(`Expected --by one of ${[...makers.keys()].join(', ')}; got "${name}"`);
	return maker;
}

const layers: Maker = {
	stem: '',
	make: async wish => {
		const {scene, cases, pick} = await inventPhoto(wish);
		return {jpeg: await shoot(scene, pick), wish, cases, tilt: scene.stand.tilt};
	},
	traps: [],
};

const cast: Maker = {
	stem: 'cast-',
	make: castOne,
	traps: [
		castTrap('shell', {reference: 'a4', level: 'clean', subject: 'shell'}),
		castTrap('leaf', {reference: 'a4', level: 'clean', subject: 'leaf'}),
		castTrap('weed', {reference: 'sheet', level: 'normal', subject: 'weed'}),
		castTrap('bare sheet', {reference: 'sheet', level: 'normal', subject: 'nothing'}),
		castTrap('cut case', {reference: 'card', level: 'clean', subject: 'cut'}),
		castTrap('large card', {reference: 'card', level: 'clean', cardScale: 1.06}),
		castTrap('towel', {reference: 'card', level: 'normal', ground: 'towel'}),
		castTrap('tiny', {reference: 'a4', level: 'normal', isTiny: true}),
		castTrap('tilted', {reference: 'a4', level: 'normal', isTilted: true}),
	],
};

const makers: ReadonlyMap<string, Maker> = new Map([
	['layers', layers],
	['cast', cast],
]);

async function castOne(wish: CastWish): Promise<Made> {
	const {jpeg, cases, tilt} = await castPhoto(wish);
	return {jpeg, wish, cases, tilt};
}

function castTrap(name: string, wish: Omit<CastWish, 'seed'>): OwnTrap {
	return {name, make: seed => castOne({...wish, seed})};
}
