/** A zone in which it is about noon now, whenever the tests run: nobody sleeps there. */
export function noonZone(): string {
	const east = 12 - new Date().getUTCHours();
	// POSIX counts these zones westwards.
	return `Etc/GMT${east > 0 ? '-' : '+'}${Math.abs(east)}`;
}
