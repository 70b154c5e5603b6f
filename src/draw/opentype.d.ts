/** What we use of opentype.js; its own declarations bring in the whole browser. */
declare module 'opentype.js' {
	type Glyph = {
		readonly advanceWidth: number;
		getPath(x: number, y: number, size: number): {toPathData(decimals: number): string};
	};
	type Font = {readonly unitsPerEm: number; charToGlyph(letter: string): Glyph};
	const opentype: {parse(buffer: ArrayBuffer, how: {lowMemory: boolean}): Font};
	export = opentype;
}
