import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { dataTable, fullColumns } from '../../lib/notebook/table.ts';

const table = {
  caption: 'Fruit set by pollen',
  columns: [{ title: 'Pollen' }, { title: 'Flowers', numeric: true }],
  rows: [
    ['fresh', '20'],
    ['"><script>', '7'],
  ],
  source: 'raw.byStorage',
};

function parsed(markup: string): Document {
  return parseHTML(`<body>${markup}</body>`).document;
}

describe('dataTable', () => {
  it('has a caption with the key of the analysis, and headers with their scope', () => {
    const document = parsed(dataTable(table).markup);
    expect(document.querySelector('caption')?.textContent).toBe('Fruit set by pollen raw.byStorage');
    expect(
      [...document.querySelectorAll('thead th')].map((th) => [th.textContent, th.getAttribute('scope')]),
    ).toEqual([
      ['Pollen', 'col'],
      ['Flowers', 'col'],
    ]);
    expect([...document.querySelectorAll('tbody th')].map((th) => th.getAttribute('scope'))).toEqual([
      'row',
      'row',
    ]);
  });

  it('keeps a short name with a hyphen on one line, and lets a long one break', () => {
    const rows = [
      ['F-02', '1'],
      ['Salt-Moon × Copper-Tide', '2'],
      ['fresh', '3'],
    ];
    const document = parsed(dataTable({ ...table, rows }).markup);
    expect([...document.querySelectorAll('tbody th')].map((th) => th.getAttribute('class'))).toEqual([
      'code',
      'word',
      'word',
    ]);
  });

  it('lets a word of more than 14 letters break anywhere, in each kind of cell', () => {
    const rows = [
      [`fresh ${'x'.repeat(15)}`, '1'],
      [`${'x'.repeat(14)}-${'y'.repeat(14)}`, 'x'.repeat(15)],
    ];
    const document = parsed(dataTable({ ...table, rows }).markup);
    expect([...document.querySelectorAll('tbody tr > *')].map((cell) => cell.className)).toEqual([
      'word long',
      'number',
      'word',
      'number long',
    ]);
  });

  it('escapes what stands in cells', () => {
    const document = parsed(dataTable(table).markup);
    expect(
      [...document.querySelectorAll('tbody tr')].map((tr) =>
        [...tr.children].map((cell) => cell.textContent),
      ),
    ).toEqual(table.rows);
    expect(document.querySelector('script')).toBeNull();
  });

  it('shows three columns as cards too where a cell is long, and stays plain on paper', () => {
    const long = (letters: number) => ({
      ...table,
      columns: ['a', 'b', 'c'].map((title) => ({ title })),
      rows: [['1', '2', 'x'.repeat(letters)]],
    });
    const layout = (letters: number) =>
      parsed(dataTable(long(letters)).markup).querySelector('table')?.className;
    expect([layout(120), layout(121)]).toEqual(['plain', 'plain cards told']);
  });

  it('carries the column title with each cell of a wide table, which narrow screens show as cards', () => {
    const wide = {
      ...table,
      columns: ['a', 'b', 'c', 'd'].map((title) => ({ title })),
      rows: [['1', '2', '3', '4']],
    };
    const document = parsed(dataTable(wide).markup);
    expect(document.querySelector('table')?.className).toBe('cards');
    expect([...document.querySelectorAll('td')].map((td) => td.getAttribute('data-title'))).toEqual([
      'b',
      'c',
      'd',
    ]);
    expect(parsed(dataTable(table).markup).querySelector('table')?.className).toBe('plain');
  });

  it('refuses rows that do not fit the columns', () => {
    expect(() => dataTable({ ...table, rows: [['fresh']] })).toThrow(
      'dataTable: a row must have 2 cells, as many as columns, got 1',
    );
  });
});

describe('fullColumns', () => {
  it('leaves out the columns in which no row has anything, whatever is in the others', () => {
    const columns = [{ title: 'a' }, { title: 'b', numeric: true }, { title: 'note' }];
    const rows = [
      ['x', '1', 'none'],
      ['y', 'none', 'none'],
    ];
    const full = fullColumns({ caption: 'C', columns, rows, source: 's' }, 'none');
    expect(full).toEqual({
      caption: 'C',
      columns: columns.slice(0, 2),
      rows: [
        ['x', '1'],
        ['y', 'none'],
      ],
      source: 's',
    });
  });
});
