/** The words of the page on which growers try a file of their own, in French. */
import type { FileKind, Problem } from '../../season/season.ts';
import { dateAnswers, type PageFixes, pageFix } from '../told/page-fixes.ts';
import { cited } from '../told/places.ts';
import { STAGES, type Stage } from '../told/stages.ts';
import { capitalised, counted, wholeNumber } from './numbers.ts';
import { dateOrderName } from './problem-sentence.ts';

const DOES: Readonly<Record<Stage, string>> = {
  reading: 'lecture des fichiers',
  counting: 'compte des fleurs et des fruits',
  model: 'ajustement du modèle des âges, des plantes et des couples',
  vials: 'jugement des tubes',
  'like-for-like': 'comparaison à couples égaux',
  rest: 'calcul de ce qui trancherait',
  drawing: 'dessin des graphiques',
};

/** Which step of how many, and what it does. */
export function stageSaid(stage: Stage): string {
  return `Étape ${STAGES.indexOf(stage) + 1} sur ${STAGES.length} : ${DOES[stage]}.`;
}

const KINDS: Readonly<Record<FileKind, string>> = {
  crosses: 'croisements : une ligne par fleur',
  vials: 'tubes : une ligne par tube de pollen',
  flowers: 'fleurs attendues la saison prochaine',
  unknown: 'aucune des trois sortes de fichiers',
};

/** What kind of file it is. */
export function kindSaid(kind: FileKind): string {
  return KINDS[kind];
}

/** What a file is, and how many of its rows count. */
export function fileSaid(file: {
  readonly kind: FileKind;
  readonly rows: number;
  readonly used: number;
  readonly leftOut: number;
}): string {
  const { kind, rows, used, leftOut } = file;
  return `${capitalised(kindSaid(kind))}. ${counted(rows, 'ligne')}, ${counted(used, 'utilisée')}, ${counted(leftOut, 'laissée')} de côté.`;
}

const EXPORT_SPREADSHEET =
  'L’ouvrir dans votre tableur, choisir « Enregistrer sous » ou « Télécharger », prendre CSV (UTF-8), et choisir ce fichier ici.';
const ANSWER_BELOW = 'Répondre à la question ci-dessous.';
const LATER_DAY = 'Corriger la date, ou donner un jour plus tardif sous « Autres réglages ».';
const WRITE_PLAINLY = 'Si c’est faux, écrire les dates AAAA-MM-JJ.';

const FIXES: PageFixes = {
  byCode: {
    'spreadsheet-file': EXPORT_SPREADSHEET,
    'not-text': `Choisir la feuille elle-même. ${EXPORT_SPREADSHEET}`,
    'kind-unknown':
      'Dire ci-dessous ce qu’est le fichier, ou vérifier que sa première ligne contient les en-têtes.',
    'column-missing': 'Dire ci-dessous laquelle de vos colonnes c’est, ou ajouter la colonne à la feuille.',
    'column-unknown': 'Si elle contient quelque chose qui compte, dire quoi sous « Autres réglages ».',
    'column-guessed': 'Si c’est faux, renommer la colonne dans la feuille.',
    'vial-unknown': 'Choisir aussi votre fichier de tubes, ou remplir pollen_collected.',
    'future-date': LATER_DAY,
    'outcome-after-as-of': LATER_DAY,
    'name-slip': 'Dire ci-dessous si c’est une seule plante, ou le corriger dans la feuille.',
    'date-serial-read':
      'Si toutes sont décalées de quatre ans, dire sous « Autres réglages » à partir de quelle année elles sont comptées ; sinon, rien à faire.',
    'date-order-unclear': ANSWER_BELOW,
    'date-order-mixed':
      'Écrire toutes les dates AAAA-MM-JJ, ou répondre à la question ci-dessous : les lignes écrites autrement sont alors laissées de côté.',
    'date-order-decided': WRITE_PLAINLY,
    'date-order-from-neighbour': WRITE_PLAINLY,
  },
  rename: 'Renommer celle qui n’est pas voulue, et choisir de nouveau le fichier.',
  answer: ANSWER_BELOW,
  mend: 'Le corriger dans la feuille, et choisir de nouveau le fichier.',
};

/** The fix of a problem as the page puts it; `fix` is the command's. */
export function fixOnPage(problem: Problem, fix: string): string {
  return pageFix(problem, fix, FIXES);
}

