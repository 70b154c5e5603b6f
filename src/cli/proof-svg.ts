/** A proof drawn: how sure against how often right, and how often each method names the truth first. */
import type {MethodName} from '../key/methods.ts';
import type {Figures, Proof} from './proof.ts';
import {levelWords, methodWords} from './proof-report.ts';
import {inHundred} from './proof-targets.ts';

const colours = {paper: '#fbfaf5', ink: '#1f2a33', faint: '#c9d1d6'};
const levelColours = {all: '#1f2a33', intact: '#2e7d4f', worn: '#b7791f', broken: '#b03a2e'} as const;
/** Dark to light from the best possible to the simplest, so that the bars can be told apart without colour. */
const bars: readonly (readonly [MethodName, string])[] = [
	['best', '#1f4e5f'],
	['ours', '#3a8ea8'],
	['strict', '#d9a441'],
	['nearest', '#e3c9a0'],
	['commonest', '#dfe3e6'],
];
const font = 'DejaVu Sans, Verdana, sans-serif';
const side = 340;
const square = {left: 70, top: 90};
const chart = {left: 500, top: 90, width: 470};

/** Draws both charts; `name` is what the region is called. */
export function proofSvg({levels, size}: Proof, name: string): string {
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 540" width="1000" height="540" role="img" font-family="${font}" font-size="13" fill="${colours.ink}">`,
		`<title>${escaped(`How far names can be trusted: ${name}`)}</title>`,
		`<rect width="1000" height="540" fill="${colours.paper}"/>`,
		text({x: 30, y: 36}, `How far names can be trusted: ${name}`, 'font-size="20"'),
		text({x: 30, y: 58}, `${size.finds} simulated finds`),
		...axes(),
		...levels.flatMap(line),
		...columns(levels),
		'</svg>',
		'',
	].join('\n');
}

function axes(): readonly string[] {
	const {left, top} = square;
	const ticks = [0, 0.2, 0.4, 0.6, 0.8, 1];
	return [
		text({x: left, y: top - 10}, 'How sure, and how often right'),
		...ticks.flatMap(tick => [
			`<path d="M${left} ${at(tick).y}h${side}M${at(tick).x} ${top}v${side}" stroke="${colours.faint}" fill="none"/>`,
			text({x: left - 10, y: at(tick).y + 4}, String(tick * 100), 'text-anchor="end"'),
			text({x: at(tick).x, y: top + side + 20}, String(tick * 100), 'text-anchor="middle"'),
		]),
		`<path d="M${left} ${top + side}L${left + side} ${top}" stroke="${colours.ink}" stroke-dasharray="4 4" fill="none"/>`,
		text(
			{x: left + side / 2, y: top + side + 42},
			'probability of the best name, in 100',
			'text-anchor="middle"',
		),
		`<text transform="translate(${left - 44} ${top + side / 2}) rotate(-90)" text-anchor="middle">right, in 100</text>`,
	];
}

/** A level's bins joined by a line; the more finds in a bin, the larger its dot. */
function line({level, bins, count}: Figures, index: number): readonly string[] {
	const colour = levelColours[level];
	const filled = bins.filter(bin => bin.count >= Math.max(1, count / 1000));
	const points = filled.map(bin => ({
		x: at(bin.meanProbability).x,
		y: at(bin.shareRight).y,
		radius: round(2 + 8 * Math.sqrt(bin.count / count)),
	}));
	const width = level === 'all' ? 3 : 1.5;
	const y = square.top + 18 + index * 20;
	return [
		`<path d="M${points.map(({x, y}) => `${x} ${y}`).join('L')}" stroke="${colour}" stroke-width="${width}" fill="none"/>`,
		...points.map(
			({x, y, radius}) => `<circle cx="${x}" cy="${y}" r="${radius}" fill="${colour}" fill-opacity="0.55"/>`,
		),
		`<path d="M${square.left + 12} ${y - 4}h22" stroke="${colour}" stroke-width="${width}"/>`,
		text({x: square.left + 42, y}, levelWords[level]),
	];
}

function columns(levels: readonly Figures[]): readonly string[] {
	const {left, top, width} = chart;
	const group = width / Math.max(1, levels.length);
	const bar = (group - 16) / bars.length;
	return [
		text({x: left, y: top - 10}, 'Named first, in 100 finds'),
		`<path d="M${left} ${top + side}h${width}" stroke="${colours.ink}"/>`,
		...levels.flatMap(({level, firsts}, index) => [
			...bars.flatMap(([method, colour], place) => {
				const high = round(side * firsts[method]);
				const x = round(left + index * group + 8 + place * bar);
				return [
					`<rect x="${x}" y="${round(top + side - high)}" width="${round(bar - 1)}" height="${high}" fill="${colour}"/>`,
					text(
						{x: round(x + bar / 2), y: round(top + side - high - 4)},
						Math.round(Number(inHundred(firsts[method]))).toString(),
						'text-anchor="middle" font-size="10"',
					),
				];
			}),
			text(
				{x: round(left + (index + 0.5) * group), y: top + side + 20},
				levelWords[level],
				'text-anchor="middle"',
			),
		]),
		...bars.flatMap(([method, colour], place) => {
			const x = left + (place % 3) * 170;
			const y = top + side + 46 + Math.floor(place / 3) * 24;
			return [
				`<rect x="${x}" y="${y - 11}" width="13" height="13" fill="${colour}"/>`,
				text({x: x + 20, y}, methodWords[method], 'font-size="12"'),
			];
		}),
	];
}

function at(share: number): {readonly x: number; readonly y: number} {
	return {x: round(square.left + share * side), y: round(square.top + side - share * side)};
}

function text({x, y}: {x: number; y: number}, words: string, more = ''): string {
	return `<text x="${x}" y="${y}"${more && ` ${more}`}>${escaped(words)}</text>`;
}

function escaped(words: string): string {
	return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

function round(value: number): number {
	return Math.round(value * 10) / 10;
}
