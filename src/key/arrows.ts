/** The arrows of a key as plain data. */
import type {Key, Question} from './region.ts';

/** One way out of a question: where it stands in key.yaml and what it leads to. */
export type Arrow = {readonly path: readonly (string | number)[]; readonly leads: string};

/** The ways out of a question, in the order written. */
export function arrowsOf(id: string, question: Question): readonly Arrow[] {
	if ('look' in question) {
		return Object.entries(question.options).map(([state, {leads}]) => ({
			path: ['questions', id, 'options', state],
			leads,
		}));
	}
	return question.bands.map((band, index) => ({path: ['questions', id, 'bands', index], leads: band.leads}));
}

/** Every id that can be come to from where the key begins, leaves included. */
export function reachedFrom(key: Key): ReadonlySet<string> {
	const reached = new Set<string>();
	const open = [key.begins];
	for (let id = open.pop(); id !== undefined; id = open.pop()) {
		if (reached.has(id)) continue;
		reached.add(id);
		const question = key.questions[id];
		if (question) open.push(...arrowsOf(id, question).map(arrow => arrow.leads));
	}
	return reached;
}

/** The first loop found, as the ids walked through and the first one again. */
export function loopIn(key: Key): readonly string[] | undefined {
	const cleared = new Set<string>();
	const walk = (id: string, trail: readonly string[]): readonly string[] | undefined => {
		const question = key.questions[id];
		if (!question || cleared.has(id)) return undefined;
		if (trail.includes(id)) return [...trail.slice(trail.indexOf(id)), id];
		for (const arrow of arrowsOf(id, question)) {
			const loop = walk(arrow.leads, [...trail, id]);
			if (loop) return loop;
		}
		cleared.add(id);
		return undefined;
	};
	for (const id of Object.keys(key.questions)) {
		const loop = walk(id, []);
		if (loop) return loop;
	}
	return undefined;
}
