import { expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';

it('carries its code, what fills the sentence, and the files where they could be read', () => {
  const failure = new Failure('file-unreadable', { file: 'a.csv', cause: 'ENOENT' });
  expect(failure).toBeInstanceOf(Error);
  expect([failure.code, failure.details, failure.files]).toEqual([
    'file-unreadable',
    { file: 'a.csv', cause: 'ENOENT' },
    null,
  ]);
  expect(new Failure('no-usable-row', {}, []).files).toEqual([]);
});
