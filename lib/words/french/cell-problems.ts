/** Problems of a row or cell as it is written. The cell is named before a colon, so no article depends on it. */
import type { Problem } from '../../season/season.ts';
import type { CellCode } from '../english-cell-problems.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { cited } from '../told/places.ts';
import { dateOrderName } from './problem-sentence.ts';

const WORDS: Readonly<Record<string, string>> = {
  outcome: 'fruit, dropped, none, unknown ou pending',
  control: 'unpollinated ou selfed, ou laisser la case vide pour un croisement',
  bagged: 'yes ou no',
};

const UNITS: Readonly<Record<string, string>> = { fruit_weight_g: ' g', pollen_age_days: ' jours' };

const NAMES: Readonly<Record<string, string>> = {
  cross_id: 'étiquette (cross_id)',
  pollination_date: 'date de pollinisation',
  seed_parent: 'plante mère',
  pollen_parent: 'plante père',
  storage: 'stockage',
  outcome: 'résultat',
  season: 'saison',
  grower: 'cultivateur',
  wave: 'vague',
  bagged: 'sachet',
  control: 'témoin',
  vial: 'tube',
  note: 'remarque',
  pollen_collected: 'date de récolte du pollen',
  pollen_age_days: 'âge du pollen',
  checked_on: 'date du contrôle',
  harvested_on: 'date de récolte du fruit',
  fruit_weight_g: 'poids du fruit',
  identified_by: 'nommé par',
  collected: 'date de récolte',
  doses_left: 'doses restantes',
  doses_filled: 'doses remplies',
  thaws: 'décongélations',
  flowers: 'nombre de fleurs',
  seeds: 'nombre de graines',
  sown: 'graines semées',
  germinated: 'graines germées',
  opens_from: 'premier jour de floraison',
  opens_to: 'dernier jour de floraison',
};

/** What the cell holds, in words. */
export function named({ details, column }: Problem): string {
  const name = String(details.name ?? column ?? 'case');
  return NAMES[name] ?? name.replaceAll('_', ' ');
}

/** The cell and its value, before a colon. */
export const the = (problem: Problem): string => `${named(problem)} ${cited(problem.value)}`;

const unit = ({ details }: Problem): string => UNITS[String(details.name)] ?? '';
const sameOption = (kept: string | number, other: string | number): string => `--same "${kept}=${other}"`;
const times = (uses: string | number): string => `${uses} fois`;
const isWeight = ({ details }: Problem): boolean => details.name === 'fruit_weight_g';

const POLLEN: ReadonlySet<string> = new Set(['pollen_parent', 'storage']);

const ISO = 'L’écrire AAAA-MM-JJ, par exemple 2025-06-14.';
const CORRECT = 'Le corriger, ou laisser la case vide.';
const IF_RIGHT = 'Rien à faire si c’est juste.';

