import { describe, expect, it } from 'vitest';
import { headerRow } from '../../lib/season/header-row.ts';

describe('headerRow', () => {
  it('is the record that names the most columns', () => {
    const records = [['Season 2025'], [''], ['seed_parent', 'flowers', 'x'], ['A', '3', '']];
    expect(headerRow(records, new Map())).toEqual({ index: 2, score: 2, width: 3 });
  });

  it('is the first that says anything where none names two', () => {
    expect(headerRow([[' '], ['a', 'b'], ['flowers']], new Map())).toEqual({ index: 1, score: 0, width: 2 });
    expect(headerRow([], new Map())).toEqual({ index: 0, score: 0, width: 0 });
  });
});
