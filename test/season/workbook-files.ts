import { type Zippable, zipSync } from 'fflate';

const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** What a workbook made by hand holds: the XML of its sheets' rows, and what they refer to. */
export interface MadeWorkbook {
  readonly sheets: readonly {
    readonly name: string;
    readonly rows: string;
    /** What stands behind the rows, such as joined cells. */
    readonly after?: string;
    readonly hidden?: boolean;
  }[];
  readonly shared?: string;
  readonly styles?: string;
  readonly workbookPr?: string;
}

/** The parts of a workbook in XML, as ECMA-376 lays them out. */
export function workbookParts({ sheets, shared, styles, workbookPr = '' }: MadeWorkbook): Zippable {
  const text = (xml: string): Uint8Array =>
    new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>${xml}`);
  const relations = (...list: string[]): Uint8Array =>
    text(`<Relationships>${list.join('')}</Relationships>`);
  const relation = (id: string, type: string, target: string): string =>
    `<Relationship Id="${id}" Type="${REL}/${type}" Target="${target}"/>`;
  const parts: Record<string, Uint8Array> = {
    '_rels/.rels': relations(relation('r1', 'officeDocument', '/xl/workbook.xml')),
    'xl/workbook.xml': text(
      `<workbook xmlns:r="${REL}">${workbookPr}<sheets>${sheets
        .map(
          ({ name, hidden }, i) =>
            `<sheet name="${name}" sheetId="${i + 1}"${hidden ? ' state="hidden"' : ''} r:id="s${i}"/>`,
        )
        .join('')}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': relations(
      ...sheets.map((_, i) => relation(`s${i}`, 'worksheet', `worksheets/sheet${i}.xml`)),
      relation('sst', 'sharedStrings', 'sharedStrings.xml'),
      relation('sty', 'styles', 'styles.xml'),
    ),
  };
  sheets.forEach(({ rows, after = '' }, i) => {
    parts[`xl/worksheets/sheet${i}.xml`] = text(
      `<worksheet><sheetData>${rows}</sheetData>${after}</worksheet>`,
    );
  });
  if (shared !== undefined) parts['xl/sharedStrings.xml'] = text(`<sst>${shared}</sst>`);
  if (styles !== undefined) parts['xl/styles.xml'] = text(`<styleSheet>${styles}</styleSheet>`);
  return parts;
}

/** A workbook made by hand. */
export function madeWorkbook(book: MadeWorkbook): Uint8Array {
  return zipSync(workbookParts(book));
}

/** A row of cells whose texts stand in the cells themselves. */
export function inlineRow(row: number, ...cells: string[]): string {
  const inner = cells
    .map((cell) => `<c t="inlineStr"><is><t xml:space="preserve">${cell}</t></is></c>`)
    .join('');
  return `<row r="${row}">${inner}</row>`;
}
