import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { problemWords } from '../../lib/words/english-problems.ts';

const NAMES = ['cross_id', 'pollination_date', 'seed_parent', 'pollen_parent', 'storage', 'outcome'];

function problemsOf(headers: readonly string[]) {
  const cells = headers.map(() => 'x').join(',');
  const bytes = new TextEncoder().encode(`${headers.join(',')}\n${cells}\n`);
  return readSeason([{ name: 'x.csv', bytes }]).files[0].problems;
}

describe('reportHeader', () => {
  it('suggests the column that an unknown header may well mean, as the option is typed', () => {
    const found = problemsOf([...NAMES.slice(0, 5), 'Outcme']);
    const missing = found.find(({ code }) => code === 'column-missing')!;
    expect(missing.details).toEqual({ column: 'outcome', kind: 'crosses', suggestion: 'Outcme' });
    expect(problemWords(missing).fix).toContain('--map "Outcme=outcome"');
    const unknown = found.find(({ code }) => code === 'column-unknown')!;
    expect(problemWords(unknown).fix).toContain('--map "Outcme=outcome"');
  });

  it('suggests nothing where two headers may mean the same column', () => {
    const found = problemsOf([...NAMES, 'germinatd', 'germnated']);
    expect(
      found.filter(({ code }) => code === 'column-unknown').map(({ details }) => details.suggestion),
    ).toEqual(['', '']);
  });

  it('counts unknown columns where there are very many', () => {
    const found = problemsOf([...NAMES, ...Array.from({ length: 9994 }, (_, i) => `c${i}`)]);
    expect(found.filter(({ code }) => code === 'column-unknown')).toHaveLength(50);
    expect(found.find(({ code }) => code === 'columns-unknown')?.details).toEqual({ more: 9944 });
  });

  it('tells cells below a blank header', () => {
    const found = problemsOf([...NAMES, '', '']).filter(({ code }) => code === 'column-without-header');
    expect(found.map(({ details }) => details.position)).toEqual([7, 8]);
  });
});
