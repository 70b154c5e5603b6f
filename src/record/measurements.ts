/** What was measured of a case, and how soaked it was then, in Darwin Core terms. */
import type {Draft} from './draft.ts';

/** One row of Darwin Core's MeasurementOrFact; the accuracy is in the unit of the row. */
export type Measurement = {
	readonly measurementID: string;
	readonly parentMeasurementID?: string | undefined;
	readonly measurementType: string;
	readonly measurementValue: string;
	readonly measurementUnit?: 'mm' | 'h' | undefined;
	readonly measurementAccuracy?: string | undefined;
	readonly measurementMethod: string;
	readonly measurementRemarks?: string | undefined;
};

type Size = NonNullable<Draft['length']>;

const because = {
	dry: 'it was not soaked soft, and a dry case is smaller',
	aprons: 'an apron is not known to be whole',
	sides: 'the sides are not whole',
} as const;

/** The rows of a draft; sizes point to the soak state they were measured in. */
export function measurementsOf(draft: Draft): readonly Measurement[] {
	const {soak, length, width, lengths = []} = draft;
	const idOf = (what: string) => `urn:uuid:${draft.id}#${what}`;
	const parent = soak && idOf('soak-state');
	const middle = (what: 'length' | 'width', size: Size) =>
		lengths.length > 0 && size.method === 'photo'
			? {measurementRemarks: `middle ${what} of ${lengths.length} cases on one photo; ${remarks(size)}`}
			: {};
	const sized = (what: 'length' | 'width', size: Size | undefined) =>
		size
			? [
					{
						measurementID: idOf(what),
						parentMeasurementID: parent,
						...sizeRow(what, size),
						...middle(what, size),
					},
				]
			: [];
	return [
		...(soak ? [{measurementID: idOf('soak-state'), ...stateRow(soak.state)}] : []),
		...(soak?.hours === undefined
			? []
			: [{measurementID: idOf('soak-duration'), parentMeasurementID: parent, ...hoursRow(soak.hours)}]),
		...sized('length', length),
		...sized('width', width),
		// After the middle of them, which is what a table of one row for each find takes.
		...lengths.map((size, index) => ({
			measurementID: idOf(`length-${index + 1}`),
			parentMeasurementID: parent,
			...sizeRow('length', size),
			measurementRemarks: `case ${index + 1} of ${lengths.length} on one photo; ${remarks(size)}`,
		})),
	];
}

function stateRow(state: 'dry' | 'damp' | 'soaked') {
	return {
		measurementType: 'soak state',
		measurementValue: state,
		measurementMethod: 'said by the finder when the case was measured',
	};
}

function hoursRow(hours: number) {
	return {
		measurementType: 'soak duration',
		measurementValue: hours.toFixed(1),
		measurementUnit: 'h' as const,
		measurementMethod: 'from the message that began the bowl to the one that ended it',
	};
}

function sizeRow(what: 'length' | 'width', size: Size) {
	return {
		measurementType: what === 'length' ? 'capsule length without horns' : 'capsule width with keels',
		measurementValue: size.mm.toFixed(1),
		measurementUnit: 'mm' as const,
		measurementAccuracy: size.plusMinusMm.toFixed(1),
		measurementMethod: `${by[size.method]}, ${across[what]}; accuracy in mm`,
		measurementRemarks: remarks(size),
	};
}

const by = {
	typed: 'measured and typed by the finder',
	photo: 'measured in a photo and confirmed by the finder',
} as const;

const across = {
	length: 'border of one apron to border of the other, horns and tendrils left out',
	width: 'at the widest place, keels included',
} as const;

const beside = {
	a4: 'an A4 sheet under the case',
	card: 'an ID-1 card (ISO/IEC 7810) beside the case',
	sheet: 'a measuring sheet with markers under the case',
} as const;

function remarks(size: Size): string {
	const typed = size.method === 'typed' ? `typed as "${size.typed}"` : `scale from ${beside[size.reference]}`;
	if (size.countsAs === 'exact') return typed;
	const reasons = size.because.map(reason => because[reason]);
	return `${typed}; counts as a lower bound${reasons.length > 0 ? `: ${reasons.join(', ')}` : ''}`;
}
