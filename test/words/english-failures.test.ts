import { describe, expect, it } from 'vitest';
import { failureWords } from '../../lib/words/english-failures.ts';

describe('failureWords', () => {
  it('says what an option may be', () => {
    const details = { option: '--endpoint', value: 'last', rule: 'one-of', allowed: 'initial, final' };
    expect(failureWords('option-value', details)).toEqual({
      message: 'The option --endpoint can’t be "last".',
      fix: 'Give one of: initial, final.',
    });
  });

  it('offers the nearest option only where there is one', () => {
    expect(failureWords('option-unknown', { option: '--levle', nearest: '--level' }).fix).toBe(
      'Did you mean --level? See fruitodds --help.',
    );
    expect(failureWords('option-unknown', { option: '--xyz', nearest: null }).fix).toBe(
      'See fruitodds --help.',
    );
  });

  it('translates the system’s codes, and names one that it does not know', () => {
    expect(failureWords('file-unreadable', { file: 'a.csv', cause: 'EISDIR' }).message).toBe(
      'a.csv can’t be read: it is a folder.',
    );
    expect(failureWords('output-not-writable', { file: 'a.html', cause: 'EIO' }).message).toBe(
      'a.html can’t be written: the system says EIO.',
    );
  });

  it('carries the first fault of the files where no row can be used', () => {
    expect(
      failureWords('no-usable-row', { files: 'a.csv', cause: 'It is empty.', remedy: 'Save it again.' }),
    ).toEqual({ message: 'No row of a.csv can be used. It is empty.', fix: 'Save it again.' });
    expect(failureWords('no-usable-row', { files: 'a.csv', cause: null, remedy: null }).fix).toContain(
      'fruitodds check',
    );
  });
});
