import { describe, expect, it } from 'vitest';
import { problemAt } from '../../lib/season/problems.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { CELL_PROBLEMS } from '../../lib/words/english-cell-problems.ts';
import { problemWords } from '../../lib/words/english-problems.ts';

const PLACE = { file: 'x.csv', line: 9, row: 9 };

/** The sentences of a file with one flower, of which this is said besides. */
function said(cells: Readonly<Record<string, string>>): string[] {
  const row = {
    ...{ cross_id: 'T1', pollination_date: '2025-06-01', seed_parent: 'A', pollen_parent: 'B' },
    ...{ storage: 'fresh', outcome: 'fruit' },
    ...cells,
  };
  const quoted = (texts: readonly string[]) => texts.map((text) => `"${text}"`).join(',');
  const text = [quoted(Object.keys(row)), quoted(Object.values(row))].join('\n');
  const [file] = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]).files;
  return file.problems.map((problem) => problemWords(problem).message);
}

describe('CELL_PROBLEMS', () => {
  it('list the words that a column may hold, and the one that is likely meant', () => {
    const problem = problemAt(PLACE, 'error', 'word-not-understood', {
      column: 'Result',
      value: 'fruti',
      details: { name: 'outcome', suggestion: 'fruit' },
    });
    expect(CELL_PROBLEMS['word-not-understood'](problem)).toEqual([
      'the outcome "fruti" is not a word that is known here; is fruit meant?',
      'Write fruit, dropped, none, unknown or pending.',
    ]);
  });

  it('say numbers with their units', () => {
    expect(said({ fruit_weight_g: '0,09 kg' })).toEqual([
      'Row 2: the fruit weight "0,09 kg" is read as 90 g, here and wherever it stands.',
    ]);
    expect(said({ fruit_weight_g: '30 kg' })).toEqual([
      'Row 2: the fruit weight "30 kg" is more than can be (at most 20000 g).',
    ]);
    expect(said({ storage: 'frozen', pollen_age_days: '3 weeks' })).toEqual([
      'Row 2: the pollen age "3 weeks" is read as 21 days, here and wherever it stands.',
    ]);
    expect(said({ seeds: '1 200' })).toEqual([
      'Row 2: the number of seeds "1 200" is read as 1200, here and wherever it stands.',
    ]);
  });

  it('offer to join plants, and no other names', () => {
    const details = { spelling: 'Mariane', uses: 1, usual: 'Marianne', usualUses: 9 };
    const slip = (name: string) =>
      CELL_PROBLEMS['name-slip'](
        problemAt(PLACE, 'notice', 'name-slip', { value: 'Mariane', details: { ...details, name } }),
      )[1];
    expect(slip('seed_parent')).toContain('--same "Marianne=Mariane"');
    expect(slip('grower')).toBe('If they are one, correct it.');
  });
});
