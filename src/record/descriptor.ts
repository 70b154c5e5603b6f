/** The descriptor of an archive, `meta.xml`, as the Darwin Core text guide lays it out. */
import {type Table, termOf} from './tables.ts';
import {xmlText} from './xml.ts';

/** A value that all rows of the core share, by the name of its term. */
export type Constants = Readonly<Record<string, string>>;

/** Describes the core and its extensions; `constants` become fields of the core without a column. */
export function descriptorOf(core: Table, extensions: readonly Table[], constants: Constants): string {
	return [
		'<?xml version="1.0" encoding="UTF-8"?>',
		'<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="eml.xml">',
		...block('core', core, [
			'<id index="0"/>',
			...core.columns.map(({term}, index) => `<field index="${index}" term="${term}"/>`),
			...Object.entries(constants).map(
				([name, value]) => `<field term="${termOf(name)}" default="${xmlText(value)}"/>`,
			),
		]),
		...extensions.flatMap(table =>
			block('extension', table, [
				'<coreid index="0"/>',
				...table.columns.map(({term}, index) => `<field index="${index + 1}" term="${term}"/>`),
			]),
		),
		'</archive>',
		'',
	].join('\n');
}

function block(element: 'core' | 'extension', table: Table, fields: readonly string[]): readonly string[] {
	// The line end is written as backslash letters, not as the characters themselves: Darwin Core text guide.
	const how =
		'encoding="UTF-8" fieldsTerminatedBy="," linesTerminatedBy="\\r\\n" fieldsEnclosedBy="&quot;" ignoreHeaderLines="1"';
	return [
		`\t<${element} ${how} rowType="${table.rowType}">`,
		`\t\t<files><location>${table.file}</location></files>`,
		...fields.map(field => `\t\t${field}`),
		`\t</${element}>`,
	];
}
