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
	const {soak, length, width} = draft;
	const idOf = (what: string) => `urn:uuid:${draft.id}#${what}`;
	const parent = soak && idOf('soak-state');
	const sized = (what: 'length' | 'width', size: Size | undefined) =>
		size ? [{measurementID: idOf(what), parentMeasurementID: parent, ...sizeRow(what, size)}] : [];
	return [
		...(soak ? [{measurementID: idOf('soak-state'), ...stateRow(soak.state)}] : []),
		...(soak?.hours === undefined
			? []
			: [{measurementID: idOf('soak-duration'), parentMeasurementID: parent, ...hoursRow(soak.hours)}]),
		...sized('length', length),
		...sized('width', width),
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
		measurementMethod:
			what === 'length'
				? 'measured and typed by the finder, border of one apron to border of the other, horns and tendrils left out; accuracy in mm'
				: 'measured and typed by the finder, at the widest place, keels included; accuracy in mm',
		measurementRemarks: remarks(size),
	};
}

function remarks(size: Size): string {
	const typed = `typed as "${size.typed}"`;
	if (size.countsAs === 'exact') return typed;
	const reasons = size.because.map(reason => because[reason]);
	return `${typed}; counts as a lower bound${reasons.length > 0 ? `: ${reasons.join(', ')}` : ''}`;
}
