import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Problem } from '../../lib/season/season.ts';
import { FILE_PROBLEMS } from '../../lib/words/english-file-problems.ts';
import { problemWords } from '../../lib/words/english-problems.ts';
import { ROW_PROBLEMS } from '../../lib/words/english-row-problems.ts';

const FIXTURES = new URL('../season/fixtures/', import.meta.url);

function problemsIn(name: string): readonly Problem[] {
  return readSeason([{ name, bytes: readFileSync(new URL(name, FIXTURES)) }]).files[0].problems;
}

describe('problemWords', () => {
  it('say what is wrong, where, and what to do', () => {
    expect(problemsIn('date-does-not-exist.csv').map(problemWords)).toEqual([
      {
        message: 'Row 3: the pollination date "2025-02-30" does not exist.',
        fix: 'Write it as YYYY-MM-DD, for example 2025-06-14.',
      },
    ]);
    expect(problemsIn('date-order-unclear.csv').map(problemWords)).toEqual([
      {
        message:
          'The column "pollination_date" does not tell which number is the day: "03/04/2025" in row 2 is ' +
          '2025-04-03 read as day-month-year, but 2025-03-04 as month-day-year.',
        fix: 'Say which it is: --date-order dmy or --date-order mdy.',
      },
    ]);
  });

  it('say in which order a date does not exist', () => {
    const text = 'seed_parent,flowers,opens_from\nA,1,14/06/2026\n';
    const [file] = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }], {
      dateOrder: 'mdy',
    }).files;
    expect(file.problems.map((problem) => problemWords(problem).message)).toEqual([
      'Row 2: the first day of flowering "14/06/2026" does not exist when read as month-day-year.',
    ]);
  });

  it('are whole sentences for every fixture, with nothing left unfilled', () => {
    const words = readdirSync(FIXTURES)
      .filter((name) => name.endsWith('.csv'))
      .flatMap(problemsIn)
      .map(problemWords);
    expect(words.length).toBeGreaterThan(50);
    for (const { message, fix } of words) {
      expect(message).toMatch(/^(Row \d+: [a-z0-9"]|[A-Z]).*[.?]$/);
      expect(fix).toMatch(/^[A-Z].*\.$/);
      expect(message + fix).not.toMatch(/undefined|null|NaN|\[object/);
    }
  });

  it('exist for each code once', () => {
    const codes = [...Object.keys(FILE_PROBLEMS), ...Object.keys(ROW_PROBLEMS)];
    expect(new Set(codes).size).toBe(codes.length);
  });

  it('cut a long cell and keep it on one line', () => {
    const [problem] = problemsIn('word-not-understood.csv');
    const { message } = problemWords({ ...problem, value: `a\nb\u001b[31m${'x'.repeat(200_000)}` });
    expect(message.length).toBeLessThan(200);
    expect(message).not.toMatch(/\p{Cc}/u);
  });

  it('refuse a code that is none of ours, be it a name that every object has', () => {
    const [problem] = problemsIn('word-not-understood.csv');
    expect(() => problemWords({ ...problem, code: 'constructor' })).toThrow('got "constructor"');
  });
});
