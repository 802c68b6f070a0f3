import { expect, it } from 'vitest';
import { readingOf } from '../../lib/browser/reading.ts';
import { settingsText } from '../../lib/browser/saved-settings.ts';
import { readCommandLine } from '../../lib/command/options.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const text =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,Zorn $HOME\nT1,2025-06-01,A,B,fresh,fruit';
const sources = [{ name: 'my crosses.csv', bytes: new TextEncoder().encode(text) }];
const map = [['Zorn $HOME', 'outcome']] as const;
const task = {
  sources,
  read: { endpoint: 'final', dateOrder: 'dmy', map },
  analyse: { level: 0.95, worth: 0.2, useOn: '2026-06-01', samePlants: true },
} as const;
const saved = JSON.parse(
  settingsText(task, readingOf(readSeason(sources, { map: new Map(map) }), new Map(map))),
);

/** The words of a command line in double quotes with backslashes, as a POSIX shell reads them. */
function words(line: string): string[] {
  return [...line.matchAll(/"((?:\\.|[^"\\])*)"|(\S+)/g)].map(([, quoted, bare]) =>
    quoted === undefined ? bare! : quoted.replaceAll(/\\(.)/g, '$1'),
  );
}

it('holds the files and the options', () => {
  expect(saved.files).toEqual([
    { file: 'my crosses.csv', kind: 'crosses', sha256: expect.stringMatching(/^[0-9a-f]{64}$/) },
  ]);
  expect(saved.options).toMatchObject({ endpoint: 'final', worth: 0.2, useOn: '2026-06-01' });
});

it('holds the command that reads them the same way', () => {
  const [npx, program, ...rest] = words(saved.command);
  expect([npx, program]).toEqual(['npx', 'fruitodds']);
  expect(readCommandLine(rest)).toMatchObject({
    ...{ command: 'report', files: ['my crosses.csv'], endpoint: 'final', worth: 0.2, useOn: '2026-06-01' },
    ...{ dateOrder: 'dmy', samePlants: true, map: [{ header: 'Zorn $HOME', column: 'outcome' }] },
  });
});
