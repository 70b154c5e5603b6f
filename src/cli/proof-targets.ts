/** What a region's proof ought to reach, and whether it does. */
import type {Figures, Level} from './proof.ts';

/** One aim, the figures that decide it, and whether they reach it. */
export type Target = {readonly aim: string; readonly came: string; readonly isMet: boolean};

/** The targets of a proof's levels, in the order in which they are told. */
export function targetsOf(levels: readonly Figures[]): readonly Target[] {
	const of = (level: Level) => levels.find(figures => figures.level === level);
	const intact = of('intact');
	const worn = of('worn');
	const ratio = (figures: Figures | undefined) =>
		figures && figures.firsts.best > 0 ? figures.firsts.ours / figures.firsts.best : 0;
	const lead = (worn?.firsts.ours ?? 0) - (worn?.firsts.strict ?? 0);
	const said = worst(levels, figures => -figures.said);
	const error = worst(levels, figures => figures.calibrationError.ours);
	const asked = worst(levels, figures => figures.asked.mean);
	const more = worst(levels, figures => figures.asked.mean - figures.strictAsked.mean);
	return [
		target('Intact: named first at least 97 in 100 as often as the best possible', ratio(intact), {
			least: 0.97,
			say: inHundred,
		}),
		target('Worn: named first at least 95 in 100 as often as the best possible', ratio(worn), {
			least: 0.95,
			say: inHundred,
		}),
		target('The truth in what is said at least 98 times in 100, at every level', -said, {
			least: 0.98,
			say: inHundred,
		}),
		target('Expected calibration error at most 0.03, at every level', error, {most: 0.03, say: inThousands}),
		target('Worn: named first at least 10 in 100 more often than by the strict key', lead, {
			least: 0.1,
			say: inHundred,
		}),
		target('Questions: 5 at most in the mean, at every level', asked, {most: 5, say: inHundredths}),
		target('Questions: at most one more than the strict key in the mean, at every level', more, {
			most: 1,
			say: inHundredths,
		}),
	];
}

/** A share as so many in a hundred, with one decimal. */
export function inHundred(share: number): string {
	return (share * 100).toFixed(1);
}

/** A number with two decimals. */
export function inHundredths(value: number): string {
	return value.toFixed(2);
}

/** A number with three decimals. */
export function inThousands(value: number): string {
	return value.toFixed(3);
}

function worst(levels: readonly Figures[], figure: (figures: Figures) => number): number {
	return Math.max(...levels.map(figure));
}

function target(
	aim: string,
	value: number,
	wanted: {least?: number; most?: number; say: (value: number) => string},
): Target {
	const isMet = value >= (wanted.least ?? value) && value <= (wanted.most ?? value);
	return {aim, came: wanted.say(value), isMet};
}
