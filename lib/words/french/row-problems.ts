/** Problems of what a row says: tags, dates, ages, vials, controls, seeds. */
import type { RowProblemCode } from '../../season/problems.ts';
import type { Problem } from '../../season/season.ts';
import type { CellCode } from '../english-cell-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { moreOfVial } from '../told/alike-problems.ts';
import { cited } from '../told/places.ts';
import { CELL_PROBLEMS, named, the } from './cell-problems.ts';
import { wholeNumber } from './numbers.ts';

const other = ({ details, file }: Problem): string =>
  `ligne ${details.otherRow}${details.otherFile === file ? '' : ` de ${details.otherFile}`}`;

const DELETE_ONE = 'Supprimer l’une des deux lignes.';
const ONE_DATE = 'Corriger l’une des deux dates.';
const BOTH_YEARS = 'Vérifier les années des deux dates.';
const ONE_NUMBER = 'Corriger l’un des deux nombres.';
const WRONG_ONE = 'Corriger celui qui est faux.';
const DATE_OR_AS_OF = 'Corriger la date, ou donner un --as-of plus tardif.';

const SENSE_PROBLEMS: Readonly<Record<Exclude<RowProblemCode, CellCode>, ProblemSentence>> = {
  'tag-repeated': (problem) => [
    `l’étiquette ${cited(problem.value)} est déjà à la ${other(problem)}, avec le même contenu.`,
    DELETE_ONE,
  ],
  'tag-conflict': (problem) => [
    `l’étiquette ${cited(problem.value)} est aussi à la ${other(problem)}, avec un autre contenu ; aucune des deux lignes ne sert.`,
    'Corriger l’étiquette de l’une, ou supprimer la ligne fausse.',
  ],
  'vial-repeated': (problem) => [
    `le tube ${cited(problem.value)} est déjà à la ${other(problem)}, avec le même contenu.`,
    DELETE_ONE,
  ],
  'vial-conflict': (problem) => [
    `le tube ${cited(problem.value)} est aussi à la ${other(problem)}, avec un autre contenu ; aucune des deux lignes ne sert.`,
    'Donner à l’un un nom à lui, ou supprimer la ligne fausse.',
  ],
  'flowers-repeated': (problem) => [
    `la plante ${cited(problem.value)} est déjà à la ligne ${problem.details.firstRow}, pour les mêmes jours ; les deux comptent.`,
    'Supprimer l’une des deux lignes si elles parlent des mêmes fleurs.',
  ],
  'future-date': (problem) => [
    `${the(problem)} : c’est après ${problem.details.asOf}, le jour jusqu’auquel on lit.`,
    DATE_OR_AS_OF,
  ],
  'outcome-after-as-of': (problem) => [
    `le résultat a été vu le ${problem.value}, après ${problem.details.asOf} ; il compte comme en attente (pending).`,
    DATE_OR_AS_OF,
  ],
  'collected-after-pollination': ({ details }) => [
    `le pollen a été récolté le ${details.collected}, après avoir servi le ${details.pollinationDate} ; sa date n’est pas crue.`,
    ONE_DATE,
  ],
  'fresh-collected-earlier': ({ details }) => [
    `le pollen est dit frais mais avait ${details.days} jours ; son âge compte comme 0.`,
    'Corriger la date, ou dire comment le pollen a été gardé.',
  ],
  'age-missing': ({ details }) => [
    details.vial === ''
      ? 'le pollen a été stocké, mais rien ne dit son âge ; la ligne compte dans les taux simples, pas là où l’âge importe.'
      : `l’âge du pollen tient au tube ${cited(details.vial)}, dont la date n’est pas connue ; la ligne compte dans les taux simples, pas là où l’âge importe.`,
    details.vial === ''
      ? 'Remplir pollen_collected, pollen_age_days ou vial.'
      : 'Ajouter --vials et le nom du fichier des tubes, ou remplir pollen_collected.',
  ],
  'age-disagrees': ({ details, column }) => [
    `selon ${cited(column)} le pollen a ${details.otherDays} jours, selon ${details.usedColumn} ${details.days} jours ; ${details.days} sert.`,
    WRONG_ONE,
  ],
  'age-over-ten-years': ({ details }) => [
    `le pollen avait ${details.days} jours, plus de dix ans.`,
    'Vérifier l’année de sa récolte.',
  ],
  'vial-unknown': ({ value }) => [
    `le tube ${cited(value)} n’est pas dans le fichier des tubes.`,
    'L’y ajouter, ou corriger son nom ici.',
  ],
  'vial-before-collected': (problem) => [
    `le tube ${cited(problem.value)} a servi le ${problem.details.pollinationDate}, avant que son pollen ne soit récolté le ${problem.details.collected}${alsoOfVial(problem)}.`,
    `Corriger le tube ou l’une des dates ; ${REFILLED}`,
  ],
  'vial-beyond-doses': ({ details }) => [
    `le tube ${cited(details.vial)} a été rempli de ${details.doses} doses, mais ${details.uses} fleurs le nomment, les dernières à partir d’ici.`,
    'Corriger le tube de quelques fleurs, ou doses_filled dans le fichier des tubes.',
  ],
  'vial-father-differs': (problem) => [
    `le père est ${cited(problem.details.cross)}, mais le tube ${cited(problem.details.vial)} contient du pollen de ${cited(problem.details.register)} ; on croit la ligne${alsoOfVial(problem)}.`,
    `${WRONG_ONE.slice(0, -1)} ; ${REFILLED}`,
  ],
  'vial-storage-differs': (problem) => [
    `le stockage est ${cited(problem.details.cross)}, mais le tube ${cited(problem.details.vial)} est ${cited(problem.details.register)} ; on croit la ligne${alsoOfVial(problem)}.`,
    `${WRONG_ONE.slice(0, -1)} ; ${REFILLED}`,
  ],
  'year-stands-alone': (problem) => [
    `${the(problem)} : c’est à plus de cinq ans de toute autre date ; la plus proche est ${problem.details.nearest}.`,
    'Corriger l’année, si c’est une faute de frappe.',
  ],
  'own-pollen': ({ value }) => [
    `${cited(value)} a été pollinisée avec son propre pollen ; la ligne compte comme un croisement.`,
    'Écrire selfed dans la colonne control si c’était un témoin.',
  ],
  'selfed-with-other-pollen': ({ details, value }) => [
    `le témoin est dit autofécondé, mais du pollen de ${cited(value)} a été mis sur ${cited(details.seedParent)}.`,
    'Laisser control vide si c’était un croisement, sinon corriger le père.',
  ],
  'unpollinated-with-pollen': (problem) => [
    `la fleur est un témoin sans pollen, mais a ${named(problem)} ${cited(problem.value)}, ce qui n’est pas cru.`,
    'Laisser control vide si c’était un croisement, sinon vider la case.',
  ],
  'checked-before-pollination': (problem) => [
    `${the(problem)} : c’est avant la pollinisation du ${problem.details.pollinationDate} ; la date n’est pas crue.`,
    ONE_DATE,
  ],
  'checked-too-early': ({ details }) => [
    `un fruit a été noté ${details.days} jours après la pollinisation du ${details.pollinationDate}, avant qu’on puisse le distinguer d’une fleur fanée.`,
    'Vérifier les dates, ou écrire pending.',
  ],
  'checked-too-late': (problem) => [
    `${the(problem)} : c’est ${problem.details.days} jours après la pollinisation du ${problem.details.pollinationDate} ; la date n’est pas crue.`,
    BOTH_YEARS,
  ],
  'harvested-too-late': (problem) => [
    `${the(problem)} : c’est ${problem.details.days} jours après la pollinisation du ${problem.details.pollinationDate} ; la date n’est pas crue.`,
    BOTH_YEARS,
  ],
  'harvested-before-pollination': (problem) => [
    `${the(problem)} : c’est avant la pollinisation du ${problem.details.pollinationDate} ; la date n’est pas crue.`,
    ONE_DATE,
  ],
  'harvested-without-fruit': ({ details, value }) => [
    `une récolte le ${value} est notée, mais le résultat est ${details.outcome} ; on croit le résultat.`,
    'Écrire fruit comme résultat, ou vider la date de récolte.',
  ],
  'seeds-without-fruit': ({ details, value }) => [
    `${value} graines sont notées, mais le résultat est ${details.outcome} ; on croit le résultat.`,
    'Écrire fruit comme résultat, ou vider les graines.',
  ],
  'more-sown-than-seeds': ({ details, value }) => [
    `${value} graines ont été semées d’un fruit qui en avait ${details.seeds} ; le nombre de semées n’est pas cru.`,
    ONE_NUMBER,
  ],
  'more-germinated-than-sown': ({ details, value }) => [
    `${value} graines ont germé sur ${details.sown} semées ; le nombre de germées n’est pas cru.`,
    ONE_NUMBER,
  ],
  'opens-backwards': ({ details }) => [
    `la floraison finirait le ${details.to}, avant de commencer le ${details.from} ; aucune des deux dates n’est crue.`,
    ONE_DATE,
  ],
};

/** Further flowers of the same vial. */
const alsoOfVial = ({ details }: Problem): string => {
  const also = moreOfVial(details);
  if (also === null) return '';
  return ` ; de même pour ${also.more === 1 ? '1 autre fleur' : `${wholeNumber(also.more)} autres fleurs`} de ce tube (${also.more === 1 ? 'ligne' : 'lignes'} ${also.rows})`;
};

const REFILLED = 'un tube rempli de nouveau a besoin d’un nom à lui pour chaque remplissage.';

export const ROW_PROBLEMS: Readonly<Record<RowProblemCode, ProblemSentence>> = {
  ...CELL_PROBLEMS,
  ...SENSE_PROBLEMS,
};
