/** What was only noticed in a file, in few lines: how its columns and its words were read. */

import type { Problem } from '../season/season.ts';
import { problemWords } from './english-problems.ts';
import { alsoInRows } from './problem-groups.ts';
import { noticesTold, saidByColumn } from './told/alike-problems.ts';
import { cited } from './told/places.ts';

type Line = (alike: readonly Problem[]) => string;

const meaning = ({ column, details }: Problem): string => `${cited(column)} as ${details.column}`;
const words = ({ value, details }: Problem): string => `${cited(value)} as ${details.meant}`;

/** "in "Result", "yes" as fruit, "no" as none; in "Kept", "fridge" as refrigerated" */
function byColumn(alike: readonly Problem[], said: (problem: Problem) => string): string {
  return [...saidByColumn(alike, said)]
    .map(([column, list]) => `in ${cited(column)}, ${list.join(', ')}`)
    .join('; ');
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
      'refrigerated or frozen, write that word, or say so: --storage "YOUR WORD=frozen".',
  ],
  [
    'name-tidied',
    (alike) =>
      `Names read with plain spaces and letters: ${byColumn(alike, ({ value, details }) => `${cited(value)} as ${cited(details.meant)}`)}.`,
  ],
]);

/** A notice that stands for itself. */
const plainLine: Line = (alike) => {
  const { told, counted } = noticesTold(alike);
  const said = told.map(problemWords);
  const others = [counted.length === 0 ? '' : alsoInRows(counted)].filter((more) => more !== '');
  return [...said.map(({ message }) => message), ...others, said[0]!.fix].join(' ');
};

/** One line for each kind of notice, in the order in which each first appears. */
export function noticeLines(notices: readonly Problem[]): string[] {
  const kinds = [...new Set(notices.map(({ code }) => code))];
  return kinds.map((code) =>
    (LINES.get(code) ?? plainLine)(notices.filter((notice) => notice.code === code)),
  );
}
