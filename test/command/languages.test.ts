import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { Language } from '../../lib/words/language.ts';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { crossesCsv, type MemoryFiles, run } from './memory-world.ts';

/*
 * All that the command prints, in each language beside the same in English: no line of prose is the same, and no English
 * stands in another. Whether it reads well, only a native speaker can tell.
 */

const demo = (name: string) => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url));
const MESSY = crossesCsv(
  [
    '2025-06-20,Lantern Creek,Salt Moon,fresh,fruit,7',
    '2025-06-31,Salt Moon,Lantern Creek,fresh,none,8',
    '2025-06-21,,Salt Moon,frozen,fruit,9',
    '2025-06-22,Lantern Creek,Salt Moon,fresh,maybe,9',
  ],
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,shelf',
);
const FILES = {
  ...{
    'crosses.csv': demo('crosses.csv'),
    'vials.csv': demo('vials.csv'),
    'flowers.csv': demo('flowers.csv'),
  },
  ...{ 'messy.csv': MESSY, 'unclear.csv': crossesCsv(['03/04/2025,Salt Moon,Owl Hour,fresh,fruit']) },
  ...{ 'page.html': '<!doctype html>', 'notes.txt': 'mine', 'empty.csv': '' },
  ...{ 'broken.json': '{\n "version": 1,\n "level": }', 'list.json': '[]', 'later.json': '{ "version": 9 }' },
  'odd.json': '{ "version": 1, "levle": "x" }',
};
const SEASON = ['crosses.csv', '--vials', 'vials.csv', '--flowers', 'flowers.csv'];
const RUNS: readonly (readonly [what: string, argv: readonly string[], world?: MemoryFiles])[] = [
  ['the help', ['--help']],
  ['a check', ['check', ...SEASON, 'messy.csv']],
  ['a check of standard input', ['check', '-'], { input: MESSY }],
  ['a check with an open question', ['check', 'unclear.csv', 'vials.csv']],
  ['a check of nothing', ['check', 'empty.csv']],
  ['an analysis', ['analyse', ...SEASON, '--use-on', '2025-01-01', '--must', 'Salt Moon x Copper Tide=2']],
  ['an analysis of few flowers', ['analyse', 'messy.csv', '--save-settings', 'mine.json']],
  ['a coded analysis', ['analyse', 'messy.csv', '--anonymous']],
  ['a report', ['report', 'messy.csv', '-o', 'out.html']],
  ['a site', ['site', 'messy.csv', '-o', 'folder'], { renderSite: async () => HALF_A_SITE }],
  ['a sheet', ['sheet', ...SEASON, '-o', 'next.csv']],
  ['a sheet without a plan', ['sheet', 'messy.csv', '-o', 'next.html']],
  ['clean files', ['clean', 'messy.csv', '-o', 'folder']],
  ['clean files under codes', ['clean', 'messy.csv', '-o', 'folder', '--anonymous']],
  ['a template', ['template', '-o', 'folder']],
  ['no command', []],
  ['an unknown command', ['chekc', 'crosses.csv']],
  ['a wrong option', ['check', 'crosses.csv', '--levle', '1']],
  ['an option without its value', ['check', 'crosses.csv', '--vials']],
  ['an option with a value too many', ['check', 'crosses.csv', '--json=1']],
  ['an option given twice', ['check', 'crosses.csv', '--level', '0.9', '--level', '0.8']],
  ['a value that cannot be', ['analyse', 'crosses.csv', '--level', '2']],
  ['a day that does not exist', ['analyse', 'crosses.csv', '--as-of', '2025-02-30']],
  ['an option of another command', ['sheet', 'messy.csv', '-o', 'a.html', '--anonymous']],
  ['a header for no column', ['check', 'crosses.csv', '--map', 'Mother=seed_praent']],
  ['a plant that is nowhere', ['analyse', ...SEASON, '--must', 'Salt Mood x Copper Tide']],
  ['no file', ['report', '-o', 'out.html']],
  ['a file that is not there', ['check', 'nowhere.csv']],
  ['no place to write to', ['report', 'crosses.csv']],
  ['a place that is refused', ['report', 'messy.csv', '-o', 'out.html'], { refuses: 'ENOSPC' }],
  ['a file in the way', ['report', 'messy.csv', '-o', 'notes.txt']],
  ['settings that are no JSON', ['check', 'messy.csv', '--settings', 'broken.json']],
  ['settings that are a list', ['check', 'messy.csv', '--settings', 'list.json']],
  ['settings of later', ['check', 'messy.csv', '--settings', 'later.json']],
  ['a setting that is none', ['check', 'messy.csv', '--settings', 'odd.json']],
];
const HALF_A_SITE = {
  files: [{ name: 'index.html', text: '<!doctype html>' }],
  constant: [],
  leftOut: [{ name: 'explore.html', package: 'vega' }],
};

