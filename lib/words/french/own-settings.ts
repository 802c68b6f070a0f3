/** The words of the page for one's own file about its settings and about a copy to share, in French. */
import type { FailureCode, FailureDetails } from '../english-failures.ts';
import { type PageRefusals, pageRefusal } from '../told/page-fixes.ts';
import { cited } from '../told/places.ts';
import { failureWords } from './failures.ts';

/** What the page says at its settings. */
export const OWN_SETTINGS = {
  more: 'Autres réglages',
  moreHint: 'La plupart des saisons n’en demandent aucun. Ils comptent au moment du calcul.',
  levelLabel: 'Sur 100 fourchettes, combien doivent contenir la vérité ?',
  levelHint: 'Laissé vide : 95.',
  asOfLabel: 'Jour jusqu’auquel les choses se sont passées',
  asOfHint:
    'Laissé vide : le dernier jour de vos fichiers. Il appartient à cette saison, donc il n’est pas enregistré avec les réglages.',
  ageLegend: 'Comment compte l’âge du pollen',
  ageBoth: 'Des deux façons, selon ce qu’en disent vos propres fleurs',
  ageDays: 'Chaque jour autant',
  ageLog: 'Les premiers jours le plus',
  dateLegend: 'Jours qu’un tableur a écrits en nombres, comme 45809',
  dateUnsaid: 'Comptés comme le dit le fichier, sinon à partir de 1900',
  date1900: 'Comptés à partir de 1900',
  date1904: 'Comptés à partir de 1904, comme dans d’anciennes feuilles faites sur un Mac',
  map: {
    legend: 'Une de vos colonnes qui n’a pas été comprise',
    first: 'Votre colonne',
    second: 'Ce qu’elle contient',
    flowers: null,
    add: 'La lire ainsi',
    said: (header: string, column: string): string => `${cited(header)} est ${column}`,
  },
  same: {
    legend: 'Deux noms d’une même plante',
    first: 'Nom à garder',
    second: 'Autre nom',
    flowers: null,
    add: 'Ajouter ces noms',
    said: (first: string, second: string): string => `${second} est ${first}`,
  },
  must: {
    legend: 'Croisements que la saison prochaine doit essayer',
    first: 'Mère',
    second: 'Père',
    flowers: 'Le moins de fleurs',
    add: 'Ajouter ce croisement',
    said: (names: string, flowers: number): string => `${names} : au moins ${flowers}`,
  },
  atMost: {
    legend: 'Le plus de fleurs pour un père',
    first: 'Père',
    second: 'Sur quelle mère',
    flowers: 'Le plus de fleurs',
    add: 'Ajouter cette limite',
    said: (names: string, flowers: number): string => `${names} : au plus ${flowers}`,
  },
  wishHint: 'Cela vaut pour le plan, qui demande les fleurs que vous attendez la saison prochaine.',
  anySeedParent: 'toutes ensemble',
  choosePlant: 'choisir',
  takeOut: (what: string): string => `Enlever : ${what}`,
  incomplete: {
    map: 'Choisir d’abord votre colonne et ce qu’elle contient.',
    same: 'Choisir d’abord deux noms différents.',
    must: 'Choisir les deux parents et un nombre entier de fleurs à partir de 1.',
    atMost: 'Choisir le père et un nombre entier de fleurs.',
  },
  alike: (kept: string, other: string): string =>
    `Est-ce que ${cited(kept)} et ${cited(other)} sont la même plante ?`,
  alikeYes: (kept: string): string => `Oui : une seule plante, ${cited(kept)}`,
  alikeNo: 'Non : deux plantes',
  wrongLevel:
    'Combien de fourchettes contiennent la vérité demande un nombre au-dessus de 0 et au-dessous de 100.',
  wrongAsOf: 'Le jour jusqu’auquel les choses se sont passées demande un jour qui existe, AAAA-MM-JJ.',
  fileRead: (name: string): string => `Les réglages de ${name} sont utilisés.`,
} as const;

/** What the page says where a copy to share is made. */
export const OWN_SHARING = {
  summary: 'Faire une copie à partager',
  what: 'Dans une copie codée, plantes, tubes, étiquettes et cultivateurs sont sous des codes, toutes les dates sont décalées du même nombre de jours, et les notes sont laissées de côté. Les âges, les matins et les comptes restent vrais.',
  legend: 'Ce qui peut être montré',
  codes: 'Chaque croisement, sous des codes ; d’autres peuvent le relire et l’analyser',
  summaryOnly: 'Le résumé seul : rien sur une seule plante, un seul couple ou un seul tube',
  keyLabel: 'Le fichier de clé d’une copie précédente, pour que les mêmes plantes gardent leurs codes',
  keyHint: 'Laissé vide : une nouvelle clé est faite.',
  button: 'Faire la copie',
  making:
    'La copie est calculée à partir de ses propres fichiers ; cela prend à peu près autant que le bilan.',
  stop: 'Arrêter de la faire',
  stopped: 'Arrêté. Aucune copie n’a été faite.',
  ready:
    'Vos noms, dates et notes ont été cherchés dans la copie : aucun n’y est. Enregistrer ses fichiers, et la clé à part.',
  save: (name: string): string => `Enregistrer ${name}`,
  saveKey: 'Enregistrer la clé, pour vous seul',
  keyRead: (name: string): string => `${name} est la clé de copies codées : la prochaine copie l’utilise.`,
} as const;

const SAVED_SETTINGS = 'Choisir un fichier de réglages que cette page ou la commande a enregistré.';

const REFUSALS: PageRefusals<FailureCode, FailureDetails> = {
  failureWords,
  options: {
    '--must': `« ${OWN_SETTINGS.must.legend} »`,
    '--at-most': `« ${OWN_SETTINGS.atMost.legend} »`,
    '--worth': '« Combien doivent nouer »',
    '--level': '« Combien de fourchettes contiennent la vérité »',
  },
  fixes: {
    'wish-without-flowers':
      'Dire ce que chaque plante offrira sous « Fleurs attendues la saison prochaine », ou enlever le souhait.',
    'wish-unclear': 'Donner un autre nom à l’une des plantes dans la feuille.',
    'plant-unknown': 'Enlever le souhait, et choisir la plante dans la liste.',
    'option-value': 'Le corriger dans le fichier de réglages, et choisir de nouveau ce fichier.',
    'settings-not-json': SAVED_SETTINGS,
    'settings-version': SAVED_SETTINGS,
    'key-not-ours': 'Choisir la clé enregistrée avec une copie précédente, ou aucune.',
    'dates-too-far': 'Corriger les dates, ou faire la copie avec une nouvelle clé.',
  },
};

/** Why nothing was done, in the command's words, and what can be done about it here. */
export function refusedOnPage(code: FailureCode, details: FailureDetails): string {
  return pageRefusal(code, details, REFUSALS);
}
