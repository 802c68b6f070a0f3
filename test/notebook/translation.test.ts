import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../lib/notebook/build/cells.ts';
import { compileNotebook } from '../../lib/notebook/build/compile.ts';
import { pairedNotebooks, type SlotSection, unequalSlots } from '../../lib/notebook/build/translation.ts';

const front = '---\ntitle: T\ndescription: D\n---\n';
const notebook = (text: string) => readNotebook('reports/x.md', front + text);

/** Sections with the slots named, every one on the line of its place in the list. */
const sections = (...slots: readonly string[][]): SlotSection[] =>
  slots.map((names, at) => ({
    heading: at === 0 ? null : 'H',
    line: 10 * at + 1,
    slots: names.map((expression, i) => ({ expression, line: 10 * at + 2 + i, column: 4 })),
  }));

const faults = (own: SlotSection[], theirs: SlotSection[]) =>
  unequalSlots('reports/x.de.md', own, theirs, 'reports/x.md').map(
    ({ line, message }) => `${line}: ${message}`,
  );

describe('the slots of a translation', () => {
  it('may stand in any order within their section', () => {
    expect(faults(sections(['a'], ['b', 'c']), sections(['a'], ['c', 'b']))).toEqual([]);
  });

  it('may not be missing: told at the heading, with the line of the original', () => {
    expect(faults(sections([], ['b']), sections([], ['b', 'c']))).toEqual([
      '11: this section must also show {{ c }}, as reports/x.md:13 does',
    ]);
    expect(faults(sections([], ['b']), sections([], ['b', 'b']))).toHaveLength(1);
  });

  it('may not be too many or in another section: told at their place', () => {
    expect(faults(sections([], ['b', 'a'], []), sections([], ['b'], ['a']))).toEqual([
      '13: {{ a }} stands 0 times in this section of reports/x.md (line 11): take it out here, or move it to its own section',
      '21: this section must also show {{ a }}, as reports/x.md:22 does',
    ]);
  });

  it('need the same sections', () => {
    expect(faults(sections([], [], []), sections([], []))).toEqual([
      '21: there are 2 headings (##) here and 1 in reports/x.md: each needs its twin, in the same order',
    ]);
  });
});

describe('a translation', () => {
  it('of no notebook is refused, and a file of another ending is a notebook itself', () => {
    const own = readNotebook('reports/y.en.md', front);
    expect(pairedNotebooks([notebook(''), own]).originals).toHaveLength(2);
  });

  it('without a translation compiles as before', () => {
    expect(compileNotebook(notebook('Text.\n'))).toContain('"language":"en"');
  });
});
