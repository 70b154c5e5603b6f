/** The tables of an archive: files, row types, and columns by their published names. */

/** What a cell may hold; absent is an empty cell. */
export type Cell = string | number | undefined;

/** One row by column name. */
export type Row = Readonly<Record<string, Cell>>;

/** One file of an archive: its columns in order, each with the IRI of its term. */
export type Table = {
	readonly file: string;
	readonly rowType: string;
	/** In an extension the first column joins its rows to the core and is no term of its own. */
	readonly isCore: boolean;
	readonly columns: readonly {readonly name: string; readonly term: string}[];
};

const darwinCore = 'http://rs.tdwg.org/dwc/terms/';
const dublinCore = 'http://purl.org/dc/terms/';

/** The names of the core's columns, in order. */
export const coreNames = [
	'occurrenceID',
	'basisOfRecord',
	'occurrenceStatus',
	'eventDate',
	'recordedBy',
	'organismQuantity',
	'organismQuantityType',
	'vitality',
	'habitat',
	'verbatimLocality',
	'decimalLatitude',
	'decimalLongitude',
	'geodeticDatum',
	'coordinateUncertaintyInMeters',
	'verbatimCoordinates',
	'verbatimCoordinateSystem',
	'verbatimSRS',
	'footprintWKT',
	'footprintSRS',
	'pointRadiusSpatialFit',
	'georeferenceRemarks',
	'georeferenceVerificationStatus',
	'kingdom',
	'nomenclaturalCode',
	'scientificName',
	'scientificNameAuthorship',
	'taxonRank',
	'verbatimIdentification',
	'identificationQualifier',
	'identifiedBy',
	'dateIdentified',
	'identificationVerificationStatus',
	'identificationRemarks',
	'occurrenceRemarks',
	'dynamicProperties',
	'dataGeneralizations',
	'informationWithheld',
	'modified',
	'rightsHolder',
] as const;

/** A row of the core. */
export type CoreRow = Readonly<Partial<Record<(typeof coreNames)[number], Cell>>>;

const dublinCoreNames = new Set(['modified', 'rightsHolder', 'license']);

/** The core: one row for each find. */
export const occurrences: Table = {
	file: 'occurrence.csv',
	rowType: `${darwinCore}Occurrence`,
	isCore: true,
	columns: coreNames.map(name => ({name, term: termOf(name)})),
};

/** Sizes and soak, one row for each value. */
export const measurements = extension('measurementorfact.csv', `${darwinCore}MeasurementOrFact`, [
	'measurementID',
	'parentMeasurementID',
	'measurementType',
	'measurementValue',
	'measurementUnit',
	'measurementAccuracy',
	'measurementMethod',
	'measurementRemarks',
]);

/** Every naming of a find, the one that counts last. */
export const identifications = extension('identification.csv', `${darwinCore}Identification`, [
	'identificationID',
	'verbatimIdentification',
	'scientificName',
	'scientificNameAuthorship',
	'taxonRank',
	'identificationQualifier',
	'identifiedBy',
	'dateIdentified',
	'identificationVerificationStatus',
	'identificationRemarks',
]);

/** One row for each photo; the simple set of terms, all of Dublin Core. */
export const pictures: Table = {
	file: 'multimedia.csv',
	rowType: 'http://rs.gbif.org/terms/1.0/Multimedia',
	isCore: false,
	columns: ['type', 'format', 'identifier', 'creator', 'license', 'rightsHolder'].map(name => ({
		name,
		term: `${dublinCore}${name}`,
	})),
};

/** The IRI of a term of the core. */
export function termOf(name: string): string {
	return `${dublinCoreNames.has(name) ? dublinCore : darwinCore}${name}`;
}

function extension(file: string, rowType: string, names: readonly string[]): Table {
	const columns = names.map(name => ({name, term: `${darwinCore}${name}`}));
	return {file, rowType, isCore: false, columns};
}
