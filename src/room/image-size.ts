/** Width and height in pixels. */
export type ImageSize = {readonly width: number; readonly height: number};

/** The size written in the head of a JPEG or PNG file, or undefined when the bytes are neither. */
export function imageSize(bytes: Uint8Array): ImageSize | undefined {
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	if (bytes.length >= 24 && view.getUint32(0) === 0x89504e47) {
		return {width: view.getUint32(16), height: view.getUint32(20)};
	}
	return bytes.length > 4 && view.getUint16(0) === 0xffd8 ? jpegSize(view) : undefined;
}

/** Walks from marker to marker until the one that starts a frame, which holds the size. */
function jpegSize(view: DataView): ImageSize | undefined {
	let at = 2;
	while (at + 9 <= view.byteLength) {
		if (view.getUint8(at) !== 0xff) return undefined;
		const marker = view.getUint8(at + 1);
		const startsFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
		if (startsFrame) return {height: view.getUint16(at + 5), width: view.getUint16(at + 7)};
		at += marker === 0xff ? 1 : 2 + view.getUint16(at + 2);
	}
	return undefined;
}
