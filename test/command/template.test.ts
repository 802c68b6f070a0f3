import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { templateFiles } from '../../lib/command/template.ts';
import { COLUMNS, KINDS } from '../../lib/season/columns.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import * as english from '../../lib/words/index.ts';
import { wordsIn } from '../../lib/words/languages.ts';
import { run } from './memory-world.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const examples = (files: ReturnType<typeof templateFiles>) =>
  files
    .filter(({ name }) => name.startsWith('example-'))
    .map(({ name, text }) => ({ name, bytes: bytes(text) }));

describe('template', () => {
  it('writes empty files, the columns explained, and an example with nothing to mend', async () => {
    const { status, out, written } = await run(['template', '-o', 'new']);
    expect(status).toBe(0);
    const names = [
      ...['crosses.csv', 'vials.csv', 'flowers.csv', 'columns-explained.csv'],
      ...['example-crosses.csv', 'example-vials.csv', 'example-flowers.csv'],
    ];
    expect([...written.keys()]).toEqual(names.map((name) => `new/${name}`));
    expect(out).toMatch(/^Wrote to new: crosses\.csv, .* and example-flowers\.csv\.\n$/);
    const files = Object.fromEntries(written);
    const checked = await run(['check', ...names.slice(4).map((name) => `new/${name}`)], { files });
    expect([checked.status, checked.out.match(/Nothing to mend/g)]).toEqual([
      0,
      Array(3).fill('Nothing to mend'),
    ]);
  });

  it('starts a file that is read once it is filled', () => {
    const [crosses] = templateFiles(english);
    const filled = `${crosses!.text}1,2026-06-20,A,B,fresh,,,,fruit${','.repeat(13)}\r\n`;
    const season = readSeason([{ name: 'c.csv', bytes: bytes(filled) }]);
    expect(season.files[0]).toMatchObject({ rows: 1, used: 1, problems: [] });
  });

  it('explains each column of each file once', () => {
    const text = templateFiles(english).find(({ name }) => name === 'columns-explained.csv')!.text;
    const rows: Record<string, string>[] = parse(text, { bom: true, columns: true });
    expect(rows.map(({ file, column }) => [file, column])).toEqual(
      KINDS.flatMap((kind) => COLUMNS[kind].map(({ name }) => [`${kind}.csv`, name])),
    );
    for (const row of rows) expect(row['what it holds']).toMatch(/^[A-Z].*\.$/);
  });

  it.each(['de', 'es', 'fr'] as const)(
    'says the same in %s, and the reader understands it',
    async (language) => {
      const bare = (rows: readonly { readonly note: string | null }[]) =>
        rows.map(({ note, ...row }) => ({ ...row, noted: note !== null }));
      const meant = readSeason(examples(templateFiles(english)));
      const season = readSeason(examples(templateFiles(await wordsIn(language))));
      expect(bare(season.crosses)).toEqual(bare(meant.crosses));
      expect(bare(season.vials)).toEqual(bare(meant.vials));
      expect(season.flowers).toEqual(meant.flowers);
      const codes = new Set(season.files.flatMap(({ problems }) => problems.map(({ code }) => code)));
      expect([...codes]).toEqual(['column-guessed']);
    },
  );

  it('prints the crosses file where it is not said where to write, or writes it alone', async () => {
    const printed = await run(['template']);
    expect(printed.out).toMatch(/^\uFEFFcross_id,pollination_date,.*\r\n$/);
    const { written } = await run(['template', '-o', 'mine.csv', '--language', 'fr']);
    expect([...written.keys()]).toEqual(['mine.csv']);
    expect(written.get('mine.csv')).toContain('Étiquette');
  });

  it('overwrites no file', async () => {
    const { status, err, written } = await run(['template', '-o', 'mine.csv'], {
      files: { 'mine.csv': 'x' },
    });
    expect([status, written.size]).toEqual([2, 0]);
    expect(err).toContain('mine.csv is there already');
  });
});
