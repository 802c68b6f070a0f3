/** An .xlsx workbook (ECMA-376) → its sheets, as rows of text. */

import type { DateSystem } from './date-cell.ts';
import { decodeText } from './encoding.ts';
import { type NumberShown, numberStyles } from './number-formats.ts';
import { compoundFile, type OtherProgram, otherArchive } from './other-program.ts';
import { type SheetCells, sheetCells, unescaped } from './sheet-cells.ts';
import { walkXml } from './xml.ts';
import { unzipped, ZipFault } from './zip.ts';

/** One sheet of a workbook by its name, with the rows that hold anything. */
export interface WorkbookSheet extends SheetCells {
  readonly name: string;
  readonly hidden: boolean;
}

/** The sheets of a workbook, or why it could not be read. */
export type Workbook =
  | { readonly sheets: readonly WorkbookSheet[]; readonly dateSystem: DateSystem }
  | OtherProgram
  | { readonly fault: 'workbook-broken' | 'workbook-too-large' };

const PARTS = /^(?:_rels\/\.rels|.*\.xml|.*\.xml\.rels)$/;
/** Parts of a workbook that hold no cell. */
const ELSEWHERE = /(?:^|\/)(?:docProps|theme|media|drawings|charts|worksheets\/_rels|customXml|comments)/;

/** From the address of a part, as another part at `base` writes it, to its name in the archive. */
function resolved(target: string, base: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const path = base.split('/').slice(0, -1);
  for (const step of target.split('/')) {
    if (step === '..') path.pop();
    else if (step !== '.') path.push(step);
  }
  return path.join('/');
}

class Parts {
  readonly #bytes: ReadonlyMap<string, Uint8Array>;

  constructor(bytes: ReadonlyMap<string, Uint8Array>) {
    this.#bytes = bytes;
  }

  /** The text of a part; undefined where the archive has none of that name. */
  text(name: string): string | undefined {
    const bytes = this.#bytes.get(name);
    return bytes === undefined ? undefined : decodeText(bytes).text;
  }

  /** What a part refers to: the names of other parts by their ids and by the last word of their types. */
  relations(name: string): { byId: Map<string, string>; byType: Map<string, string> } {
    const folder = name.includes('/') ? `${name.slice(0, name.lastIndexOf('/'))}/` : '';
    const xml = this.text(`${folder}_rels/${name.slice(folder.length)}.rels`) ?? '<none/>';
    const byId = new Map<string, string>();
    const byType = new Map<string, string>();
    const open = (tag: string, attribute: (name: string) => string | undefined): void => {
      const target = attribute('Target');
      if (tag !== 'Relationship' || target === undefined) return;
      byId.set(attribute('Id') ?? '', resolved(target, name));
      byType.set((attribute('Type') ?? '').split('/').at(-1)!, resolved(target, name));
    };
    walkXml(xml, { open, close: () => {} });
    return { byId, byType };
  }
}

/** The texts that cells share; formatted runs are joined, readings above characters left out. */
export function sharedTexts(xml: string): string[] {
  const texts: string[] = [];
  let text = '';
  let reading = false;
  let phonetic = false;
  walkXml(xml, {
    open: (name) => {
      if (name === 'si') text = '';
      if (name === 'rPh') phonetic = true;
      if (name === 't') reading = !phonetic;
    },
    text: (part) => {
      if (reading) text += part;
    },
    close: (name) => {
      if (name === 't') reading = false;
      if (name === 'rPh') phonetic = false;
      if (name === 'si') texts.push(unescaped(text));
    },
  });
  return texts;
}

interface Contents {
  readonly sheets: readonly { readonly name: string; readonly id: string; readonly hidden: boolean }[];
  readonly date1904: boolean;
}

function contentsOf(xml: string): Contents {
  const sheets: { name: string; id: string; hidden: boolean }[] = [];
  let date1904 = false;
  walkXml(xml, {
    open: (name, attribute) => {
      if (name === 'sheet')
        sheets.push({
          name: attribute('name') ?? '',
          id: attribute('id') ?? '',
          hidden: /hidden/i.test(attribute('state') ?? ''),
        });
      if (name === 'workbookPr') date1904 = /^(?:1|true|on)$/i.test(attribute('date1904') ?? '');
    },
    close: () => {},
  });
  return { sheets, date1904 };
}

/** The workbook among an archive's parts; null where there is none. */
function bookOf(parts: Parts): Workbook | null {
  const book = parts.relations('').byType.get('officeDocument') ?? 'xl/workbook.xml';
  const xml = parts.text(book);
  if (xml === undefined || !/<(?:\w+:)?workbook[\s>]/.test(xml)) return null;
  const { sheets, date1904 } = contentsOf(xml);
  const { byId, byType } = parts.relations(book);
  const styles = parts.text(byType.get('styles') ?? '');
  const shared = parts.text(byType.get('sharedStrings') ?? '');
  const context = {
    styles: styles === undefined ? ([] as NumberShown[]) : numberStyles(styles),
    texts: shared === undefined ? [] : sharedTexts(shared),
    dateSystem: date1904 ? (1904 as const) : (1900 as const),
  };
  const read = sheets.map(({ name, id, hidden }) => {
    const sheet = parts.text(byId.get(id) ?? '');
    if (sheet === undefined) throw new ZipFault('broken');
    return { name, hidden, ...sheetCells(sheet, context) };
  });
  return { sheets: read, dateSystem: context.dateSystem };
}

/** Whether bytes begin as a zip archive does. */
function isArchive(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

/**
 * Reads a workbook that `isSpreadsheet` has recognised by its first bytes, whatever the file is called.
 *
 * @returns its sheets; what else the file is where another program's format would have to be known
 */
export function readWorkbook(bytes: Uint8Array): Workbook {
  if (!isArchive(bytes)) return compoundFile(bytes);
  const names: string[] = [];
  const wanted = (name: string): boolean => {
    names.push(name);
    return PARTS.test(name) && !ELSEWHERE.test(name);
  };
  try {
    return bookOf(new Parts(unzipped(bytes, wanted))) ?? otherArchive(bytes, names);
  } catch (error) {
    return {
      fault:
        error instanceof ZipFault && error.fault === 'too-large' ? 'workbook-too-large' : 'workbook-broken',
    };
  }
}
