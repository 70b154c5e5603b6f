/** The environment, read once: unknown or malformed values stop the start with one clear line each. */
import {existsSync} from 'node:fs';
import {dirname, isAbsolute, join} from 'node:path';
import {IANAZone} from 'luxon';
import {z} from 'zod';

const port = z.coerce.number().int().min(0).max(65535);
const zone = z.string().refine(name => IANAZone.isValidZone(name), 'expected a zone such as Europe/London');
const secret = z.string().regex(/^[A-Za-z0-9_-]{1,256}$/, 'expected 1 to 256 of A-Z a-z 0-9 _ -');

const settingsSchema = z
	.object({
		BOT_TOKEN: z
			.string()
			.regex(/^\d+:[\w-]+$/, 'expected a token such as 123456:ABC…')
			.optional(),
		BOT_API_ROOT: z.url('expected an address such as https://host').optional(),
		PUBLIC_URL: z.url('expected the https address that the platform calls').optional(),
		WEBHOOK_SECRET: secret.optional(),
		WEBHOOK_PORT: port.default(8080),
		DATABASE_URL: z
			.string()
			.regex(/^file:.+/, 'expected file:/path/to/pursekey.db (other databases are not served yet)')
			.optional(),
		DATA_DIR: z.string().min(1).default('./data'),
		DATASET_FILE: z.string().min(1).optional(),
		REGION: z
			.string()
			.regex(/^[a-z][a-z0-9-]*$/, 'expected the name of a folder under flows/')
			.default('british-isles'),
		TZ_NAME: zone.default('Europe/London'),
		ROOM_PORT: port.default(8100),
		FORWARD_URL: z.url('expected the address that receives the records').optional(),
		FORWARD_SECRET: z
			.string()
			.regex(/^whsec_[A-Za-z0-9+/]{32,88}={0,2}$/, 'expected whsec_ and 24 to 64 random bytes in base64')
			.optional(),
		FORWARD_FOLDER: z
			.string()
			.refine(isAbsolute, 'expected the whole path of a folder, such as /srv/records')
			.optional(),
		VERIFIERS_CHAT: z.coerce.number().int().optional(),
		TIDE_CHECK: z.enum(['off', 'on'], 'expected on or off').default('off'),
		LOG_LEVEL: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('info'),
	})
	.refine(found => (found.PUBLIC_URL === undefined) === (found.WEBHOOK_SECRET === undefined), {
		path: ['PUBLIC_URL'],
		message: 'expected PUBLIC_URL and WEBHOOK_SECRET together, or neither',
	})
	.refine(found => found.FORWARD_URL === undefined || found.FORWARD_SECRET !== undefined, {
		path: ['FORWARD_SECRET'],
		message: 'expected a secret, since FORWARD_URL is set',
	})
	.refine(found => found.FORWARD_URL === undefined || found.FORWARD_FOLDER === undefined, {
		path: ['FORWARD_FOLDER'],
		message: 'expected FORWARD_URL or FORWARD_FOLDER, not both',
	});

/** Who receives the records: an address that gets signed messages, or a folder that gets files. */
export type Receiver =
	| {readonly kind: 'address'; readonly url: string; readonly secret: string}
	| {readonly kind: 'folder'; readonly folder: string};

/** How the keeper wants the program to run. */
export type Settings = {
	readonly botToken: string | undefined;
	readonly botApiRoot: string | undefined;
	readonly webhook: {readonly url: string; readonly secret: string; readonly port: number} | undefined;
	readonly databaseFile: string;
	readonly dataDir: string;
	/** The keeper's description of the data, for exports. */
	readonly datasetFile: string;
	readonly region: string;
	readonly zone: string;
	readonly roomPort: number;
	readonly forward: Receiver | undefined;
	/** Platform id of the chat where drafts are shown to verifiers. */
	readonly verifiersChat: number | undefined;
	/** Whether coordinators see an estimate of low water beside the one they typed. */
	readonly isCheckingTides: boolean;
	readonly logLevel: 'silent' | 'error' | 'warn' | 'info' | 'debug';
};

/** Reads settings from an environment; throws one Error with a line for each value that does not fit. */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
	const set = Object.entries(environment).filter(([, value]) => value !== undefined && value !== '');
	const parsed = settingsSchema.safeParse(Object.fromEntries(set));
	if (!parsed.success) {
		const lines = parsed.error.issues.map(issue => {
			const name = String(issue.path[0] ?? '');
			return `${name}: ${issue.message}${name.includes('TOKEN') || name.includes('SECRET') ? '' : `; got "${environment[name] ?? ''}"`}`;
		});
		throw new Error(lines.join('\n'));
	}
	const found = parsed.data;
	return {
		botToken: found.BOT_TOKEN,
		botApiRoot: found.BOT_API_ROOT,
		webhook:
			found.PUBLIC_URL !== undefined && found.WEBHOOK_SECRET !== undefined
				? {url: found.PUBLIC_URL, secret: found.WEBHOOK_SECRET, port: found.WEBHOOK_PORT}
				: undefined,
		databaseFile: found.DATABASE_URL?.slice('file:'.length) ?? join(found.DATA_DIR, 'pursekey.db'),
		dataDir: found.DATA_DIR,
		datasetFile: found.DATASET_FILE ?? join(found.DATA_DIR, 'dataset.yaml'),
		region: found.REGION,
		zone: found.TZ_NAME,
		roomPort: found.ROOM_PORT,
		forward: receiverFrom(found),
		verifiersChat: found.VERIFIERS_CHAT,
		isCheckingTides: found.TIDE_CHECK === 'on',
		logLevel: found.LOG_LEVEL,
	};
}

function receiverFrom(found: z.output<typeof settingsSchema>): Receiver | undefined {
	const {FORWARD_URL: url, FORWARD_SECRET: secret, FORWARD_FOLDER: folder} = found;
	if (folder !== undefined) return {kind: 'folder', folder};
	return url !== undefined && secret !== undefined ? {kind: 'address', url, secret} : undefined;
}

/** The folder that holds package.json, from source and from the build alike. */
export function projectRoot(): string {
	let folder = import.meta.dirname;
	while (!existsSync(join(folder, 'package.json'))) {
		const above = dirname(folder);
		if (above === folder) throw new Error(`Expected package.json above ${import.meta.dirname}; found none`);
		folder = above;
	}
	return folder;
}