/** What is the same in every language: what is to be typed, and names. */
const TYPED = [/^ {2}fruitodds (?:check|report) crosses\.csv/, /^ {2}--(?:help|version)\b/, /^cross_id,/];
const ENGLISH = /\b(?:the|and|with|were|from|which|been|this|that|give|write|rows?|files?)\b/i;

async function linesOf(argv: readonly string[], world: MemoryFiles = {}): Promise<string[]> {
  const { out, err, noted } = await run(argv, { files: FILES, ...world });
  return [out, err, ...noted]
    .join('\n')
    .split('\n')
    .filter((line) => /\p{L}{3}/u.test(line));
}

const inLanguage = (argv: readonly string[], language: Language) => [...argv, '--language', language];

describe.each(LANGUAGES.filter((language) => language !== 'en'))('the command in %s', (language) => {
  const runs = RUNS.map(([what, argv, world]) => ({ what, argv, world }));
  it.each(runs)('tells $what without a line of English', async ({ argv, world }) => {
    const own = await linesOf(inLanguage(argv, language), world);
    const english = new Set(await linesOf(argv, world));
    expect(own.length).toBeGreaterThan(0);
    const prose = own.filter((line) => !TYPED.some((pattern) => pattern.test(line)));
    expect(prose.filter((line) => english.has(line))).toEqual([]);
    expect(
      prose.filter((line) => ENGLISH.test(line.replaceAll(/--[a-z-]+|\S+\.(?:csv|html|json)/g, ''))),
    ).toEqual([]);
  });

  it('tells a wrong option in the language of the settings too', async () => {
    const files = { ...FILES, 'mine.json': JSON.stringify({ version: 1, language }) };
    const wrong = ['check', 'messy.csv', '--level', '2'];
    const bySettings = await run([...wrong, '--settings', 'mine.json'], { files });
    const byOption = await run(inLanguage(wrong, language), { files });
    expect(bySettings.err).toBe(byOption.err);
    expect(bySettings.err).not.toBe((await run(wrong, { files })).err);
  });

  it('explains the columns of a template, and keeps what is to be typed', async () => {
    const explained = async (argv: readonly string[]): Promise<string[][]> =>
      parse((await run(argv)).written.get('folder/columns-explained.csv')!, { bom: true });
    const own = await explained(inLanguage(['template', '-o', 'folder'], language));
    const english = await explained(['template', '-o', 'folder']);
    expect(own).toHaveLength(english.length);
    for (const [row, cells] of own.entries()) {
      const [file, header, column, , holds, write] = cells;
      const [theirFile, theirHeader, theirColumn, , theirHolds, theirWrite] = english[row]!;
      if (row > 0) expect([file, column]).toEqual([theirFile, theirColumn]);
      expect(header).not.toBe(theirHeader);
      expect(holds).not.toBe(theirHolds);
      expect(write === theirWrite).toBe(theirWrite === '');
    }
  });

  it('gives programs the JSON that it gives in English, but for its sentences', async () => {
    const typed = async (argv: readonly string[]) => {
      const json = JSON.parse((await run(argv, { files: FILES, input: MESSY })).out);
      return JSON.stringify(json, (key, value) =>
        /^(?:message|fix|because|reason)$/.test(key) ? '' : value,
      );
    };
    for (const argv of [
      ['check', '-', '--json'],
      ['check', 'crosses.csv', '--json', '--level', '2'],
    ]) {
      expect(await typed(inLanguage(argv, language))).toBe(await typed(argv));
    }
  });
});
