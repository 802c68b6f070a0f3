import { describe, expect, it } from 'vitest';
import { type ChosenFile, MOST_BYTES, openFile, withFile } from '../../lib/browser/chosen-files.ts';

const file = (name: string, text: string): ChosenFile => ({
  name,
  bytes: new TextEncoder().encode(text),
  refused: null,
});

describe('openFile', () => {
  it('reads the bytes of a file', async () => {
    const opened = await openFile(new File(['a,b'], 'a.csv'));
    expect(opened).toEqual(file('a.csv', 'a,b'));
  });

  it('does not even begin with one that is too large, and states the limit', async () => {
    const arrayBuffer = () => Promise.reject(new Error('was read'));
    const opened = await openFile({ name: 'a.csv', size: MOST_BYTES + 1, arrayBuffer });
    expect(opened.bytes).toBeNull();
    expect(opened.refused).toMatch(/^The file has 21 MB; files of up to 20 MB can be read\./);
  });

  it('says that a file is locked, by its name', async () => {
    const arrayBuffer = () => Promise.reject(new Error('NotReadableError'));
    const opened = await openFile({ name: 'a.csv', size: 3, arrayBuffer });
    expect(opened.refused).toMatch(/^a\.csv can’t be read: the browser says that it is locked/);
  });
});

describe('withFile', () => {
  it('reads the same file once, and says so', () => {
    const { files, note } = withFile([file('a.csv', '1')], file('a.csv', '1'));
    expect(files).toHaveLength(1);
    expect(note).toMatch(/^a\.csv had been chosen before and is the same/);
  });

  it('lets a mended file take the place of the one before, and says so', () => {
    const { files, note } = withFile([file('a.csv', '1'), file('b.csv', '2')], file('a.csv', '3'));
    expect(files).toEqual([file('a.csv', '3'), file('b.csv', '2')]);
    expect(note).toMatch(/^a\.csv took the place/);
  });

  it('lets a readable file take the place of one that was refused, without a word', () => {
    const refused = { name: 'a.csv', bytes: null, refused: 'locked' };
    expect(withFile([refused], file('a.csv', '1'))).toEqual({ files: [file('a.csv', '1')], note: null });
  });
});
