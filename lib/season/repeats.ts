/** The same tag or vial written twice: word for word, or in conflict. */

import type { ProblemCode } from './problems.ts';
import type { RowCells } from './row-cells.ts';

/** A record as it is compared: `key` must be unique, `content` is all that it says. */
export interface Keyed {
  readonly key: string;
  readonly content: object;
  readonly cells: RowCells;
}

interface RepeatCodes {
  readonly column: string;
  readonly repeated: ProblemCode;
  readonly conflict: ProblemCode;
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

function reportGroup(group: readonly Keyed[], { column, repeated, conflict }: RepeatCodes): void {
  const [first] = group;
  const fields = new Set(group.flatMap((each) => differences(first.content, each.content)));
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

/**
 * Leaves out what is written twice. Of records that say the same the first is used; where they contradict each other
 * none is, since nothing tells which one is right, and the order of rows must not decide.
 */
export function leaveOutRepeats(records: readonly Keyed[], codes: RepeatCodes): void {
  const groups = new Map<string, Keyed[]>();
  for (const record of records) {
    const group = groups.get(record.key);
    if (group === undefined) groups.set(record.key, [record]);
    else group.push(record);
  }
  for (const group of groups.values()) if (group.length > 1) reportGroup(group, codes);
}
