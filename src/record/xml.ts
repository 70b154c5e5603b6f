/** Text put into XML. */

/** A text as it may stand between tags and inside quotes; characters that XML 1.0 does not allow are left out. */
export function xmlText(text: string): string {
	return Array.from(text)
		.filter(isAllowed)
		.join('')
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;');
}

// XML 1.0, production 2.
function isAllowed(letter: string): boolean {
	const code = letter.codePointAt(0) ?? 0;
	if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
	return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}
