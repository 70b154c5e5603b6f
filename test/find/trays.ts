/** Made-up trays, and ways to them. */
import type {MeasuredPhoto, Tray} from '../../src/find/proposal.ts';
import {upToTheResult} from './turns.ts';

type Made = {readonly mm: number; readonly shape?: 'long' | 'broad'; readonly widthMm?: number};

/** A tray of cases this long, numbered from 1. */
export function trayOf(made: readonly Made[], on: Partial<Omit<Tray, 'cases'>> = {}): Tray {
	return {
		...{photo: 7, hash: 'a'.repeat(64), reference: 'a4'},
		...on,
		cases: made.map(({mm, shape, widthMm}, index) => ({
			number: index + 1,
			length: sizeAt(index, mm),
			...(widthMm === undefined ? {} : {width: sizeAt(index, widthMm)}),
			...(shape ? {shape} : {}),
		})),
	};
}

/** What comes of a photo of such a tray. */
export function photoOf(made: readonly Made[], on: Partial<Omit<Tray, 'cases'>> = {}): MeasuredPhoto {
	return {kind: 'tray', tray: trayOf(made, on)};
}

/** The answers up to the question for the length. */
export const toTheLength = upToTheResult.slice(0, upToTheResult.indexOf('66 mm'));

function sizeAt(index: number, mm: number): Tray['cases'][number]['length'] {
	const [x, y] = [100 + 200 * index, 100];
	return {
		mm,
		uncertaintyMm: 0.7,
		line: [
			[x, y],
			[x, y + 150],
		],
	};
}
