import { describe, expect, it } from 'vitest';
import { COLUMNS } from '../../lib/season/columns.ts';
import { likelyColumn } from '../../lib/season/likely-column.ts';

const likely = (header: string) => likelyColumn(header, COLUMNS.crosses)?.name ?? null;

describe('likelyColumn', () => {
  it.each([
    ['Polination date', 'pollination_date'],
    ['mother (in pot 3)', 'seed_parent'],
    ['outcom', 'outcome'],
    ['Bestaubungsdatm', 'pollination_date'],
  ])('takes %s for a slip or a longer name of %s', (header, column) => {
    expect(likely(header)).toBe(column);
  });

  it.each(['moon', 'width', 'mother (label)', 'mother or father', '', '♀?', 'x'.repeat(5000), 'constructor'])(
    'leaves %s alone',
    (header) => {
      expect(likely(header)).toBeNull();
    },
  );
});
