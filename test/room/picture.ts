import {crc32, deflateSync} from 'node:zlib';

/** A grey PNG of that many pixels. */
export function png(width: number, height: number): Uint8Array {
	const head = Buffer.alloc(13);
	head.writeUInt32BE(width, 0);
	head.writeUInt32BE(height, 4);
	head[8] = 8;
	const rows = Buffer.alloc((width + 1) * height, 0x80).map((value, at) =>
		at % (width + 1) === 0 ? 0 : value,
	);
	const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
	return new Uint8Array(
		Buffer.concat([
			signature,
			chunk('IHDR', head),
			chunk('IDAT', deflateSync(rows)),
			chunk('IEND', Buffer.alloc(0)),
		]),
	);
}

function chunk(name: string, data: Uint8Array): Buffer {
	const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
	const length = Buffer.alloc(4);
	length.writeUInt32BE(data.length);
	const sum = Buffer.alloc(4);
	sum.writeUInt32BE(crc32(body));
	return Buffer.concat([length, body, sum]);
}
