/** The description of an archive's data, `eml.xml`, in the Ecological Metadata Language 2.2.0. */
import type {Dataset} from './dataset.ts';
import type {Extent} from './extent.ts';
import {xmlText} from './xml.ts';

/** What is told of one archive: the keeper's words, what it spans, and a name that changes with its rows. */
export type Described = {
	readonly dataset: Dataset;
	readonly extent: Extent;
	/** Names these very rows, such as an RFC 6920 name of their bytes. */
	readonly packageId: string;
	/** Places are shown as they are known. */
	readonly isExact: boolean;
};

/** Describes one archive; the order of elements is that of EML's resource and dataset groups. */
export function emlOf(described: Described): string {
	const {dataset, extent, packageId} = described;
	return [
		'<?xml version="1.0" encoding="UTF-8"?>',
		`<eml:eml xmlns:eml="https://eml.ecoinformatics.org/eml-2.2.0" packageId="${xmlText(packageId)}" system="https://www.rfc-editor.org/rfc/rfc6920" scope="system" xml:lang="en">`,
		'\t<dataset>',
		`\t\t<title xml:lang="en">${xmlText(dataset.title)}</title>`,
		...party('creator', dataset),
		...party('metadataProvider', dataset),
		// Not the day of writing, so that the same records give the same bytes.
		...(extent.lastChange === undefined
			? []
			: [`\t\t<pubDate>${new Date(extent.lastChange).toISOString().slice(0, 10)}</pubDate>`]),
		'\t\t<language>en</language>',
		...paragraphs('abstract', aboutOf(described)),
		...rights(dataset),
		...coverage(extent),
		...party('contact', dataset),
		'\t</dataset>',
		'</eml:eml>',
		'',
	].join('\n');
}

const notForPublication =
	'Not for publication: places are given as they are known, also those that a finder or a law wants hidden.';

function aboutOf({dataset, extent, isExact}: Described): readonly string[] {
	const words = dataset.about.split(/\n\s*\n/).map(text => text.replace(/\s+/g, ' ').trim());
	return [...(isExact ? [notForPublication] : []), ...words, `Number of records: ${extent.records}.`];
}

function party(element: string, {contact}: Dataset): readonly string[] {
	return [
		`\t\t<${element}>`,
		`\t\t\t<organizationName>${xmlText(contact.name)}</organizationName>`,
		`\t\t\t<electronicMailAddress>${xmlText(contact.email)}</electronicMailAddress>`,
		`\t\t</${element}>`,
	];
}

function paragraphs(element: string, texts: readonly string[]): readonly string[] {
	return [
		`\t\t<${element}>`,
		...texts.map(text => `\t\t\t<para>${xmlText(text)}</para>`),
		`\t\t</${element}>`,
	];
}

function rights({licence}: Dataset): readonly string[] {
	return [
		'\t\t<intellectualRights>',
		`\t\t\t<para>This work is licensed under <ulink url="${licence.link}"><citetitle>${licence.name}</citetitle></ulink>.</para>`,
		'\t\t</intellectualRights>',
	];
}

function coverage({box, firstDay, lastDay}: Extent): readonly string[] {
	const edge = (name: string, degrees: number) =>
		`\t\t\t\t\t<${name}BoundingCoordinate>${degrees}</${name}BoundingCoordinate>`;
	const day = (name: string, text: string) =>
		`\t\t\t\t\t<${name}Date><calendarDate>${text}</calendarDate></${name}Date>`;
	const where = box && [
		'\t\t\t<geographicCoverage>',
		'\t\t\t\t<geographicDescription>The box round all points of the records</geographicDescription>',
		'\t\t\t\t<boundingCoordinates>',
		edge('west', box.west),
		edge('east', box.east),
		edge('north', box.north),
		edge('south', box.south),
		'\t\t\t\t</boundingCoordinates>',
		'\t\t\t</geographicCoverage>',
	];
	const when = firstDay !== undefined &&
		lastDay !== undefined && [
			'\t\t\t<temporalCoverage>',
			'\t\t\t\t<rangeOfDates>',
			day('begin', firstDay),
			day('end', lastDay),
			'\t\t\t\t</rangeOfDates>',
			'\t\t\t</temporalCoverage>',
		];
	if (!where && !when) return [];
	return ['\t\t<coverage>', ...(where || []), ...(when || []), '\t\t</coverage>'];
}
