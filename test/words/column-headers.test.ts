import { describe, expect, it } from 'vitest';
import { COLUMNS, columnNamed, KINDS } from '../../lib/season/columns.ts';
import { columnHeader } from '../../lib/words/column-headers.ts';

describe.each(['en', 'de', 'es', 'fr'] as const)('the headers in %s', (language) => {
  it.each(KINDS)('of %s are all understood, and differ', (kind) => {
    const names = COLUMNS[kind].map(({ name }) => name);
    const headers = names.map((name) => columnHeader(name, language));
    expect(headers.map((header) => columnNamed(header, kind)?.name)).toEqual(names);
    expect(new Set(headers).size).toBe(names.length);
    // A language that is not English has a word of its own for every column.
    expect(headers.filter((header, i) => header === names[i]).length).toBe(
      language === 'en' ? names.length : 0,
    );
  });
});
