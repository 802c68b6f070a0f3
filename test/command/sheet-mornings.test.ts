import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { crossesCsv, run } from './memory-world.ts';

// A sheet asks only for pollen that is there: a flower lasts about a day, common practice, no source.

const demo = (name: string) => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url));
const DEMO = Object.fromEntries(
  ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => [name, demo(name)]),
);

interface Line {
  readonly plant: string;
  readonly father: string;
  readonly fresh: boolean;
  readonly note: string;
  readonly morning: string | undefined;
}

/** The lines of a sheet's file; no name of these seasons has a comma. */
function linesOf(csv: string): Line[] {
  return csv
    .trimEnd()
    .split('\r\n')
    .slice(1)
    .map((row) => row.split(','))
    .map((cells) => ({
      plant: cells[2]!,
      father: cells[3]!,
      fresh: cells[4] === 'fresh',
      note: cells[11]!,
      morning: /\d{4}-\d\d-\d\d/.exec(cells[11]!)?.[0],
    }));
}

/** Lines with fresh pollen of a plant that has no flower that morning. */
function without(lines: readonly Line[]): Line[] {
  return lines.filter(
    ({ fresh, father, morning }) =>
      fresh &&
      morning !== undefined &&
      !lines.some((other) => other.plant === father && other.morning === morning),
  );
}

/** Everybody’s pollen is good; the one flower of C is wanted in June by A and in August by B. */
const APART = {
  'crosses.csv': crossesCsv(
    ['A,C', 'B,C', 'C,A', 'A,C', 'B,C', 'C,B'].map((pair, i) => `2025-06-${20 + i},${pair},fresh,fruit`),
  ),
  'flowers.csv':
    'seed_parent,flowers,opens_from,opens_to\nA,1,2026-06-01,2026-06-10\nB,1,2026-08-01,2026-08-10\nC,1,2026-06-01,2026-08-10\n',
};

describe('the mornings of a sheet', () => {
  it.each(['most-fruit', 'balanced', 'most-varieties'])(
    'of the demo season have a flower of each father, with the mix %s',
    async (mix) => {
      const { written, err } = await run(['sheet', ...Object.keys(DEMO), '--mix', mix, '-o', 'next.csv'], {
        files: DEMO,
      });
      const lines = linesOf(written.get('next.csv')!);
      expect(lines.filter(({ fresh }) => fresh).length).toBeGreaterThan(80);
      expect(without(lines)).toEqual([]);
      expect(err).toBe('');
    },
  );

  it.each(LANGUAGES.map((language) => [language]))(
    'say in %s which cross can have none, in the file and beside it',
    async (language) => {
      const asked = [
        'sheet',
        ...Object.keys(APART),
        '--mix',
        'most-varieties',
        '-o',
        'next.csv',
        '--language',
        language,
      ];
      const { status, err, written } = await run(asked, { files: APART });
      expect(status, err).toBe(0);
      const lines = linesOf(written.get('next.csv')!);
      const [marked, ...more] = lines.filter(({ note }) => note.includes(';'));
      expect([marked?.father, more]).toEqual(['C', []]);
      expect(without(lines)).toEqual([marked]);
      expect(err).toContain(`${marked!.plant} × C`);
    },
  );
});
