/** What we use of svg-to-pdfkit. */
declare module 'svg-to-pdfkit' {
	type How = {
		readonly width: number;
		readonly height: number;
		readonly preserveAspectRatio: string;
		readonly assumePt: boolean;
		readonly warningCallback: (warning: string) => void;
	};
	function drawSvg(document: PDFKit.PDFDocument, svg: string, x: number, y: number, how: How): void;
	export = drawSvg;
}
