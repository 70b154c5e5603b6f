/** The few functions that are used here of a library that has no types of its own. */
declare module 'jstat' {
	const curves: {
		/** The normal distribution, by mean and standard deviation. */
		readonly normal: {
			pdf(x: number, mean: number, sd: number): number;
			cdf(x: number, mean: number, sd: number): number;
		};
		/** All values between two ends alike. */
		readonly uniform: {pdf(x: number, from: number, to: number): number};
	};
	export = curves;
}
