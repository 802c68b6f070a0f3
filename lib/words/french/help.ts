/** What `fruitodds --help` says, in French. */

export const helpWords = {
  title: 'fruitodds : nouaison de la pollinisation à la main, du tableau d’une saison au rapport.',
  commands: {
    check: 'ce qui ne va pas dans les fichiers, ligne par ligne',
    analyse: 'les nombres : nouaison, frais contre stocké, tubes',
    report: 'le rapport, une page à lire, imprimer ou envoyer',
    site: 'toutes les pages sur la saison, avec des téléchargements',
    sheet: 'le plan de la saison prochaine, à imprimer ; SORTIE.csv : à remplir',
    clean: 'les fichiers tels qu’ils ont été compris, propres et décrits',
    template: 'des fichiers vides à remplir, les colonnes expliquées, un exemple',
  },
  files:
    'Les fichiers sont en CSV ou .xlsx ; leurs colonnes disent leur contenu. - lit l’entrée standard. Par exemple :',
  options: 'Options (entre parenthèses, ce qui vaut sinon) :',
  option: {
    vials: 'le fichier des tubes de pollen stocké',
    flowers: 'le fichier des fleurs attendues la saison prochaine',
    json: 'imprimer le résultat en JSON',
    csv: 'avec `check` : imprimer ce qui a été trouvé en CSV, une ligne par constat',
    output: 'où écrire : une page pour `report` et `sheet`, sinon un dossier (aussi -o)',
    'use-on': 'jour d’utilisation du pollen stocké (un an après la dernière pollinisation)',
    'as-of': 'jour jusqu’où les choses sont arrivées (la dernière date des fichiers)',
    'date-order': 'comment lire une date comme 03/04/2025 : dmy, mdy ou ymd',
    'date-system': 'année d’où un tableur compte ses numéros de jours : 1900 ou 1904 (1900)',
    map: 'lire un de vos en-têtes comme l’une des colonnes',
    same: 'deux noms d’une même plante ; le premier est gardé',
    storage: 'lire un mot à vous pour le stockage comme fresh, room, refrigerated ou frozen',
    level: 'niveau des fourchettes (0.95)',
    endpoint: 'initial : fruits au contrôle ; final : fruits récoltés (initial)',
    'age-scale': 'échelle de l’âge du pollen : days ou log1p-days',
    worth: 'plus basse nouaison qui vaut une fleur, comme 0.2 (la moitié du pollen frais)',
    'same-plants': 'des plantes de même nom chez différents cultivateurs sont une seule plante',
    mix: 'pour `sheet` : most-fruit, balanced ou most-varieties (balanced)',
    must: 'plan : le croisement A × B reçoit au moins 2 fleurs',
    'at-most': 'plan : au plus 5 fleurs reçoivent du pollen de A ; "A x B=5" : de B sur A',
    settings: 'prendre les options d’un fichier enregistré ; celles données ici l’emportent',
    'save-settings': 'enregistrer ce qui a été dit des fichiers, pour l’an prochain',
    language: 'langue des pages, messages et en-têtes de `template` : en, de, es ou fr (en)',
    anonymous: 'une copie codée à partager ; summary : rien sur une plante seule (codes)',
    key: 'où garder la clé des copies codées (fruitodds-key.json)',
    help: 'montrer ce texte (aussi -h)',
    version: 'montrer la version',
  },
  status:
    'Code de retour : 0 tout va bien ; 1 fait, avec des erreurs ou avertissements ; 2 rien n’a pu être fait.',
};

const PLACEHOLDERS: ReadonlyMap<string, string> = new Map([
  ['FILE', 'FICHIER'],
  ['OUT', 'SORTIE'],
  ['FOLDER', 'DOSSIER'],
  ['ORDER', 'ORDRE'],
  ['YEAR', 'ANNÉE'],
  ['"HEADER=column"', '"EN-TÊTE=colonne"'],
  ['LEVEL', 'NIVEAU'],
  ['ENDPOINT', 'CRITÈRE'],
  ['SCALE', 'ÉCHELLE'],
  ['MIX', 'PARTAGE'],
  ['LANGUAGE', 'LANGUE'],
]);

export function placeholder(typed: string): string {
  return PLACEHOLDERS.get(typed) ?? typed;
}
