import { parse } from 'csv-parse/sync';
import { expect, it } from 'vitest';
import { crossesCsv, run } from './memory-world.ts';

const csvOf = async (crosses: string) => {
  const { status, out } = await run(['check', 'a.csv', '--csv'], { files: { 'a.csv': crosses } });
  const rows: Record<string, string>[] = parse(out, { bom: true, columns: true });
  return { status, out, rows };
};

it('gives a row to each finding, errors first, with the place as the spreadsheet shows it', async () => {
  const { status, rows } = await csvOf(
    crossesCsv(
      ['2025-06-20,A,A,fresh,fruit,x', '2025-02-30,A,B,fresh,fruit,x'],
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,moon',
    ),
  );
  expect(status).toBe(1);
  expect(
    rows.map(({ severity, row, column, header, record, value, code }) => [
      ...[severity, row, column, header, record, value, code],
    ]),
  ).toEqual([
    ['error', '3', 'B', 'pollination_date', '2', '2025-02-30', 'date-does-not-exist'],
    ['warning', '2', 'D', 'pollen_parent', '1', 'A', 'own-pollen'],
    ['notice', '1', 'G', 'moon', '', '', 'column-unknown'],
  ]);
  for (const { message, fix, line } of rows)
    expect([message, fix, line].every((text) => text !== '')).toBe(true);
});

it('names each row that is left out, lost tags and flowers too young as well', async () => {
  const { status, rows } = await csvOf(
    crossesCsv([
      '2025-06-20,A,B,fresh,unknown',
      '2025-06-20,A,B,fresh,fruit',
      '2025-06-20,A,B,fresh,pending',
    ]),
  );
  expect(status).toBe(0);
  expect(
    rows.map(({ severity, row, column, record, value, code }) => [
      severity,
      row,
      column,
      record,
      value,
      code,
    ]),
  ).toEqual([
    ['notice', '2', 'F', '1', 'unknown', 'outcome-unknown'],
    ['notice', '4', 'F', '3', 'pending', 'outcome-pending'],
  ]);
});

it('gives no formula to a spreadsheet', async () => {
  const { out } = await csvOf(crossesCsv(['=1+1,A,B,fresh,fruit']));
  expect(out).toContain(",'=1+1,");
});

it('holds the findings also where no row can be used or a question is open', async () => {
  const unusable = await csvOf(crossesCsv(['2025-13-01,A,B,fresh,fruit']));
  expect([unusable.status, unusable.rows.length]).toEqual([2, 1]);
  const asked = await csvOf(crossesCsv(['03/04/2025,A,B,fresh,fruit']));
  expect([asked.status, asked.rows[0]!.code]).toEqual([2, 'date-order-unclear']);
});

it('cannot be had with JSON, nor of another command', async () => {
  const files = { files: { 'a.csv': crossesCsv([]) } };
  expect((await run(['check', 'a.csv', '--csv', '--json'], files)).err).toContain('can’t be had at once');
  expect((await run(['analyse', 'a.csv', '--csv'], files)).err).toContain('takes no --csv');
});
