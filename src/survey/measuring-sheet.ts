/** The sheet with marks that surveys and schools print, to lay cases on for a photo. */
import {markSideMm, marks} from '../capsule/marks.ts';
import {measuringSheet} from '../draw/measuring-sheet.ts';
import {a4} from '../draw/page.ts';
import {writePdf} from '../draw/pdf.ts';
import type {Say} from '../text/text.ts';

/** The sheet as a PDF of one page, to print at 100 %; `now` in UTC milliseconds. */
export async function measuringSheetPdf(say: Say, now: number): Promise<Uint8Array> {
	// Marks are measured from the middle of the sheet, pages from their upper left corner.
	const placed = marks.map(({fromMm: [x, y], cells}) => ({
		xMm: x + a4.widthMm / 2,
		yMm: y + a4.heightMm / 2,
		sideMm: markSideMm,
		cells,
	}));
	const {language} = say;
	return writePdf({
		title: say.say('measuring-sheet-title'),
		language,
		pages: [measuringSheet(placed, say)],
		now,
	});
}