export const CELL_PROBLEMS: Readonly<Record<CellCode, ProblemSentence>> = {
  'total-row': ({ value }) => [
    `la ligne est un total (${cited(value)}), pas une fiche.`,
    'Supprimer la ligne, ou tenir les totaux sur une feuille à part ; rien d’autre ne manque.',
  ],
  'row-short': ({ details }) => [
    `la ligne finit avant la colonne ${cited(details.meant)} ; ce qui manque à la fin compte comme vide, dans d’autres lignes aussi.`,
    'Rien à faire, à moins qu’un séparateur ne manque dans la ligne.',
  ],
  'row-nearly-blank': ({ value }) => [
    `la ligne contient ${cited(value)}, mais rien de ce qui est nécessaire.`,
    'Remplir la ligne, ou la supprimer.',
  ],
  'row-ragged': ({ details }) => [
    `la ligne a ${details.cells} ${Number(details.cells) < 2 ? 'case' : 'cases'} là où les en-têtes en font ${details.expected} : on ne sait pas laquelle va où.`,
    'Chercher un séparateur en trop ou en moins ; mettre entre guillemets une case qui en contient un.',
  ],
  'header-repeated': () => ['la ligne répète les en-têtes.', 'La supprimer.'],
  'quote-not-closed': () => [
    'un guillemet est ouvert et jamais fermé.',
    'L’enlever ou le fermer ; les lignes suivantes sont lues comme s’il n’avait pas de sens.',
  ],
  'control-character': () => ['la ligne contient un caractère qu’aucun texte n’a.', 'Retaper la ligne.'],
  'cell-blank': (problem) => [
    `${named(problem)} : la case est vide.`,
    problem.details.name === 'outcome'
      ? 'Écrire fruit, dropped, none, unknown (étiquette perdue) ou pending (trop tôt pour le dire).'
      : problem.details.kind === 'crosses' && POLLEN.has(String(problem.details.name))
        ? 'La remplir ; pour une fleur qui n’a pas reçu de pollen écrire unpollinated dans la colonne control.'
        : 'La remplir.',
  ],
  'cell-error': (problem) => [
    `${named(problem)} : la case contient une erreur du tableur, ${cited(problem.value)}.`,
    'Réparer la formule dans le tableur, ou taper la valeur.',
  ],
  'date-does-not-exist': (problem) => [
    `${the(problem)} : cette date n’existe pas${problem.details.order ? `, lue comme ${dateOrderName(problem.details.order)}` : ''}.`,
    ISO,
  ],
  'date-not-understood': (problem) => [`${the(problem)} : ce n’est pas une date.`, ISO],
  'date-serial': (problem) => [
    `${the(problem)} : cela ressemble au numéro de jour d’un tableur.`,
    'Mettre la colonne au format date (AAAA-MM-JJ) avant d’enregistrer en CSV.',
  ],
  'date-partial': (problem) => [
    `${the(problem)} : ce n’est pas un jour entier.`,
    'Écrire le jour, le mois et l’année : AAAA-MM-JJ, par exemple 2025-06-14.',
  ],
  'date-implausible': (problem) => [
    `${the(problem)} : ce n’est pas entre 1950 et 2100.`,
    'Vérifier l’année.',
  ],
  'number-not-understood': (problem) => [
    `${the(problem)} : ce n’est pas un nombre${isWeight(problem) ? '' : ' entier'}.`,
    `Écrire un nombre${isWeight(problem) ? '' : ' entier'} en chiffres, sans mot ni marque entre les milliers, ou laisser la case vide.`,
  ],
  'number-negative': (problem) => [`${the(problem)} : c’est sous zéro.`, CORRECT],
  'number-absurd': (problem) => [
    `${the(problem)} : c’est plus qu’il ne peut être (au plus ${problem.details.highest}${unit(problem)}).`,
    CORRECT,
  ],
  'number-converted': (problem) => [
    `${the(problem)} : lu comme ${problem.details.meant}${unit(problem)}, ici et partout où cela se trouve.`,
    IF_RIGHT,
  ],
  'number-is-date': (problem) => [
    `${the(problem)} : c’est une date là où un nombre est attendu ; elle ne sert pas.`,
    'Si toute la colonne contient des dates, lui donner un autre en-tête ; sinon écrire le nombre, ou laisser la case vide.',
  ],
  'word-not-understood': (problem) => [
    `${the(problem)} : ce mot n’est pas connu ici${problem.details.suggestion ? ` ; est-ce ${problem.details.suggestion} ?` : '.'}`,
    `Écrire ${WORDS[String(problem.details.name)] ?? 'un des mots que la colonne peut contenir'}.`,
  ],
  'word-guessed': (problem) => [
    `${the(problem)} : lu comme ${problem.details.meant}, ici et partout où cela se trouve.`,
    IF_RIGHT,
  ],
  'storage-own': (problem) => [
    `${the(problem)} : gardé comme une méthode à part, ici et partout où cela se trouve.`,
    `Rien à faire si c’est juste ; sinon écrire fresh, room, refrigerated ou frozen, ou le dire : --storage "${problem.value}=frozen".`,
  ],
  'storage-slip': (problem) => [
    `${the(problem)} : gardé comme une méthode à part ; est-ce ${problem.details.suggestion} ?`,
    `Si oui, écrire ${problem.details.suggestion}, ou le dire : --storage "${problem.value}=${problem.details.suggestion}".`,
  ],
  'name-spellings': (problem) => {
    const { spelling, uses, usual, usualUses } = problem.details;
    const plant = String(problem.details.name).endsWith('parent');
    return [
      `${cited(spelling)} (${times(uses)}) et ${cited(usual)} (${times(usualUses)}) semblent être ` +
        `${plant ? 'une seule plante' : 'un seul mot'}, mais restent séparés.`,
      plant
        ? `Écrire les deux pareil, ou le dire : ${sameOption(usual, spelling)}.`
        : 'Écrire les deux pareil s’ils n’en font qu’un.',
    ];
  },
  'name-slip': ({ details: { name, spelling, uses, usual, usualUses } }) => [
    `${cited(spelling)} (${times(uses)}) pourrait être une faute de frappe pour ${cited(usual)} (${times(usualUses)}) ; les deux restent séparés.`,
    String(name).endsWith('parent')
      ? `S’ils sont une seule plante, le corriger ou le dire : ${sameOption(usual, spelling)}.`
      : 'S’ils n’en font qu’un, le corriger.',
  ],
  'name-garbled': (problem) => [
    `${the(problem)} : des lettres ont été perdues ou brouillées quand le fichier a été enregistré.`,
    'Ouvrir la feuille d’origine et l’enregistrer en CSV (UTF-8) ou .xlsx ; ou retaper le nom, partout.',
  ],
  'name-tidied': (problem) => [
    `${the(problem)} : lu comme ${cited(problem.details.meant)}, avec des espaces et des lettres simples.`,
    IF_RIGHT,
  ],
};
