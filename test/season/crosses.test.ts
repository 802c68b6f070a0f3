import { describe, expect, it } from 'vitest';
import { crossRows } from '../../lib/season/crosses.ts';
import { layOut } from '../../lib/season/sheet.ts';

const HEADER =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,control,season,bagged,wave,note';

function rows(...lines: string[]) {
  const bytes = new TextEncoder().encode([HEADER, ...lines].join('\n'));
  const [sheet] = layOut({ name: 'crosses.csv', bytes }, { map: new Map() });
  const crosses = crossRows(sheet).map(({ cross }) => cross);
  return { crosses, codes: sheet.problems.map(({ code, column }) => `${code} ${column}`) };
}

describe('crossRows', () => {
  it('fills what a row leaves blank: season by the year, everything else by null', () => {
    const { crosses } = rows('T1,2025-06-01,A,B,fresh,fruit,,,,,');
    expect(crosses[0]).toMatchObject({
      season: '2025',
      control: null,
      bagged: null,
      wave: null,
      note: null,
      vial: null,
    });
    expect(rows('T1,2025-06-01,A,B,fresh,fruit,,24/25,yes,2,cool night').crosses[0]).toMatchObject({
      season: '24/25',
      bagged: true,
      wave: '2',
      note: 'cool night',
    });
  });

  it('lets an unpollinated control leave pollen parent and storage blank', () => {
    const { crosses, codes } = rows('T1,2025-06-01,A,,,none,unpollinated,,,,');
    expect(crosses[0]).toMatchObject({
      control: 'unpollinated',
      pollenParent: null,
      storage: null,
      ageDays: null,
    });
    expect(codes).toEqual([]);
  });

  it('takes the plant itself for the pollen parent of a selfed control that names none', () => {
    const { crosses, codes } = rows('T1,2025-06-01,A,,fresh,none,selfed,,,,');
    expect(crosses[0]).toMatchObject({ control: 'selfed', pollenParent: 'A' });
    expect(codes).toEqual([]);
  });

  it('keeps a storage word of the grower’s own, and joins the usual ones', () => {
    const { crosses } = rows(
      'T1,2025-06-01,A,B,Silica Jar,fruit,,,,,',
      'T2,2025-06-01,A,B,Freezer,fruit,,,,,',
    );
    expect(crosses.map(({ storage }) => storage)).toEqual(['Silica Jar', 'frozen']);
  });

  it('reports every blank required cell of a row, each once', () => {
    const { crosses, codes } = rows(',,,,,x,,,,,');
    expect(crosses).toEqual([]);
    expect(codes.sort()).toEqual([
      'cell-blank cross_id',
      'cell-blank pollen_parent',
      'cell-blank pollination_date',
      'cell-blank seed_parent',
      'cell-blank storage',
      'word-not-understood outcome',
    ]);
  });

  it('says once in a file how it reads a word', () => {
    const { codes } = rows('T1,2025-06-01,A,B,fridge,failed,,,,,', 'T2,2025-06-01,A,B,fridge,failed,,,,,');
    expect(codes).toEqual(['word-guessed storage', 'word-guessed outcome']);
  });

  it('leaves out a row that repeats the headers, with one finding', () => {
    expect(rows('T1,2025-06-01,A,B,fresh,fruit,,,,,', HEADER).codes).toEqual(['header-repeated null']);
  });
});
