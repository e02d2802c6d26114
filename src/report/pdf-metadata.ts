import type { Report } from './blocks.ts';
import { plainValue, textValue, type Objects, type Ref } from './pdf-objects.ts';
import { syntax } from './pdf-syntax.ts';
import { drawable } from './pdf-text.ts';

/** A moment in UTC as ISO 8601 writes it: 2026-05-01T08:30:00Z, with or without parts of a second. */
const moment = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})/;

const program = 'Sagline';

/** Tells how the text around it is encoded (ISO 16684-1, 7.3.2). */
const byteOrder = String.fromCodePoint(0xfeff);

/** The document's own facts for programs that still read those. */
export function writeInfo(objects: Objects, report: Report, utc: string): Ref {
  const parts = moment.exec(utc)?.slice(1).join('');
  const date = parts === undefined ? {} : { CreationDate: plainValue(`D:${parts}Z`) };
  return objects.add({ Title: textValue(titleOf(report)), Creator: textValue(program), ...date });
}

/** The same facts as XMP (ISO 16684-1). */
export function writeMetadata(objects: Objects, report: Report, utc: string): Ref {
  const [written] = moment.exec(utc) ?? [];
  const date = written === undefined ? '' : `<xmp:CreateDate>${written}Z</xmp:CreateDate>`;
  const xml = syntax`<?xpacket begin="${byteOrder}" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xmlOf(titleOf(report))}</rdf:li></rdf:Alt></dc:title>
<dc:language><rdf:Bag><rdf:li>${xmlOf(report.lang)}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>${program}</xmp:CreatorTool>${date}
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="w"?>`;
  return objects.plainStream(new TextEncoder().encode(xml), { Type: 'Metadata', Subtype: 'XML' });
}

const titleOf = ({ title }: Report): string => drawable(title).replace(/\s+/g, ' ').trim();

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text inside XML 1.0, without the two characters that it forbids everywhere. */
const xmlOf = (text: string): string =>
  text.replace(/[\uFFFE\uFFFF]/g, '').replace(/[&<>"]/g, (sign) => entities[sign] ?? '');
