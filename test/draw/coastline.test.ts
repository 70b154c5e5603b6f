import {expect, test} from 'vitest';
import {type Box, type Coast, cutCoast, readEarth} from '../../src/draw/coastline.ts';

const earth = readEarth();
const isles = cutCoast(earth, {south: 49, west: -11, north: 61, east: 3});

/** Whether a place is on land: inside an odd number of rings. */
function isLand({rings}: Coast, longitude: number, latitude: number): boolean {
	let isOdd = false;
	for (const ring of rings) {
		for (const [index, [east, north]] of ring.entries()) {
			const [lastEast, lastNorth] = ring.at(index - 1) ?? [east, north];
			if (north > latitude === lastNorth > latitude) continue;
			if (longitude < east + ((latitude - north) / (lastNorth - north)) * (lastEast - east)) isOdd = !isOdd;
		}
	}
	return isOdd;
}

// Positions of towns and stretches of sea, from memory, well away from any shore.
test.each([
	['Birmingham', -1.9, 52.5, true],
	['Athlone', -7.9, 53.4, true],
	['Douglas on its island', -4.5, 54.2, true],
	['the Irish Sea', -5.3, 53.6, false],
	['the western Channel', -4, 49.6, false],
	['the North Sea', 1.5, 56, false],
])('%s is where it ought to be', (_, longitude, latitude, land) => {
	expect(isLand(isles, longitude, latitude)).toBe(land);
});

test('a coast cut twice is the coast cut once', () => {
	const box: Box = {south: 50, west: -6, north: 51, east: -4};
	const twice = cutCoast(isles, box);
	const once = cutCoast(earth, box);
	for (let longitude = -5.95; longitude < -4; longitude += 0.1) {
		for (let latitude = 50.05; latitude < 51; latitude += 0.1) {
			expect(isLand(twice, longitude, latitude)).toBe(isLand(once, longitude, latitude));
		}
	}
});

test('nothing of a cut coast lies outside its box', () => {
	const {south, west, north, east} = isles.box;
	const points = isles.rings.flat();
	expect(points.length).toBeGreaterThan(5000);
	const strays = points.filter(
		([longitude, latitude]) =>
			longitude < west - 1e-9 ||
			longitude > east + 1e-9 ||
			latitude < south - 1e-9 ||
			latitude > north + 1e-9,
	);
	expect(strays).toEqual([]);
});

test('a box across the date line has land on both sides of it', () => {
	const coast = cutCoast(earth, {south: 60, west: 170, north: 72, east: 200});
	expect(isLand(coast, 175, 67)).toBe(true);
	expect(isLand(coast, 360 - 162, 63)).toBe(true);
	expect(isLand(coast, 180, 61.5)).toBe(false);
	expect(isLand(cutCoast(earth, {south: -80, west: -60, north: -60, east: 200}), 100, -75)).toBe(true);
});

test('a box without any shore is all sea or all land', () => {
	expect(cutCoast(earth, {south: 45, west: -31, north: 46, east: -30}).rings).toEqual([]);
	expect(isLand(cutCoast(earth, {south: 49, west: 9, north: 50, east: 10}), 9.5, 49.5)).toBe(true);
});
