/** What a schema finds wrong in a value, said so that a key author can mend it. */
import type {z} from 'zod';

type Issue = z.core.$ZodIssue;
type Path = readonly (string | number)[];

/** Where a value is wrong, what about it, and what to do. */
export type Remark = {readonly path: Path; readonly what: string; readonly todo: string};

/** One remark on what a schema refuses; of alternatives, on the one that comes nearest. */
export function remarkOn(issue: Issue): Remark {
	const {at, within} = nearest(issue, []);
	const name = at.join('.');
	if (isDecimalComma(within)) {
		return {
			path: at,
			what: `"${name}" has a comma inside a number.`,
			todo: 'Write decimals with a point: 17.8.',
		};
	}
	if (within.code === 'unrecognized_keys') {
		return {
			path: [...at, ...within.keys.slice(0, 1)],
			what: `"${name}" has no place for ${within.keys.map(key => `"${key}"`).join(', ')}.`,
			todo: 'Look for a slip of the pen or of the indent.',
		};
	}
	if (within.code === 'invalid_type' && within.message.endsWith('received undefined')) {
		const what = `"${at.slice(0, -1).join('.') || 'The file'}" lacks "${at.at(-1)}".`;
		return {path: at, what, todo: 'Write it as the entries beside it have it.'};
	}
	return {path: at, what: `"${name}": ${within.message}.`, todo};
}

const todo = 'Compare it with the same entry of another region.';

/** Follows a refused choice into the alternative with the fewest faults. */
function nearest(issue: Issue, above: Path): {readonly at: Path; readonly within: Issue} {
	const at = [...above, ...issue.path.map(step => (typeof step === 'symbol' ? String(step) : step))];
	if (issue.code !== 'invalid_union') return {at, within: issue};
	const [best = []] = [...issue.errors].sort((one, other) => one.length - other.length);
	const first = best.find(({code}) => code === 'unrecognized_keys') ?? best[0];
	return first ? nearest(first, at) : {at, within: issue};
}

/** In YAML, `21,8` between brackets is two entries: one too many in a list, or a nameless one that is a number. */
function isDecimalComma(issue: Issue): boolean {
	if (issue.code === 'unrecognized_keys') return issue.keys.every(key => /^\d+$/.test(key));
	return issue.code === 'too_big' && issue.origin === 'array' && issue.maximum === 2;
}
