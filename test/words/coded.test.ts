import { expect, it } from 'vitest';
import { codedSaid } from '../../lib/words/coded.ts';

it('says nothing of a grower’s own page', () => {
  expect(codedSaid({})).toBe('');
});

it('says what was changed, and how many rows are not in the copy', () => {
  const said = codedSaid({ coded: { level: 'codes', rowsLeftOut: 3 } });
  expect(said).toContain('stand under codes');
  expect(said).toMatch(/ 3 rows with a fault are not in it\.$/);
  expect(codedSaid({ coded: { level: 'codes', rowsLeftOut: 1 } })).toMatch(
    / 1 row with a fault is not in it\.$/,
  );
});

it('says of a summary that single plants are left out, and nothing of rows where none is missing', () => {
  const said = codedSaid({ coded: { level: 'summary', rowsLeftOut: 0 } });
  expect(said).toContain('single plants, pairs and vials is left out');
  expect(said).not.toContain('fault');
});
