import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { questions } from '../../lib/season/problems.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import { FILE_PROBLEMS } from '../../lib/words/english-file-problems.ts';
import { ROW_PROBLEMS } from '../../lib/words/english-row-problems.ts';
import { problemCatalogue } from '../../lib/words/problem-catalogue.ts';

const SEASON = new URL('../../lib/season/', import.meta.url);
const FIXTURES = new URL('../season/fixtures/', import.meta.url);
const catalogue = problemCatalogue();
const byCode = new Map<string, (typeof catalogue)[number]>(catalogue.map((entry) => [entry.code, entry]));

/** The source of the reader, without the list of codes itself. */
const reader = readdirSync(SEASON, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && name !== 'problems.ts')
  .map((name) => readFileSync(new URL(name, SEASON), 'utf8'))
  .join('\n');

const found = readdirSync(FIXTURES)
  .filter((name) => name.endsWith('.csv'))
  .flatMap((name) => readSeason([{ name, bytes: readFileSync(new URL(name, FIXTURES)) }]).files)
  .flatMap(({ problems }) => problems);

describe('the catalogue of problems', () => {
  it('holds every code that has sentences, and no other, once', () => {
    expect(catalogue.map(({ code }) => code).sort()).toEqual(
      [...Object.keys(FILE_PROBLEMS), ...Object.keys(ROW_PROBLEMS)].sort(),
    );
    expect(byCode.size).toBe(catalogue.length);
  });

  it('holds nothing that the reader never finds', () => {
    expect(catalogue.filter(({ code }) => !reader.includes(`'${code}'`)).map(({ code }) => code)).toEqual([]);
  });

  it('holds whatever is found in the fixtures, with the severity that it is found with', () => {
    expect(new Set(found.map(({ code }) => code)).size).toBeGreaterThan(45);
    const wrong = found.filter(({ code, severity }) => !byCode.get(code)?.severity.includes(severity));
    expect(wrong.map(({ code, severity }) => [code, severity])).toEqual([]);
  });

  it('says of every question that no row is used until it is answered', () => {
    const asked = questions({ files: [{ problems: found }] });
    expect(asked.length).toBeGreaterThan(2);
    for (const { code } of asked) expect(byCode.get(code)!.used).toContain('until you answer');
  });

  it('is written in whole sentences, each error saying what is left out', () => {
    for (const { means, used, mend, example, severity } of catalogue) {
      for (const text of [means, used, mend]) expect(text).toMatch(/^[A-Z].*[.]$/);
      expect(example).not.toBe('');
      if (severity === 'error') expect(used).toMatch(/left out|No row|not used|Neither/);
      if (severity === 'notice') expect(used).toMatch(/used/);
    }
  });
});
