import { expect, it } from 'vitest';
import { newCodeKey } from '../../lib/season/code-key.ts';
import { codedCopy } from '../../lib/season/coded-copy.ts';
import { codedFiles } from '../../lib/season/coded-files.ts';
import { seasonOf } from '../season-of.ts';

it('names its files by their kind and has only those that hold anything', () => {
  const vial = { vial: 'F-1', pollenParent: 'Salt Moon', collected: '2025-01-02', storage: 'frozen' };
  const season = seasonOf([{}], {
    vials: [{ ...vial, dosesLeft: null, thaws: null, note: 'top shelf', file: 'v.csv', line: 2, row: 2 }],
  });
  const files = codedFiles(codedCopy(season, newCodeKey('5'.repeat(64))));
  expect(files.map(({ name }) => name)).toEqual(['coded-crosses.csv', 'coded-vials.csv']);
  expect(files[1]!.text).toMatch(
    /^\uFEFFvial,pollen_parent,collected,storage,doses_left,doses_filled,thaws,note\r\nV01,P0[12],\d{4}-\d\d-\d\d,frozen,,,,\r\n$/,
  );
});
