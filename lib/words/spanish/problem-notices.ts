/** What was only noticed in a file, in few lines: how its columns and its words were read. */

import type { Problem } from '../../season/season.ts';
import { noticesTold, saidByColumn } from '../told/alike-problems.ts';
import { cited } from '../told/places.ts';
import { alsoInRows } from './problem-groups.ts';
import { MAP_YOURS } from './problem-sentence.ts';
import { problemWords } from './problems.ts';

type Line = (alike: readonly Problem[]) => string;

const meaning = ({ column, details }: Problem): string => `${cited(column)} como ${details.column}`;
const words = ({ value, details }: Problem): string => `${cited(value)} como ${details.meant}`;
const names = ({ value, details }: Problem): string => `${cited(value)} como ${cited(details.meant)}`;

/** en "Result", "yes" como fruit, "no" como none; en "Kept", "fridge" como refrigerated */
function byColumn(alike: readonly Problem[], said: (problem: Problem) => string): string {
  return [...saidByColumn(alike, said)]
    .map(([column, list]) => `en ${cited(column)}, ${list.join(', ')}`)
    .join('; ');
}

/** Notices that are told in one line, however many there are. */
const LINES: ReadonlyMap<string, Line> = new Map<string, Line>([
  [
    'column-guessed',
    (alike) =>
      `Columnas leídas como nuestras: ${alike.map(meaning).join(', ')}. Si alguna no es así, cámbiele el nombre o diga qué es: ` +
      `${MAP_YOURS}.`,
  ],
  [
    'column-unknown',
    (alike) =>
      `Columnas que no se usan: ${alike.map(({ column }) => cited(column)).join(', ')}. Si alguna contiene algo que ` +
      `hace falta, diga qué: ${MAP_YOURS}.`,
  ],
  [
    'word-guessed',
    (alike) => `Palabras leídas como nuestras, dondequiera que estén: ${byColumn(alike, words)}.`,
  ],
  [
    'storage-own',
    (alike) =>
      `Métodos de almacenamiento conservados como propios: ${byColumn(alike, ({ value }) => cited(value))}. Si alguno es fresh, room, ` +
      'refrigerated o frozen, escriba esa palabra, o dígalo: --storage "SU PALABRA=frozen".',
  ],
  ['name-tidied', (alike) => `Nombres leídos con espacios y letras sencillos: ${byColumn(alike, names)}.`],
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
