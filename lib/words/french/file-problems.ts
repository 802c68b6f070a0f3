/** Problems of a whole file, each as what is wrong and what to do. */
import type { FileProblemCode } from '../../season/problems.ts';
import type { Problem } from '../../season/season.ts';
import type { ProblemSentence } from '../problem-sentence.ts';
import { cited } from '../told/places.ts';
import { dateOrderName } from './problem-sentence.ts';

const column = ({ column: header }: Problem): string => `La colonne ${cited(header)}`;
const megabytes = (bytes: string | number | undefined): string => `${Math.ceil(Number(bytes) / 1e6)} Mo`;
const mapOption = (header: string | number | null, name: string | number): string =>
  `--map "${header}=${name}"`;
const NOTHING = 'Rien à faire si c’est juste.';
const AS_CSV = '.xlsx ou CSV (UTF-8)';

const citedList = ({ cells, more }: Problem['details']): string => {
  const shown = String(cells).split('\n').map(cited).join(', ');
  return more ? `${shown} et ${more} de plus` : shown;
};

/** Files of our own that hold no flowers. */
const OWN_FILES: Readonly<Record<string, string>> = {
  findings: 'une liste de constats (check ou clean)',
  columns: 'le tableau qui explique les colonnes (template)',
  description: 'la description de fichiers nettoyés (clean)',
  results: 'un résultat en JSON',
  key: 'la clé d’une copie codée : la garder pour soi',
};

/** What a file is that is no table. */
const FORMATS: Readonly<Record<string, string>> = {
  pdf: 'un document PDF',
  html: 'une page web',
  json: 'du JSON',
  rtf: 'un document texte (RTF)',
  picture: 'une image',
  document: 'un document (.docx, .doc, .odt)',
  slides: 'une présentation (.pptx, .ppt, .odp)',
  archive: 'un dossier compressé (.zip)',
};

const SHEETS: Readonly<Record<string, string>> = {
  xls: 'un ancien classeur (.xls)',
  xlsb: 'un classeur binaire (.xlsb)',
  ods: 'une feuille OpenDocument (.ods)',
  numbers: 'une feuille Numbers (.numbers)',
};

const KINDS: Readonly<Record<string, string>> = {
  crosses: 'fichier de croisements',
  vials: 'fichier de tubes',
  flowers: 'fichier de fleurs',
};

/** Why the dates of a column have an order. */
const orderEvidence = ({ value, details: { order, row, rival, byYear } }: Problem): string =>
  [
    ...(rival ? [`${cited(value)} à la ligne ${row} ne peut pas être ${dateOrderName(rival)}`] : []),
    ...(byYear === 'yes'
      ? [`le ${order === 'ymd' ? 'premier' : 'dernier'} nombre change le moins, comme le fait une année`]
      : []),
  ].join(' et ');

