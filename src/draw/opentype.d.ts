/** What we use of opentype.js; its own declarations bring in the whole browser. */
declare module 'opentype.js' {
	type PathCommand = {
		readonly type: 'M' | 'L' | 'C' | 'Q' | 'Z';
		readonly x1?: number;
		readonly y1?: number;
		readonly x2?: number;
		readonly y2?: number;
		readonly x?: number;
		readonly y?: number;
	};
	type Glyph = {
		readonly advanceWidth: number;
		getPath(x: number, y: number, size: number): {readonly commands: readonly PathCommand[]};
	};
	type Font = {readonly unitsPerEm: number; charToGlyph(letter: string): Glyph};
	const opentype: {parse(buffer: ArrayBuffer, how: {lowMemory: boolean}): Font};
	export = opentype;
}
