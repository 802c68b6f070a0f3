/** What was only noticed in a file, in few lines. */
import type { Problem } from '../../season/season.ts';
import { noticesTold, saidByColumn } from '../told/alike-problems.ts';
import { cited } from '../told/places.ts';
import { alsoInRows } from './problem-groups.ts';
import { problemWords } from './problems.ts';

type Line = (alike: readonly Problem[]) => string;

const meaning = ({ column, details }: Problem): string => `${cited(column)} comme ${details.column}`;
const words = ({ value, details }: Problem): string => `${cited(value)} comme ${details.meant}`;

function byColumn(alike: readonly Problem[], said: (problem: Problem) => string): string {
  return [...saidByColumn(alike, said)]
    .map(([column, list]) => `dans ${cited(column)}, ${list.join(', ')}`)
    .join(' ; ');
}

/** Notices that are told in one line, however many there are. */
const LINES: ReadonlyMap<string, Line> = new Map<string, Line>([
  [
    'column-guessed',
    (alike) =>
      `Colonnes lues comme les nôtres : ${alike.map(meaning).join(', ')}. Si l’une est fausse, la renommer, ou dire ce qu’elle est : ` +
      '--map "VOTRE EN-TÊTE=colonne".',
  ],
  [
    'column-unknown',
    (alike) =>
      `Colonnes non utilisées : ${alike.map(({ column }) => cited(column)).join(', ')}. Si l’une contient quelque chose de ` +
      'nécessaire, dire quoi : --map "VOTRE EN-TÊTE=colonne".',
  ],
  [
    'word-guessed',
    (alike) => `Mots lus comme les nôtres, partout où ils se trouvent : ${byColumn(alike, words)}.`,
  ],
  [
    'storage-own',
    (alike) =>
      `Méthodes de stockage gardées comme les vôtres : ${byColumn(alike, ({ value }) => cited(value))}. Si l’une est fresh, room, ` +
      'refrigerated ou frozen, écrire ce mot, ou le dire : --storage "VOTRE MOT=frozen".',
  ],
  [
    'name-tidied',
    (alike) =>
      `Noms lus avec des espaces et des lettres simples : ${byColumn(alike, ({ value, details }) => `${cited(value)} comme ${cited(details.meant)}`)}.`,
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