export const FILE_PROBLEMS: Readonly<Record<FileProblemCode, ProblemSentence>> = {
  'file-empty': () => [
    'Le fichier est vide.',
    'Voir si c’est le bon fichier : ses en-têtes sont dans la première ligne, et une fleur, un tube ou une plante dans chaque ligne dessous.',
  ],
  'file-too-large': ({ details }) => [
    `Le fichier a ${megabytes(details.bytes)} ; des fichiers jusqu’à ${megabytes(details.most)} peuvent être lus.`,
    'Donner les croisements de moins de saisons, ou la feuille sans ses autres colonnes et les autres feuilles.',
  ],
  'file-repeated': ({ details }) => [
    `Le fichier contient la même chose que ${details.earlier}, déjà lu.`,
    'Donner chaque fichier une fois.',
  ],
  'no-rows': () => [
    'Le fichier a des en-têtes mais aucune ligne dessous.',
    'Écrire une ligne pour chaque fleur, tube ou plante.',
  ],
  'nothing-entered': () => [
    'Aucune fleur n’est encore inscrite : dans chaque ligne, le jour de pollinisation et le résultat sont vides.',
    'Remplir pollination_date quand le pollen est posé, et outcome quand on le voit : fruit, dropped, none, unknown (étiquette perdue) ou pending (trop tôt pour le dire).',
  ],
  'not-text': () => [
    'Le fichier n’est pas un texte.',
    'Enregistrer la feuille en CSV (UTF-8) et donner ce fichier.',
  ],
  'spreadsheet-file': ({ details }) => [
    `Le fichier est ${SHEETS[details.format] ?? 'd’un autre programme'} et ne peut pas être lu ici.`,
    `L’ouvrir dans son propre programme, choisir « Enregistrer sous » ou « Exporter » et ${AS_CSV}, et donner ce fichier.`,
  ],
  'other-format': ({ details }) => [
    `Le fichier est ${FORMATS[details.format]}, pas un tableau, quel que soit son nom.`,
    `Ouvrir la liste elle-même dans son tableur, l’enregistrer en ${AS_CSV}, et donner ce fichier.`,
  ],
  'own-file': ({ details }) => [
    `Le fichier a été écrit par fruitodds et ne contient pas de fleurs ; il est laissé de côté. C’est ${OWN_FILES[details.own]}.`,
    'Rien à faire.',
  ],
  'workbook-broken': () => [
    'Le classeur est abîmé : il ne peut pas être décompressé, ou ses parties ne sont pas ce qu’elles devraient être.',
    `L’ouvrir dans son tableur et l’enregistrer de nouveau, en ${AS_CSV}.`,
  ],
  'workbook-locked': () => [
    'Le classeur est protégé par un mot de passe.',
    'L’ouvrir dans son tableur et l’enregistrer sans mot de passe, ou en CSV (UTF-8).',
  ],
  'workbook-too-large': ({ details }) => [
    `Le classeur est trop grand : décompressé, il contient plus de ${megabytes(details.most)} ou ${Number(details.cells) / 1e6} millions de cases.`,
    'Enregistrer seule la feuille des fleurs en CSV (UTF-8), et donner ce fichier.',
  ],
  'sheet-read': ({ details }) => [
    `La feuille ${cited(details.sheet)} du classeur est lue${details.others ? ` ; sautées : ${cited(details.others)}` : ''}.`,
    details.others
      ? 'Si l’une de celles-ci est nécessaire, y prendre nos noms de colonnes comme en-têtes.'
      : 'Rien à faire.',
  ],
  'rows-hidden': ({ details }) => [
    details.rows === 1
      ? 'Une ligne de la feuille est masquée ou filtrée ; elle est lue comme les autres.'
      : `${details.rows} lignes de la feuille sont masquées ou filtrées ; elles sont lues comme les autres.`,
    'Supprimer celles qui ne sont pas voulues.',
  ],
  'cells-merged': ({ value }) => [
    `Des cases fusionnées sur plusieurs lignes (${cited(value)}) comptent pour chacune de ces lignes.`,
    NOTHING,
  ],
  'kind-unknown': ({ details }) => [
    `Les colonnes du fichier (${cited(details.headers)}) ne sont ni celles de croisements, ni de tubes, ni de fleurs attendues.`,
    'Vérifier que la première ligne contient les en-têtes ; un fichier de croisements a cross_id, pollination_date, seed_parent, ' +
      'pollen_parent, storage et outcome. Pour d’autres en-têtes : --map "VOTRE EN-TÊTE=colonne".',
  ],
  'kind-differs': ({ details }) => [
    `Le fichier a été donné comme ${KINDS[details.said]}, mais ses colonnes sont celles d’un ${KINDS[details.kind]}.`,
    details.kind === 'crosses'
      ? `Le nommer sans --${details.said}, et y donner le ${KINDS[details.said]}.`
      : `Le donner avec --${details.kind}, ou sans option : la sorte d’un fichier se voit à ses colonnes.`,
  ],
  'column-missing': ({ details }) => [
    `Le ${KINDS[details.kind] ?? 'fichier'} n’a pas de colonne pour ${details.column} : aucune de ses lignes ne peut servir.`,
    `Ajouter une colonne ${details.column}, ou dire laquelle des vôtres c’est : ${mapOption(details.suggestion || 'VOTRE EN-TÊTE', details.column)}.`,
  ],
  'column-unclear': ({ details }) => [
    details.same === 'yes'
      ? `Deux colonnes s’appellent ${cited(details.first)}, et chacune pourrait être ${details.column}.`
      : `${cited(details.first)} comme ${cited(details.second)} pourrait être ${details.column}.`,
    details.same === 'yes'
      ? 'Renommer celle qui n’est pas voulue.'
      : `Dire laquelle l’est : ${mapOption(details.first, details.column)} ou ${mapOption(details.second, details.column)}.`,
  ],
  'column-unknown': (problem) => [
    `${column(problem)} ne sert pas.`,
    problem.details.suggestion
      ? `Si elle contient ${problem.details.suggestion}, le dire : ${mapOption(problem.column, problem.details.suggestion)}.`
      : `Si elle contient quelque chose de nécessaire, dire quoi, avec le nom d’une de nos colonnes : ${mapOption(problem.column, 'colonne')}.`,
  ],
  'columns-unknown': ({ details }) => [
    `${details.more} autres colonnes ne servent pas.`,
    'Voir si le bon séparateur et le bon fichier ont été pris.',
  ],
  'column-without-header': ({ details }) => [
    `La colonne ${details.position} a des cases mais pas d’en-tête, et ne sert pas.`,
    'Écrire un en-tête au-dessus, ou la vider.',
  ],
  'column-guessed': (problem) => [
    `${column(problem)} est lue comme ${problem.details.column}.`,
    `Si c’est faux, renommer la colonne, ou dire ce qu’elle est : ${mapOption(problem.column, 'colonne')}.`,
  ],
  'date-order-unclear': (problem) => {
    const { details, value } = problem;
    return [
      `${column(problem)} ne dit pas quel nombre est le jour : ${cited(value)} à la ligne ${details.row} est ` +
        `${details.first} lu comme ${dateOrderName(details.firstOrder)}, mais ${details.second} comme ${dateOrderName(details.secondOrder)}.`,
      `Dire lequel : --date-order ${details.firstOrder} ou --date-order ${details.secondOrder}.`,
    ];
  },
  'date-order-mixed': (problem) => {
    const { details } = problem;
    return [
      `${column(problem)} mélange deux façons d’écrire les dates : ${cited(details.firstAgainst)} à la ligne ${details.firstRow} ` +
        `ne peut pas être ${dateOrderName(details.firstOrder)}, et ${cited(details.secondAgainst)} à la ligne ${details.secondRow} ` +
        `ne peut pas être ${dateOrderName(details.secondOrder)}.`,
      'Écrire toutes les dates AAAA-MM-JJ. Ou dire quel ordre vaut, avec --date-order : les lignes écrites autrement sont alors laissées de côté.',
    ];
  },
  'date-order-decided': (problem) => [
    `Les dates de ${cited(problem.column)} sont lues comme ${dateOrderName(problem.details.order)}, car ${orderEvidence(problem)}.`,
    'Si c’est faux, donner --date-order.',
  ],
  'date-order-from-neighbour': (problem) => [
    `Les dates de ${cited(problem.column)} sont lues comme ${dateOrderName(problem.details.order)}, comme les autres dates du fichier.`,
    'Si c’est faux, donner --date-order ou écrire les dates AAAA-MM-JJ.',
  ],
  'date-serial-read': ({ column: header, details, value }) => [
    `${cited(header)} contient les numéros de jour d’un tableur : ${cited(value)} à la ligne ${details.row} est lu comme ${details.date}.`,
    details.system === 1900
      ? 'Si toutes sont quatre ans trop tôt, donner --date-system 1904 ; sinon rien à faire.'
      : 'Si toutes sont quatre ans trop tard, donner --date-system 1900 ; sinon rien à faire.',
  ],
  'two-digit-years': (problem) => [
    `Les années de ${cited(problem.column)} ont deux chiffres (${cited(problem.value)} à la ligne ${problem.details.row}) : ` +
      '00 à 69 sont lues comme 2000 à 2069, 70 à 99 comme 1970 à 1999.',
    'Écrire les années avec quatre chiffres.',
  ],
  'encoding-guessed': ({ details, value }) => [
    value === null
      ? `Le fichier ne dit pas comment ses lettres sont codées ; il est lu comme ${details.encoding}.`
      : `Le fichier n’est pas en UTF-8 ; il est lu comme ${details.encoding}. Vérifier que ceux-ci sont justes : ${citedList(details)}.`,
    'Si l’un a l’air faux, enregistrer la feuille en CSV (UTF-8) ou .xlsx.',
  ],
  'title-lines': ({ details, row }) => [
    `Les en-têtes sont à la ligne ${row} ; ${details.titles === 1 ? 'une ligne au-dessus est sautée' : `${details.titles} lignes au-dessus sont sautées`}.`,
    'Rien à faire s’il n’y a qu’un titre.',
  ],
  'lines-quoted': () => [
    'Chaque ligne du fichier est tout entière entre guillemets ; les lignes sont lues comme s’il n’y en avait pas.',
    NOTHING,
  ],
  'table-sideways': () => [
    'Les en-têtes du fichier sont dans sa première colonne, pas dans une ligne.',
    'Tourner le tableau dans le tableur (le copier, puis le coller transposé), et l’enregistrer de nouveau.',
  ],
  'parents-in-one': (problem) => [
    `${column(problem)} contient les deux parents dans une case, comme dans ${cited(problem.value)}.`,
    'La partager en deux colonnes, seed_parent (la mère) et pollen_parent (le père).',
  ],
  'map-header-missing': ({ details, value }) => [
    `Aucun fichier n’a de colonne ${cited(value)}, qui devait être lue comme ${details.column}.`,
    'Vérifier comment l’en-tête est écrit dans le fichier.',
  ],
  'storage-word-missing': ({ value, details }) => [
    `Aucun fichier n’a de stockage nommé ${cited(value)}, qui devait être lu comme ${details.method}.`,
    'Vérifier comment le mot est écrit dans les fichiers.',
  ],
  'same-name-missing': ({ value }) => [
    `Aucun fichier n’a de plante nommée ${cited(value)}, qui a été dite la même qu’une autre.`,
    'Vérifier comment le nom est écrit dans le fichier, majuscules et espaces aussi.',
  ],
};
