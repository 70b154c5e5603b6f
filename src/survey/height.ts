/** Heights of the tide, as people copy them from a table. */

/** Beyond these no tide of the world goes (from memory: the largest range is about 16 m). */
const possibleM = {from: -3, to: 17} as const;

/** Metres, to the centimetre, out of “0.8”, “0,8 m” or “-0.2m”; `undefined` for anything else. */
export function readHeight(text: string): number | undefined {
	const found = /^([+\-−]?\d{1,2}(?:[.,]\d{1,2})?)\s*m?(?:et(?:re|er)s?)?$/i.exec(text.trim());
	if (!found?.[1]) return undefined;
	const heightM = Number(found[1].replace(',', '.').replace('−', '-'));
	return heightM >= possibleM.from && heightM <= possibleM.to ? heightM : undefined;
}
