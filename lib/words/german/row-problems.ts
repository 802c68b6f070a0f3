/** Was an einer Zeile nicht stimmt. Vor jedem Satz steht die Zeile. */

import type { RowProblemCode } from '../../season/problems.ts';
import type { Problem } from '../../season/season.ts';
import type { CellCode } from '../english-cell-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { moreOfVial } from '../told/alike-problems.ts';
import { CELL_PROBLEMS, named, the } from './cell-problems.ts';
import { wholeNumber } from './numbers.ts';
import { cited } from './problem-sentence.ts';

const other = ({ details, file }: Problem): string =>
  `Zeile ${details.otherRow}${details.otherFile === file ? '' : ` von ${details.otherFile}`}`;

const ONE_ROW = 'Eine der beiden Zeilen löschen.';
const ONE_DATE = 'Eines der beiden Daten berichtigen.';
const ONE_NUMBER = 'Eine der beiden Zahlen berichtigen.';
const THE_WRONG = 'Berichtigen, was falsch ist.';
const YEARS = 'Die Jahre beider Daten prüfen.';

const SENSE_PROBLEMS: Readonly<Record<Exclude<RowProblemCode, CellCode>, ProblemSentence>> = {
  'tag-repeated': (problem) => [
    `das Etikett ${cited(problem.value)} steht schon in ${other(problem)}, mit demselben Inhalt.`,
    ONE_ROW,
  ],
  'tag-conflict': (problem) => [
    `das Etikett ${cited(problem.value)} steht auch in ${other(problem)}, mit anderem Inhalt; keine der Zeilen wird verwendet.`,
    'Das Etikett der einen berichtigen, oder die falsche Zeile löschen.',
  ],
  'vial-repeated': (problem) => [
    `das Röhrchen ${cited(problem.value)} steht schon in ${other(problem)}, mit demselben Inhalt.`,
    ONE_ROW,
  ],
  'vial-conflict': (problem) => [
    `das Röhrchen ${cited(problem.value)} steht auch in ${other(problem)}, mit anderem Inhalt; keine der Zeilen wird verwendet.`,
    'Einem davon einen eigenen Namen geben, oder die falsche Zeile löschen.',
  ],
  'flowers-repeated': (problem) => [
    `die Pflanze ${cited(problem.value)} steht schon in Zeile ${problem.details.firstRow}, für dieselben Tage; beide zählen.`,
    'Eine der beiden Zeilen löschen, wenn sie dieselben Blüten meinen.',
  ],
  'future-date': (problem) => [
    `${the(problem)} liegt nach dem ${problem.details.asOf}, dem Tag, bis zu dem gelesen wird.`,
    'Das Datum berichtigen, oder ein späteres --as-of angeben.',
  ],
  'outcome-after-as-of': (problem) => [
    `das Ergebnis wurde am ${problem.value} gesehen, nach dem ${problem.details.asOf}; es zählt als pending.`,
    'Das Datum berichtigen, oder ein späteres --as-of angeben.',
  ],
  'collected-after-pollination': ({ details }) => [
    `der Pollen wurde am ${details.collected} gesammelt, nach seiner Verwendung am ${details.pollinationDate}; seinem Datum wird nicht geglaubt.`,
    ONE_DATE,
  ],
  'fresh-collected-earlier': ({ details }) => [
    `der Pollen heißt frisch, war aber ${details.days} Tage alt; sein Alter gilt als 0.`,
    'Das Datum berichtigen, oder sagen, wie der Pollen gelagert wurde.',
  ],
  'age-missing': ({ details }) => [
    details.vial === ''
      ? 'der Pollen war gelagert, aber nichts sagt sein Alter; die Zeile zählt in einfachen Raten, nicht, wo das Alter zählt.'
      : `das Alter des Pollens hängt am Röhrchen ${cited(details.vial)}, dessen Datum nicht bekannt ist; die Zeile zählt in einfachen Raten, nicht, wo das Alter zählt.`,
    details.vial === ''
      ? 'pollen_collected, pollen_age_days oder vial ausfüllen.'
      : 'Mit --vials die Datei der Röhrchen angeben, oder pollen_collected ausfüllen.',
  ],
  'age-disagrees': ({ details, column }) => [
    `nach ${cited(column)} ist der Pollen ${details.otherDays} Tage alt, nach ${details.usedColumn} ${details.days} Tage; verwendet wird ${details.days}.`,
    THE_WRONG,
  ],
  'age-over-ten-years': ({ details }) => [
    `der Pollen war ${details.days} Tage alt, mehr als zehn Jahre.`,
    'Das Jahr prüfen, in dem er gesammelt wurde.',
  ],
  'vial-unknown': ({ value }) => [
    `das Röhrchen ${cited(value)} steht nicht in der Datei der Röhrchen.`,
    'Dort ergänzen, oder hier seinen Namen berichtigen.',
  ],
  'vial-before-collected': (problem) => [
    `das Röhrchen ${cited(problem.value)} wurde am ${problem.details.pollinationDate} verwendet, bevor sein Pollen am ${problem.details.collected} gesammelt wurde${alsoOfVial(problem)}.`,
    `Das Röhrchen oder eines der Daten berichtigen; ${REFILLED}`,
  ],
  'vial-beyond-doses': ({ details }) => [
    `Röhrchen ${cited(details.vial)} wurde mit ${details.doses} Dosen gefüllt, aber ${details.uses} Blüten nennen es, die letzten ab hier.`,
    'Das Röhrchen einiger Blüten berichtigen, oder doses_filled in der Datei der Röhrchen.',
  ],
  'vial-father-differs': (problem) => [
    `der Pollenspender ist ${cited(problem.details.cross)}, aber Röhrchen ${cited(problem.details.vial)} enthält Pollen von ${cited(problem.details.register)}; geglaubt wird der Zeile${alsoOfVial(problem)}.`,
    `${THE_WRONG.slice(0, -1)}; ${REFILLED}`,
  ],
  'vial-storage-differs': (problem) => [
    `die Lagerung ist ${cited(problem.details.cross)}, aber Röhrchen ${cited(problem.details.vial)} ist ${cited(problem.details.register)}; geglaubt wird der Zeile${alsoOfVial(problem)}.`,
    `${THE_WRONG.slice(0, -1)}; ${REFILLED}`,
  ],
  'year-stands-alone': (problem) => [
    `${the(problem)} liegt mehr als fünf Jahre von jedem anderen Datum entfernt; das nächste ist ${problem.details.nearest}.`,
    'Das Jahr berichtigen, wenn es ein Tippfehler ist.',
  ],
  'own-pollen': ({ value }) => [
    `${cited(value)} wurde mit eigenem Pollen bestäubt; die Zeile zählt als Kreuzung.`,
    'In die Spalte control selfed schreiben, wenn es eine Kontrolle war.',
  ],
  'selfed-with-other-pollen': ({ details, value }) => [
    `die Kontrolle heißt selfed, aber auf ${cited(details.seedParent)} kam Pollen von ${cited(value)}.`,
    'control leer lassen, wenn es eine Kreuzung war, sonst den Pollenspender berichtigen.',
  ],
  'unpollinated-with-pollen': (problem) => [
    `die Blüte ist eine unbestäubte Kontrolle, aber ${named(problem)} ist angegeben: ${cited(problem.value)}; dem wird nicht geglaubt.`,
    'control leer lassen, wenn es eine Kreuzung war, sonst die Zelle leeren.',
  ],
  'checked-before-pollination': (problem) => [
    `${the(problem)} liegt vor der Bestäubung am ${problem.details.pollinationDate}; dem wird nicht geglaubt.`,
    ONE_DATE,
  ],
  'checked-too-early': ({ details }) => [
    `eine Frucht wurde ${details.days} Tage nach der Bestäubung am ${details.pollinationDate} vermerkt, bevor sie von einer welkenden Blüte zu unterscheiden ist.`,
    'Die Daten prüfen, oder pending schreiben.',
  ],
  'checked-too-late': (problem) => [
    `${the(problem)} liegt ${problem.details.days} Tage nach der Bestäubung am ${problem.details.pollinationDate}; dem wird nicht geglaubt.`,
    YEARS,
  ],
  'harvested-too-late': (problem) => [
    `${the(problem)} liegt ${problem.details.days} Tage nach der Bestäubung am ${problem.details.pollinationDate}; dem wird nicht geglaubt.`,
    YEARS,
  ],
  'harvested-before-pollination': (problem) => [
    `${the(problem)} liegt vor der Bestäubung am ${problem.details.pollinationDate}; dem wird nicht geglaubt.`,
    ONE_DATE,
  ],
  'harvested-without-fruit': ({ details, value }) => [
    `eine Ernte am ${value} ist vermerkt, aber das Ergebnis ist ${details.outcome}; geglaubt wird dem Ergebnis.`,
    'Als Ergebnis fruit schreiben, oder das Erntedatum leeren.',
  ],
  'seeds-without-fruit': ({ details, value }) => [
    `${value} Samen sind vermerkt, aber das Ergebnis ist ${details.outcome}; geglaubt wird dem Ergebnis.`,
    'Als Ergebnis fruit schreiben, oder die Samen leeren.',
  ],
  'more-sown-than-seeds': ({ details, value }) => [
    `${value} Samen wurden aus einer Frucht gesät, die ${details.seeds} hatte; der Zahl gesäter wird nicht geglaubt.`,
    ONE_NUMBER,
  ],
  'more-germinated-than-sown': ({ details, value }) => [
    `${value} Samen keimten von ${details.sown} gesäten; der Zahl gekeimter wird nicht geglaubt.`,
    ONE_NUMBER,
  ],
  'opens-backwards': ({ details }) => [
    `die Blüte soll am ${details.to} enden, bevor sie am ${details.from} beginnt; keinem der Daten wird geglaubt.`,
    ONE_DATE,
  ],
};

const alsoOfVial = ({ details }: Problem): string => {
  const also = moreOfVial(details);
  if (also === null) return '';
  return `; ebenso bei ${also.more === 1 ? '1 weiteren Blüte' : `${wholeNumber(also.more)} weiteren Blüten`} dieses Röhrchens (${also.more === 1 ? 'Zeile' : 'Zeilen'} ${also.rows})`;
};

const REFILLED = 'ein Röhrchen, das neu gefüllt wurde, braucht für jede Füllung einen eigenen Namen.';

export const ROW_PROBLEMS: Readonly<Record<RowProblemCode, ProblemSentence>> = {
  ...CELL_PROBLEMS,
  ...SENSE_PROBLEMS,
};
