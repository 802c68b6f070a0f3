/** The same tag or vial written twice: word for word, or in conflict. */

import type { ProblemCode } from './problems.ts';
import type { RowCells } from './row-cells.ts';

/** How records are compared: by what must be unique among all that they say. */
export interface RepeatRule<T> {
  /** What is written twice, and may stand so by right where the rest of the key differs. */
  readonly tag: (record: T) => string;
  /** What must be unique. */
  readonly key: (record: T) => string;
  readonly content: (record: T) => object;
  readonly column: string;
  readonly repeated: ProblemCode;
  readonly conflict: ProblemCode;
}

interface Placed {
  readonly cells: RowCells;
}

const PLACE = new Set(['file', 'line', 'row']);

/** The fields in which two records differ, where they stand apart. */
function differences(one: object, two: object): string[] {
  const others = new Map<string, unknown>(Object.entries(two));
  const differing = Object.entries(one).filter(
    ([field, value]) => !PLACE.has(field) && others.get(field) !== value,
  );
  return differing.map(([field]) => field);
}

function reportGroup<T extends Placed>(group: readonly T[], rule: RepeatRule<T>): void {
  const { content, column, repeated, conflict } = rule;
  const [first] = group;
  const fields = new Set(group.flatMap((each) => differences(content(first), content(each))));
  const alike = fields.size === 0;
  group.forEach(({ cells }, index) => {
    if (alike && index === 0) return;
    const other = (index === 0 ? group[1] : first).cells.place;
    const details = {
      otherFile: other.file,
      otherRow: other.row,
      otherLine: other.line,
      fields: [...fields].join(', '),
    };
    cells.report('error', alike ? repeated : conflict, { column, details });
  });
}

/** A number from a text, the same for the same text. */
function hashOf(text: string): number {
  let hash = 0;
  for (let i = 0; i < text.length; i++) hash = (Math.imul(hash, 31) + text.charCodeAt(i)) | 0;
  return hash ^ (hash >>> 15);
}

/**
 * The records whose tag may stand twice: all that do, and a few more. Two bits for each hash tell, so that a million
 * tags that stand once are never put into a table.
 */
function perhapsRepeated<T>(records: readonly T[], tag: (record: T) => string): T[] {
  const slots = 2 ** Math.ceil(Math.log2(records.length * 16 + 64));
  const met = new Uint8Array(slots / 4);
  let any = false;
  for (const record of records) {
    const slot = hashOf(tag(record)) & (slots - 1);
    const shift = (slot & 3) * 2;
    const times = (met[slot >>> 2] >>> shift) & 3;
    if (times === 0) met[slot >>> 2] |= 1 << shift;
    else if (times === 1) {
      met[slot >>> 2] |= 2 << shift;
      any = true;
    }
  }
  if (!any) return [];
  return records.filter((record) => {
    const slot = hashOf(tag(record)) & (slots - 1);
    return ((met[slot >>> 2] >>> ((slot & 3) * 2)) & 2) !== 0;
  });
}

function grouped<T>(records: readonly T[], by: (record: T) => string): Iterable<T[]> {
  const groups = new Map<string, T[]>();
  for (const record of records) {
    const key = by(record);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [record]);
    else group.push(record);
  }
  return groups.values();
}

/**
 * Leaves out what is written twice. Of records that say the same the first is used; where they contradict each other
 * none is, since nothing tells which one is right, and the order of rows must not decide.
 */
export function leaveOutRepeats<T extends Placed>(records: readonly T[], rule: RepeatRule<T>): void {
  const perhaps = perhapsRepeated(records, rule.tag);
  for (const sameTag of grouped(perhaps, rule.tag)) {
    if (sameTag.length === 1) continue;
    for (const group of grouped(sameTag, rule.key)) if (group.length > 1) reportGroup(group, rule);
  }
}
