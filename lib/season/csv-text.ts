/** Rows of cells → CSV that spreadsheets open as it is meant, and back: no cell of a stranger's becomes a formula. */

/**
 * Beginnings that spreadsheets take for a formula: = + - @ tab, carriage return, line feed and the full-width forms
 * (OWASP, "CSV Injection"). Apostrophes before them count too, so that one can be added and taken away.
 */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const MARKED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/**
 * A cell that no spreadsheet takes for a formula: an apostrophe goes before one that could be.
 *
 * @example withoutFormula('=1+1') // "'=1+1"
 */
export function withoutFormula(cell: string): string {
  return FORMULA.test(cell) ? `'${cell}` : cell;
}

/**
 * The cell as it was before `withoutFormula`; what that never made is left as it stands.
 *
 * @example asMeant("'=1+1") // '=1+1'
 */
export function asMeant(cell: string): string {
  return cell.charCodeAt(0) === 39 && MARKED.test(cell) ? cell.slice(1) : cell;
}

/** A cell as RFC 4180 writes it: in quotation marks where it holds one, a comma, a line end or outer space. */
function quoted(cell: string): string {
  return /[",;\r\n\t|]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/**
 * A CSV text: RFC 4180, each row ended by CR LF, a byte-order mark in front so that spreadsheets read it as UTF-8.
 *
 * Formulas are made harmless, so a text made of a stranger's cells can be opened; `asMeant` undoes that.
 *
 * @param rows cells as they are meant, the headers first
 * @example csvText([['plant'], ['=1+1']]) // '\uFEFFplant\r\n\'=1+1\r\n'
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((cells) => `${cells.map((cell) => quoted(withoutFormula(cell))).join(',')}\r\n`);
  return `\uFEFF${lines.join('')}`;
}
