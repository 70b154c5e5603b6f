/** A text file that grows line by line, held back while the disk is slower, and hashed on the way. */
import {createHash} from 'node:crypto';
import {open} from 'node:fs/promises';

/** A file being written; nothing may be added once it is closed. */
export type Spool = {
	readonly add: (text: string) => Promise<void>;
	/** Writes what is left; gives the SHA-256 of the whole file in hex. */
	readonly close: () => Promise<string>;
};

const mostWaiting = 65_536;

/** Begins a file that only its owner can read, with its first line; an old one of that name is replaced. */
export function openSpool(file: string, head: string): Spool {
	const opened = open(file, 'w', 0o600);
	// Whoever adds or closes hears of it; until then it is nobody's failure.
	opened.catch(() => undefined);
	const hash = createHash('sha256');
	let waiting = head;
	const write = async () => {
		const bytes = Buffer.from(waiting);
		waiting = '';
		hash.update(bytes);
		await (await opened).writeFile(bytes);
	};
	return {
		add: async text => {
			waiting += text;
			if (waiting.length >= mostWaiting) await write();
		},
		close: async () => {
			await write();
			await (await opened).close();
			return hash.digest('hex');
		},
	};
}
