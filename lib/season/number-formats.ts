/** The styles of a workbook → which cells show their number as a date. */

import { walkXml } from './xml.ts';

/** How a number is to be read: as a day, as a month without its day, or as the number that it is. */
export type NumberShown = 'day' | 'month' | 'number';

/** Built-in formats of dates by their numbers (ECMA-376 part 1, 18.8.30; 27 to 36 and 50 to 58 in East Asian programs). */
function builtIn(id: number): NumberShown {
  if (id === 17) return 'month';
  const day =
    (id >= 14 && id <= 16) || id === 22 || (id >= 27 && id <= 31) || (id >= 50 && id <= 58) || id === 36;
  return day ? 'day' : 'number';
}

/**
 * What a format's code shows: a day where it has one (d), a month where it has a month and a year but no day.
 *
 * @example shownBy('d. mmmm yyyy') // 'day'
 */
export function shownBy(code: string): NumberShown {
  // Text in quotation marks, escaped characters, colours and conditions are no part of the date.
  const [letters] = code.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '').split(';');
  if (/general|standard/i.test(letters)) return 'number';
  if (/d/i.test(letters)) return 'day';
  return /m/i.test(letters) && /y/i.test(letters) ? 'month' : 'number';
}

/** For each style of a cell, by its number, how it shows numbers; of the workbook's part `xl/styles.xml`. */
export function numberStyles(xml: string): NumberShown[] {
  const codes = new Map<number, string>();
  const ids: number[] = [];
  let inCellStyles = false;
  walkXml(xml, {
    open: (name, attribute) => {
      if (name === 'numFmt') codes.set(Number(attribute('numFmtId')), attribute('formatCode') ?? '');
      if (name === 'cellXfs') inCellStyles = true;
      if (name === 'xf' && inCellStyles) ids.push(Number(attribute('numFmtId') ?? 0));
    },
    close: (name) => {
      if (name === 'cellXfs') inCellStyles = false;
    },
  });
  return ids.map((id) => {
    const code = codes.get(id);
    return code === undefined ? builtIn(id) : shownBy(code);
  });
}
