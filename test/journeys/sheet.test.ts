import {expect} from 'vitest';
import {journeyTest} from '../support/journey.ts';

journeyTest(
	'/sheet brings the page with marks as a PDF, and says how to print it',
	async ({ada}) => {
		await ada.sends('/sheet');
		expect(ada.sees.document?.fileName).toBe('measuring-sheet.pdf');
		expect(ada.sees.text).toContain('100 %');
	},
	['plain', 'delivered twice'],
);
