import { expect, it } from 'vitest';
import { isSavedFile, savedFile } from '../../lib/notebook/saved-file.ts';

it('holds what is to be written beside the page', () => {
  const file = savedFile('curve.vl.json', 'The specification', '{}');
  expect(file).toEqual({ kind: 'saved-file', name: 'curve.vl.json', label: 'The specification', text: '{}' });
  expect(isSavedFile(file)).toBe(true);
  expect(isSavedFile('curve.vl.json')).toBe(false);
});

it.each(['../x.json', 'a/b.json', '.hidden', 'A.json', 'x', 'a..b', ''])('refuses the name %j', (name) => {
  expect(() => savedFile(name, 'x', '')).toThrow(RangeError);
});
