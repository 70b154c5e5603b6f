/** Every sentence people read: Fluent messages by language, filled with values. */
import {existsSync, readdirSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {FluentBundle, FluentResource} from '@fluent/bundle';

/** What is filled into a sentence, by name. */
export type Values = Readonly<Record<string, string | number>>;

/** Sentences of one language; asking for one that is missing throws. */
export type Say = {
	readonly language: string;
	readonly say: (message: string, values?: Values) => string;
	readonly has: (message: string) => boolean;
};

/** The sentences of all languages. */
export type Texts = {
	readonly languages: readonly string[];
	/** The language asked for if there is one, else English. */
	readonly in: (language: string | undefined) => Say;
	/** The sentences of a language as they are written, for checks; none of one that there is not. */
	readonly written: (language: string) => Written;
};

/** Sentences with their placeholders unfilled, each worked out when it is asked for. */
export type Written = {
	readonly ids: readonly string[];
	readonly has: (message: string) => boolean;
	readonly get: (message: string) => string | undefined;
};

const fallback = 'en';

/** Reads `<language>.ftl` and `<language>.<topic>.ftl` of each folder; no two files may hold the same message. */
export function readTexts(folders: readonly string[]): Texts {
	const bundles = new Map<string, FluentBundle>();
	const ids = new Map<string, Set<string>>();
	for (const folder of folders.filter(existsSync)) {
		for (const file of readdirSync(folder).filter(name => name.endsWith('.ftl'))) {
			const [language = ''] = file.split('.');
			const bundle = bundles.get(language) ?? new FluentBundle(language, {useIsolating: false});
			const resource = new FluentResource(readFileSync(join(folder, file), 'utf8'));
			const errors = bundle.addResource(resource);
			if (errors.length > 0) throw new Error(`${join(folder, file)}: ${errors.map(String).join('; ')}`);
			bundles.set(language, bundle);
			ids.set(language, new Set([...(ids.get(language) ?? []), ...resource.body.map(entry => entry.id)]));
		}
	}
	if (!bundles.has(fallback))
		throw new Error(`Expected ${fallback}.ftl in one of ${folders.join(', ')}; found none`);
	const says = new Map(
		[...bundles].map(([language, bundle]) => [language, sayFrom(language, bundle)] as const),
	);
	const languageFor = (asked: string | undefined): string => {
		const known = [asked, asked?.split('-')[0]].find(name => name !== undefined && bundles.has(name));
		return known ?? fallback;
	};
	return {
		languages: [...bundles.keys()],
		in: language => {
			const found = says.get(languageFor(language));
			if (!found)
				throw new Error(`Expected sentences in "${language}"; there are ${[...says.keys()].join(', ')}`);
			return found;
		},
		written: language => unfilled(bundles.get(language), ids.get(language)),
	};
}

function sayFrom(language: string, bundle: FluentBundle): Say {
	return {
		language,
		has: message => bundle.hasMessage(message),
		say: (message, values = {}) => {
			const pattern = bundle.getMessage(message)?.value;
			if (!pattern) throw new Error(`Expected a sentence "${message}" in ${language}; there is none`);
			const errors: Error[] = [];
			const text = bundle.formatPattern(pattern, {...values}, errors);
			if (errors.length > 0)
				throw new Error(`Sentence "${message}" in ${language}: ${errors.map(String).join('; ')}`);
			return text;
		},
	};
}

function unfilled(bundle: FluentBundle | undefined, ids: ReadonlySet<string> = new Set()): Written {
	const patternOf = (id: string) => bundle?.getMessage(id)?.value ?? undefined;
	const has = (id: string) => patternOf(id) !== undefined;
	return {
		ids: [...ids].filter(has),
		has,
		get: id => {
			const pattern = patternOf(id);
			// Errors are the unfilled values, which is what is wanted here.
			return pattern && bundle?.formatPattern(pattern, {}, []);
		},
	};
}
