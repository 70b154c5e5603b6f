import type {Page} from 'playwright-core';
import {z} from 'zod';

const lookSchema = z.object({
	overflowPx: z.number(),
	small: z.array(z.string()),
	faint: z.array(z.string()),
});

// Runs in the browser, where the tests' own types do not reach, so it is kept as text.
const script = `(() => {
	const shown = one => one.checkVisibility() && one.getBoundingClientRect().width > 1;
	const parts = colour => colour.match(/[\\d.]+/g).map(Number);
	const light = ([r, g, b]) => [r, g, b]
		.map(v => v / 255)
		.map(v => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4))
		.reduce((sum, v, at) => sum + v * [0.2126, 0.7152, 0.0722][at], 0);
	const ground = one => {
		for (let at = one; at !== null; at = at.parentElement) {
			const colour = parts(getComputedStyle(at).backgroundColor);
			if (colour[3] !== 0) return colour;
		}
		return [255, 255, 255];
	};
	const contrast = one => {
		const both = [light(parts(getComputedStyle(one).color)), light(ground(one))].sort((a, b) => b - a);
		return (both[0] + 0.05) / (both[1] + 0.05);
	};
	const all = [...document.querySelectorAll('body *')].filter(shown);
	const hasWords = one => [...one.childNodes].some(node => node.nodeType === 3 && node.textContent.trim() !== '');
	const touched = all.filter(one => one.matches('button, input:not([type=radio]), textarea, summary, .choices a'));
	return {
		overflowPx: document.documentElement.scrollWidth - document.documentElement.clientWidth,
		small: touched.filter(one => one.getBoundingClientRect().height < 44).map(one => one.outerHTML.slice(0, 80)),
		faint: all.filter(one => hasWords(one) && contrast(one) < 4.5).map(one => one.outerHTML.slice(0, 80)),
	};
})()`;

/**
 * What is wrong with how a page looks: too wide, touch targets under 44 px (WCAG 2.2, 2.5.5), words with less contrast
 * than 4.5 to 1 (WCAG 2.2, 1.4.3; its formula for relative luminance).
 */
export async function faultsOfLook(page: Page): Promise<z.infer<typeof lookSchema>> {
	return lookSchema.parse(await page.evaluate(script));
}
