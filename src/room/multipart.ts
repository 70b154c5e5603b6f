/** One part of a form: a value, or a file when it has a file name. */
export type FormPart = {
	readonly name: string;
	readonly fileName: string | undefined;
	readonly mime: string;
	readonly bytes: Uint8Array;
};

const headEnd = Buffer.from('\r\n\r\n');

/**
 * Takes a multipart form apart; throws when it has no boundary or breaks off.
 * Node's own reader insists on a space after "form-data;", which grammY does not write.
 */
export function readMultipart(body: Uint8Array, contentType: string): readonly FormPart[] {
	const found = /boundary=(?:"([^"]+)"|([^\s;]+))/i.exec(contentType);
	const boundary = found?.[1] ?? found?.[2];
	if (boundary === undefined)
		throw new Error(`Expected a boundary in the content type; got "${contentType}"`);
	const marker = Buffer.from(`\r\n--${boundary}`);
	// With a line break in front, the first marker looks like all the others.
	const data = Buffer.concat([Buffer.from('\r\n'), body]);
	const parts: FormPart[] = [];
	let at = data.indexOf(marker);
	for (;;) {
		const start = at + marker.length;
		if (at < 0 || data.length < start + 2)
			throw new Error('Expected the form to end with its boundary; it breaks off');
		if (data.toString('latin1', start, start + 2) === '--') return parts;
		const next = data.indexOf(marker, start);
		if (next < 0) throw new Error('Expected the form to end with its boundary; it breaks off');
		parts.push(readPart(data.subarray(start + 2, next)));
		at = next;
	}
}

function readPart(part: Buffer): FormPart {
	const end = part.indexOf(headEnd);
	if (end < 0) throw new Error('Expected an empty line after the head of a form part; there is none');
	const head = part.toString('utf8', 0, end);
	const name = parameter(head, 'name');
	if (name === undefined) throw new Error(`Expected a form part to have a name; got "${head}"`);
	return {
		name,
		fileName: parameter(head, 'filename'),
		mime: /^content-type:\s*([^\r\n;]+)/im.exec(head)?.[1]?.trim() ?? '',
		bytes: new Uint8Array(part.subarray(end + headEnd.length)),
	};
}

function parameter(head: string, name: string): string | undefined {
	const found = new RegExp(
		`^content-disposition:[^\\r\\n]*;\\s*${name}=(?:"([^"]*)"|([^;\\r\\n]+))`,
		'im',
	).exec(head);
	return found?.[1] ?? found?.[2]?.trim();
}
