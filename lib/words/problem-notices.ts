/** What was only noticed in a file, in few lines: how its columns and its words were read. */

import type { Problem } from '../season/season.ts';
import { problemWords } from './english-problems.ts';
import { alsoInRows } from './problem-groups.ts';
import { cited } from './problem-sentence.ts';

type Line = (alike: readonly Problem[]) => string;

const meaning = ({ column, details }: Problem): string => `${cited(column)} as ${details.column}`;
const words = ({ value, details }: Problem): string => `${cited(value)} as ${details.meant}`;

/** "in "Result", "yes" as fruit, "no" as none; in "Kept", "fridge" as refrigerated" */
function byColumn(alike: readonly Problem[], said: (problem: Problem) => string): string {
  const columns = new Map<string, string[]>();
  for (const problem of alike) {
    const column = problem.column ?? '';
    columns.set(column, [...(columns.get(column) ?? []), said(problem)]);
  }
  return [...columns].map(([column, list]) => `in ${cited(column)}, ${list.join(', ')}`).join('; ');
}

/** Notices that are told in one line, however many there are. */
const LINES: ReadonlyMap<string, Line> = new Map<string, Line>([
  [
    'column-guessed',
    (alike) =>
      `Columns read as ours: ${alike.map(meaning).join(', ')}. If one is wrong, rename it, or say what it is: ` +
      '--map "THEIR HEADER=column".',
  ],
  [
    'column-unknown',
    (alike) =>
      `Columns not used: ${alike.map(({ column }) => cited(column)).join(', ')}. If one holds something that is ` +
      'needed, say what: --map "THEIR HEADER=column".',
  ],
  ['word-guessed', (alike) => `Words read as ours, wherever they stand: ${byColumn(alike, words)}.`],
  [
    'storage-own',
    (alike) =>
      `Methods of storage kept as your own: ${byColumn(alike, ({ value }) => cited(value))}. If one is fresh, room, ` +
      'refrigerated or frozen, write that word.',
  ],
  [
    'name-tidied',
    (alike) =>
      `Names read with plain spaces and letters: ${byColumn(alike, ({ value, details }) => `${cited(value)} as ${cited(details.meant)}`)}.`,
  ],
]);

/** So many notices of a kind are told one by one, such as columns of dates; of more the first, and how many. */
const TOLD_ONE_BY_ONE = 4;

/** A notice that stands for itself. */
const plainLine: Line = (alike) => {
  const few = alike.length <= TOLD_ONE_BY_ONE;
  const said = (few ? alike : alike.slice(0, 1)).map(problemWords);
  const others = few ? [] : [alsoInRows(alike)].filter((more) => more !== '');
  return [...said.map(({ message }) => message), ...others, said[0]!.fix].join(' ');
};

/** One line for each kind of notice, in the order in which each first appears. */
export function noticeLines(notices: readonly Problem[]): string[] {
  const kinds = [...new Set(notices.map(({ code }) => code))];
  return kinds.map((code) =>
    (LINES.get(code) ?? plainLine)(notices.filter((notice) => notice.code === code)),
  );
}
