/** What a program of its own imports, told on its standard error; a package may be kept from it. */

/** Settings under which the program says each time it asks for a package, and gets none of it where it is to be missing. */
export function watchImports(name: string, how: 'as it is' | 'missing'): Readonly<Record<string, string>> {
	const hook = `
		import {writeSync} from 'node:fs';
		export async function resolve(specifier, context, next) {
			if (specifier !== ${JSON.stringify(name)}) return next(specifier, context);
			writeSync(2, 'asks for ' + specifier + '\\n');
			if (${how === 'missing'})
				throw Object.assign(new Error('Cannot find package'), {code: 'ERR_MODULE_NOT_FOUND'});
			return next(specifier, context);
		}`;
	const setUp = `import {register} from 'node:module'; register(${JSON.stringify(asAddress(hook))});`;
	return {NODE_OPTIONS: `--import ${asAddress(setUp)}`};
}

function asAddress(code: string): string {
	return `data:text/javascript;base64,${Buffer.from(code).toString('base64')}`;
}
