/** A survey day as a calendar file (RFC 5545), in UTC: a day is one fixed span, wherever it is read. */

/** What a calendar shows of a day; times are UTC milliseconds. */
export type CalendarEvent = {
	/** The same for all versions of one day. */
	readonly uid: string;
	/** Raised with every change, so that calendars take the newer one. */
	readonly sequence: number;
	readonly writtenAt: number;
	readonly startsAt: number;
	readonly endsAt: number;
	readonly summary: string;
	readonly location?: string | undefined;
	/** Degrees on WGS 84. */
	readonly position?: {readonly latitude: number; readonly longitude: number} | undefined;
	readonly description?: string | undefined;
	readonly isCancelled: boolean;
};

const maker = '-//pursekey//Survey day//EN';
/** Octets of a line, its end not counted (RFC 5545, 3.1). */
const mostOctets = 75;

/** Writes the file; a cancelled day takes itself out of the calendars that hold it. */
export function calendarFile(event: CalendarEvent, productId = maker): string {
	const {position, isCancelled} = event;
	const lines = [
		'BEGIN:VCALENDAR',
		'VERSION:2.0',
		`PRODID:${productId}`,
		`METHOD:${isCancelled ? 'CANCEL' : 'PUBLISH'}`,
		'BEGIN:VEVENT',
		`UID:${event.uid}`,
		`DTSTAMP:${instant(event.writtenAt)}`,
		`SEQUENCE:${event.sequence}`,
		`DTSTART:${instant(event.startsAt)}`,
		`DTEND:${instant(event.endsAt)}`,
		`SUMMARY:${escapedText(event.summary)}`,
		...(event.location === undefined ? [] : [`LOCATION:${escapedText(event.location)}`]),
		...(position ? [`GEO:${position.latitude.toFixed(6)};${position.longitude.toFixed(6)}`] : []),
		...(event.description === undefined ? [] : [`DESCRIPTION:${escapedText(event.description)}`]),
		`STATUS:${isCancelled ? 'CANCELLED' : 'CONFIRMED'}`,
		'END:VEVENT',
		'END:VCALENDAR',
	];
	return lines.map(line => `${folded(line)}\r\n`).join('');
}

/** UTC in the basic form, to the second (3.3.5). */
function instant(at: number): string {
	return `${new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
}

/** Backslash, semicolon and comma get a backslash, a line break becomes `\n` (3.3.11); no other control may stand. */
function escapedText(text: string): string {
	return text
		.replace(/\r\n?/g, '\n')
		.replace(/(?!\n)\p{Cc}/gu, ' ')
		.replace(/[\\;,]/g, '\\$&')
		.replaceAll('\n', '\\n');
}

/** Cut between characters, never inside one; each further line begins with a space that counts. */
function folded(line: string): string {
	const parts: string[] = [];
	let part = '';
	let octets = 0;
	for (const character of line) {
		const more = Buffer.byteLength(character);
		if (octets + more > mostOctets) {
			parts.push(part);
			part = '';
			octets = 1;
		}
		part += character;
		octets += more;
	}
	return [...parts, part].join('\r\n ');
}
