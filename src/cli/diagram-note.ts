/** What a drawing of a key says about answers that leave ways open, instead of an arrow for each. */
export const cantTellNote = [
	'Can’t tell: every way out of the question stays open.',
	'A size that reaches over a border keeps the ways on both sides open.',
] as const;
