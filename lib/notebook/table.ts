/** A table of worded cells as markup that reads well on paper, on a wide screen and on a telephone. */

import type { FigureTable } from '../charts/figure.ts';
import type { Html } from './html.ts';
import { html } from './html.ts';

/** Tables of more columns than this become a list of cards on a narrow screen. */
const columnsThatFit = 3;

/** So do tables with a cell of more characters than this: in a column beside others each line would hold two words. */
const lettersThatFit = 120;

/**
 * A table with caption, column and row headers.
 *
 * From four columns on, a narrow screen shows each row as a card, with the column's title before each value; the
 * roles are then written out, since a browser may forget them with the table's layout. Nothing scrolls sideways.
 *
 * @param table worded cells; the first of a row is its header
 * @throws RangeError where a row has more or fewer cells than there are columns
 * @example
 * dataTable({ caption: 'Fruit set', columns: [{ title: 'Pollen' }, { title: 'Flowers', numeric: true }],
 *   rows: [['fresh', '20']], source: 'raw.byStorage' }).markup.length > 100 // true
 */
export function dataTable(table: FigureTable): Html {
  const { caption, columns, rows, source } = table;
  const wrong = rows.find((row) => row.length !== columns.length);
  if (wrong !== undefined) {
    throw new RangeError(
      `dataTable: a row must have ${columns.length} cells, as many as columns, got ${wrong.length}`,
    );
  }
  const heads = columns.map(
    ({ title, numeric }) => html`<th scope="col" role="columnheader" class="${kind(numeric)}">${title}</th>`,
  );
  const body = rows.map(
    (row) => html`<tr role="row">${row.map((cell, index) => tableCell(cell, index, columns))}</tr>
`,
  );
  return html`<table role="table" class="${layout(table)}">
<caption>${caption} <span class="key">${source}</span></caption>
<thead role="rowgroup"><tr role="row">${heads}</tr></thead>
<tbody role="rowgroup">
${body}</tbody>
</table>
`;
}

/**
 * A table without the columns in which no row has anything.
 *
 * @param nothing what stands in a cell that has nothing
 * @example
 * fullColumns({ caption: 'Seed', columns: [{ title: 'a' }, { title: 'note' }], rows: [['x', 'none']], source: 's' }, 'none').columns.length // 1
 */
export function fullColumns(table: FigureTable, nothing: string): FigureTable {
  const full = table.columns.map((_, at) => table.rows.some((row) => row[at] !== nothing));
  return {
    ...table,
    columns: table.columns.filter((_, at) => full[at]),
    rows: table.rows.map((row) => row.filter((_, at) => full[at])),
  };
}

function tableCell(cell: string, index: number, columns: FigureTable['columns']): Html {
  const { title, numeric } = columns[index]!;
  if (index === 0) {
    const look = isCode(cell) ? 'code' : kind(numeric) + breaking(cell);
    return html`<th scope="row" role="rowheader" class="${look}">${cell}</th>`;
  }
  return html`<td role="cell" class="${kind(numeric)}${breaking(cell)}" data-title="${title}">${cell}</td>`;
}

/** Long sentences in three columns: cards too, each sentence under its title; on paper such a table stays a plain one. */
function layout({ columns, rows }: FigureTable): string {
  if (columns.length > columnsThatFit) return 'cards';
  const long = rows.some((row) => row.some((cell) => cell.length > lettersThatFit));
  return columns.length === columnsThatFit && long ? 'plain cards told' : 'plain';
}

/** A name such as F-02 stays on one line; a long one may break. */
function isCode(cell: string): boolean {
  return /^\S{1,10}$/.test(cell) && cell.includes('-');
}

/** Words of more letters than this, which are names, may break anywhere: unbroken they would widen the page. */
const lettersOfAWord = 14;

function breaking(cell: string): string {
  return cell.split(/[\s-]+/).some((word) => word.length > lettersOfAWord) ? ' long' : '';
}

function kind(numeric: boolean | undefined): string {
  return numeric ? 'number' : 'word';
}
