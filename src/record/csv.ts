/** Comma-separated values as RFC 4180 has them: CR LF at the end of each row, quotes where they are needed. */
import type {Cell, Row, Table} from './tables.ts';

/** One row. */
export function csvLine(cells: readonly Cell[]): string {
	return `${cells.map(enclosed).join(',')}\r\n`;
}

/** The first row of a table: the names of its columns. */
export function headOf({isCore, columns}: Table): string {
	return csvLine([...(isCore ? [] : ['coreid']), ...columns.map(({name}) => name)]);
}

/** One row of a table; in an extension `coreId` names the row of the core that it belongs to. */
export function lineOf({isCore, columns}: Table, coreId: string, row: Row): string {
	return csvLine([...(isCore ? [] : [coreId]), ...columns.map(({name}) => row[name])]);
}

// A single line feed or carriage return needs quotes as well; some writers forget that beside CR LF.
function enclosed(cell: Cell): string {
	if (cell === undefined) return '';
	const text = typeof cell === 'number' ? String(cell) : cell;
	return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