/** What a refusal's fix would be on the page, by its code. */
export const REFUSAL_FIXES: Readonly<Record<string, string>> = {
  'question-open': ANSWER_BELOW,
  'no-usable-row': 'Le corriger dans la feuille, l’enregistrer, et choisir de nouveau le fichier.',
  'no-crosses':
    'Choisir aussi le fichier avec une ligne par fleur pollinisée. Un fichier se reconnaît à ses colonnes.',
  'no-usable-outcome':
    'Remplir la colonne outcome avec fruit, dropped ou none une fois les fleurs regardées.',
};

/** The question which of its numbers is the day, and its answers. */
export function dateOrderQuestion(problem: Problem): {
  readonly question: string;
  readonly answers: readonly (readonly [order: string, label: string])[];
} {
  return {
    question: `Comment sont écrites les dates de ${cited(problem.column)} ? L’une d’elles est ${cited(problem.value)}.`,
    answers: dateAnswers(problem, dateOrderName, ' : '),
  };
}

/** How many kinds of problem are not listed. */
export function groupsLeft(groups: number): string {
  return `${counted(groups, 'autre sorte', 'autres sortes')} de problèmes ${groups === 1 ? 'n’est pas nommée' : 'ne sont pas nommées'}.`;
}

/** What the page says at its places. */
export const OWN_SEASON = {
  title: 'Votre propre saison',
  description: 'Choisir la liste de vos croisements ; cette page compte, compare et écrit votre bilan.',
  needsScript:
    'Cette page calcule votre bilan par un script à elle, et les scripts sont désactivés ici. La commande fruitodds fait de même sans navigateur.',
  noWorker:
    'Ce navigateur ne laisse pas une page travailler en arrière-plan, donc rien ne peut être calculé ici. Un navigateur plus récent le peut, ou la commande fruitodds.',
  chooseHeading: 'Choisir vos fichiers',
  choose:
    'Une ligne pour chaque fleur pollinisée, enregistrée en CSV ou en classeur (.xlsx). Une liste de vos tubes de pollen, et une des fleurs attendues la saison prochaine, peuvent s’y ajouter. Chaque fichier se reconnaît à ses colonnes.',
  filesLabel: (bytes: number): string =>
    `Fichiers à lire (CSV ou .xlsx, jusqu’à ${wholeNumber(bytes / 1e6)} Mo chacun ; des réglages enregistrés aussi)`,
  drop: 'Ou les déposer n’importe où sur cette page.',
  pasteSummary: 'Coller plutôt des lignes',
  pasteLabel: 'Lignes copiées de la feuille, avec la ligne des en-têtes',
  pasteButton: 'Lire les lignes collées',
  nothingPasted:
    'Rien n’a encore été collé : copier les lignes avec leurs en-têtes, et les mettre dans le champ.',
  remove: (name: string): string => `Enlever ${name}`,
  sameFile: (name: string): string => `${name} avait déjà été choisi et c’est le même : il est lu une fois.`,
  replaced: (name: string): string =>
    `${name} a pris la place du fichier de ce nom choisi avant. Pour lire les deux, donner un autre nom à l’un.`,
  typedGaveWay: 'Les fleurs tapées ont cédé la place à votre fichier de fleurs.',
  removed: (name: string): string => `${name} a été enlevé.`,
  unreadable: (name: string): string =>
    `${name} ne peut pas être lu : le navigateur dit qu’il est verrouillé, déplacé ou que vous n’avez pas le droit de le lire. Le fermer dans les autres programmes, ou en enregistrer une copie, et le choisir de nouveau.`,
  restarted: 'Les fichiers ont changé pendant le calcul, qui s’est donc arrêté et recommence.',
  readHeading: 'Ce qui a été lu',
  readSummary: 'Fichiers, colonnes et problèmes',
  readRight: 'Est-ce juste ? Alors, lancer le calcul.',
  workButton: 'Calculer',
  nothingToMend: 'Rien à corriger.',
  columnsSummary: 'Comment les colonnes ont été comprises',
  columnsCaption: 'Vos colonnes',
  columnsHeads: ['votre en-tête', 'lu comme'] as const,
  notUsed: 'pas utilisée',
  answerButton: 'Lire de nouveau avec ces réponses',
  kindQuestion: (name: string): string => `Qu’est-ce que ${name} ?`,
  columnQuestion: (column: string, name: string): string => `Quelle colonne de ${name} est ${column} ?`,
  noColumn: 'aucune d’elles',
  sameNames: (names: string): string =>
    `Plusieurs cultivateurs utilisent les mêmes noms de plantes (${names}). Est-ce que ce sont les mêmes plantes ?`,
  sameNo: 'Non : la plante de chaque cultivateur est une plante à part',
  sameYes: 'Oui : la même plante, qui que ce soit qui la cultive',
  workHeading: 'Calcul en cours',
  progressLabel: 'Où en est le calcul',
  cancelButton: 'Arrêter',
  cancelled: 'Arrêté. Vos fichiers restent lus ; rien d’autre n’a été gardé.',
  cancelledBefore: 'Arrêté. Vos fichiers restent lus, et le bilan d’avant est gardé.',
  cancelledReading: 'Arrêté. Vos fichiers sont dans la liste ci-dessus ; ils n’ont pas été lus.',
  readAgainButton: 'Les lire quand même',
  countsHeading: 'Première réponse, d’après les comptes seuls',
  countsMore:
    'Ce sont les trois premières parties de votre bilan, autant que compter le permet. La comparaison à couples égaux, les âges, les couples et les tubes prennent plus de temps : le bilan entier prendra leur place.',
  answerHeading: 'Votre saison',
  done: 'C’est fait. Votre bilan est ci-dessous.',
  settingsSummary: 'Réglages : sur quoi repose la réponse',
  worthLabel: 'Sur 100 fleurs, combien doivent nouer pour que cela en vaille la peine ?',
  worthHint: 'Laissé vide : la moitié de ce que donne le pollen frais.',
  useOnLabel: 'Jour où le pollen stocké doit servir',
  useOnHint: 'Laissé vide : un an après la dernière pollinisation.',
  endpointLegend: 'Qu’est-ce qui compte comme fruit ?',
  endpointInitial: 'Un fruit qui avait noué au contrôle',
  endpointFinal: 'Un fruit qui a été récolté',
  flowersLegend: 'Fleurs attendues la saison prochaine, plante par plante',
  flowersHint: 'Laissé vide : en proportion des fleurs jusqu’ici.',
  flowersFromFile: 'Les fleurs de la saison prochaine sont prises de votre fichier.',
  againButton: 'Calculer avec ces réglages',
  wrongWorth: 'Combien doivent nouer demande un nombre au-dessus de 0 et au-dessous de 100.',
  wrongUseOn: 'Le jour d’utilisation demande un jour qui existe, AAAA-MM-JJ.',
  wrongFlowers: (plant: string): string => `Les fleurs de ${plant} demandent un nombre entier à partir de 0.`,
  changed: 'Les réglages ou les fichiers ont changé depuis que ce bilan a été fait.',
  saveHeading: 'L’enregistrer',
  saveReport: 'Enregistrer le bilan',
  saveSettings: 'Enregistrer les réglages',
  saveFlowers: 'Enregistrer les fleurs dans un fichier',
  saveCrosses: 'Enregistrer les croisements, mis au propre',
  saveVials: 'Enregistrer les tubes, mis au propre',
  saved: (name: string): string => `${name} a été remis à votre navigateur pour l’enregistrer.`,
  fault: (cause: string): string =>
    `Quelque chose a échoué dans fruitodds : ${cause}. C’est une faute du programme, pas de vos fichiers.`,
  promiseHeading: 'Où va votre fichier',
  promise: [
    'Votre fichier est lu et calculé dans ce navigateur. Le programme de la page n’envoie rien et n’ouvre aucune autre page, et une règle dans la page fait refuser au navigateur les moyens habituels de charger ou d’envoyer quelque chose. La page ne garde rien : après l’avoir rechargée, ou quittée, vous choisissez de nouveau vos fichiers.',
    'Cette règle lie cette page et rien de plus, et elle ne ferme pas tous les passages : un programme modifié pourrait encore ouvrir une autre adresse. Elle ne peut lier ni les extensions de votre navigateur, ni ceux qui le font, ni les autres programmes de cet ordinateur, et elle ne vaut pas dans une copie que quelqu’un a changée : prendre la page d’une source sûre. Ce que vous enregistrez est là où votre navigateur le met.',
  ],
} as const;
