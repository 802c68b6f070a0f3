/** Why the command stops, each as what is wrong and what to do. */
import type { FailureCode, FailureDetails, FailureWords } from '../english-failures.ts';
import { placeholder } from './help.ts';
import { joined } from './numbers.ts';

type Sentence = (details: FailureDetails) => FailureWords;

const SEE_HELP = 'Voir fruitodds --help.';
const COMMANDS = 'check, analyse, report, site, sheet, clean et template';
const NOT_YOUR_FAULT = 'C’est une faute du programme, pas de vos fichiers.';
const OTHER_NAME = 'Donner un autre nom après -o, ou déplacer ce fichier.';

function meant(nearest: string | number | null | undefined): string {
  return nearest ? `Vouliez-vous dire ${nearest} ? ` : '';
}

/** What a value of an option must be. */
const RULES: Readonly<Record<string, (allowed: string | number | null | undefined) => string>> = {
  'one-of': (allowed) => `Donner l’un de : ${allowed}.`,
  date: () => 'Donner un jour qui existe, AAAA-MM-JJ, comme 2026-09-30.',
  share: (allowed) => `Donner un nombre entre 0 et 1, avec un point, comme ${allowed ?? 0.2}.`,
  'file-name': () => 'Donner le nom d’un fichier, comme report.html.',
  'storage-word': () => 'L’écrire "VOTRE MOT=méthode", comme --storage "cool box=refrigerated".',
  'header-map': () => 'L’écrire "VOTRE EN-TÊTE=colonne", comme --map "Mère=seed_parent".',
  'same-names': () => 'L’écrire "A=B", comme --same "Nocturna=nocturna" ; le premier nom est gardé.',
  must: () =>
    'Écrire le croisement, la mère d’abord, et le moins de fleurs, comme --must "Salt Moon x Copper Tide=2".',
  'at-most': () =>
    'Écrire une plante ou un croisement et le plus de fleurs, comme --at-most "Copper Tide=5" ou --at-most "Salt Moon x Copper Tide=1".',
  column: (allowed) =>
    `${meant(allowed)}Après le = doit venir une de nos colonnes, comme seed_parent ; fruitodds template -o DOSSIER les explique toutes.`,
};

const FORMS: Readonly<Record<string, string>> = {
  list: 'une liste de textes, comme ["Mère=seed_parent"]',
  flag: 'true, ou ne pas le mettre',
  text: 'un texte entre guillemets ou un nombre, comme sur la ligne de commande',
};

const CAUSES: Readonly<Record<string, string>> = {
  ENOENT: 'il n’y a pas de tel fichier ou dossier',
  EISDIR: 'c’est un dossier',
  ENOTDIR: 'une partie de son chemin est un fichier, pas un dossier',
  EACCES: 'vous n’en avez pas le droit',
  EPERM: 'vous n’en avez pas le droit',
  EROFS: 'le disque est en lecture seule',
  ENOSPC: 'le disque est plein',
  ENAMETOOLONG: 'son nom est trop long',
};

function causeOf(cause: string | number | null | undefined): string {
  return CAUSES[String(cause)] ?? `le système dit ${cause}`;
}

/** Where JSON breaks off, as far as it is known. */
function notJson(
  cause: FailureDetails[string] | undefined,
  line: FailureDetails[string] | undefined,
): string {
  if (cause === 'no-object') return ' (il n’y a pas de { … })';
  return line ? ` (ligne ${line})` : '';
}

const FAILURES: Readonly<Record<FailureCode, Sentence>> = {
  'command-missing': () => ({
    message: 'Rien n’a été demandé.',
    fix: `Nommer l’un de ${COMMANDS}, par exemple : fruitodds check crosses.csv`,
  }),
  'command-unknown': ({ command, nearest }) => ({
    message: `Il n’y a pas de commande "${command}".`,
    fix: `${meant(nearest)}Les commandes sont ${COMMANDS}.`,
  }),
  'file-not-expected': ({ file }) => ({
    message: `Un modèle se fait à partir de rien, mais ${file} a été nommé.`,
    fix: `Pour dire où l’écrire, prendre -o : fruitodds template -o ${file}`,
  }),
  'file-missing': ({ command }) => ({
    message: `Aucun fichier n’a été nommé pour ${command}.`,
    fix: `Nommer le fichier de croisements, par exemple : fruitodds ${command} crosses.csv (ou - pour l’entrée standard)`,
  }),
  'file-unreadable': ({ file, cause }) => ({
    message: `${file} ne peut pas être lu : ${causeOf(cause)}.`,
    fix: 'Vérifier le nom, le dossier et si vous avez le droit de lire le fichier.',
  }),
  'standard-input-twice': () => ({
    message: 'L’entrée standard (-) a été nommée deux fois.',
    fix: 'Nommer - pour un seul fichier, et les autres par leurs noms.',
  }),
  'option-unknown': ({ option, nearest }) => ({
    message: `Il n’y a pas d’option ${option}.`,
    fix: meant(nearest) + SEE_HELP,
  }),
  'option-not-available': ({ option }) => ({
    message: `${option} n’existe pas dans cette version.`,
    fix: `L’enlever. ${SEE_HELP}`,
  }),
  'option-not-for-command': ({ option, command, use }) => ({
    message: `La commande ${command} ne prend pas ${option}.`,
    fix: `Enlever ${option}, ou prendre ${joined(String(use).split(', '), 'ou')}.`,
  }),
  'options-exclude': ({ option, other }) => ({
    message: `${option} et ${other} ne vont pas ensemble.`,
    fix: 'Enlever l’une des deux.',
  }),
  'option-needs-value': ({ option, placeholder: typed }) => ({
    message: `L’option ${option} demande une valeur.`,
    fix: `Écrire ${option} ${placeholder(String(typed))}. ${SEE_HELP}`,
  }),
  'option-takes-no-value': ({ option, value }) => ({
    message: `L’option ${option} ne prend pas de valeur, mais a "${value}".`,
    fix: `Écrire ${option} seul.`,
  }),
  'option-value': ({ option, value, rule, allowed, file }) => ({
    message: `L’option ${option} ne peut pas être "${value}"${file ? `, comme le dit ${file}` : ''}.`,
    fix: RULES[String(rule)]!(allowed),
  }),
  'option-twice': ({ option }) => ({
    message: `L’option ${option} a été donnée deux fois.`,
    fix: 'La donner une fois.',
  }),
  'plant-unknown': ({ option, plant, nearest }) => ({
    message: `${option} nomme ${plant}, qui n’est une plante dans aucun des fichiers.`,
    fix: `${meant(nearest)}Écrire le nom comme il est dans les fichiers.`,
  }),
  'wish-unclear': ({ option, value }) => ({
    message: `${option} "${value}" peut se lire comme deux croisements, car il y a des plantes des deux paires de noms.`,
    fix: 'Donner un autre nom à l’une des plantes dans les fichiers.',
  }),
  'wish-without-flowers': ({ option }) => ({
    message: `${option} concerne le plan, et il n’y a pas de plan sans fichier de fleurs.`,
    fix: 'Ajouter --flowers et un fichier avec les colonnes seed_parent et flowers, ou enlever l’option.',
  }),
  'question-open': ({ cause, remedy, questions }) => ({
    message: `${Number(questions ?? 1) > 1 ? `${questions} questions` : 'Une question'} à laquelle vous seul pouvez répondre : ${cause}`,
    fix: String(remedy),
  }),
  'no-usable-row': ({ files, cause, remedy }) => ({
    message: `Aucune ligne de ${files} ne peut servir.${cause ? ` ${cause}` : ''}`,
    fix: remedy
      ? String(remedy)
      : 'Lancer fruitodds check sur les fichiers : cela dit ce qui ne va pas dans chaque ligne.',
  }),
  'nothing-entered': ({ files, remedy }) => ({
    message: `Aucune fleur n’est encore inscrite dans ${files}.`,
    fix: String(remedy),
  }),
  'no-crosses': ({ files }) => ({
    message: `Il n’y a pas de fichier de croisements parmi ${files}.`,
    fix: 'Nommer d’abord le fichier avec une ligne par fleur pollinisée. Un fichier se reconnaît à ses colonnes.',
  }),
  'no-usable-outcome': ({ rows }) => ({
    message: `Aucune des ${rows} lignes n’a encore de résultat : toutes les étiquettes sont perdues, en attente ou de témoins.`,
    fix: 'Remplir la colonne outcome avec fruit, dropped ou none une fois les fleurs regardées.',
  }),
  'output-missing': ({ command }) => ({
    message: `Il n’a pas été dit où écrire ${command === 'clean' ? 'les fichiers nettoyés' : `le résultat de ${command}`}.`,
    fix: `Ajouter -o et un nom, par exemple : -o ${command === 'report' ? 'report.html' : command === 'sheet' ? 'sheet.html' : 'ma-saison'}`,
  }),
  'output-is-input': ({ file }) => ({
    message: `${file} est l’un des fichiers à lire, et serait écrasé.`,
    fix: 'Donner un autre nom où écrire.',
  }),
  'input-in-site': ({ file, folder }) => ({
    message: `${file} est à lire et se trouve dans ${folder}, que le site remplacerait.`,
    fix: 'Donner au site un dossier à lui, par exemple : -o ma-saison',
  }),
  'site-not-ours': ({ folder, foreign }) => ({
    message: foreign
      ? `${folder} contient aussi ${foreign}, qu’aucun site précédent n’y a écrit ; ce serait perdu.`
      : `${folder} est un fichier, et un site demande un dossier.`,
    fix: 'L’ôter de là, ou donner un nouveau dossier après -o, par exemple : -o ma-saison',
  }),
  'output-other-kind': ({ file, command }) => ({
    message: `${file} porte le nom d’une autre sorte de fichier que celle qu’écrit ${command}.`,
    fix: `Donner un nom en .html${command === 'sheet' ? ' (une page) ou en .csv (à remplir)' : ''}. Pour un PDF, imprimer la page depuis le navigateur.`,
  }),
  'output-not-ours': ({ file }) => ({
    message: `${file} est déjà là et n’est pas un rapport : il n’est pas écrasé.`,
    fix: OTHER_NAME,
  }),
  'sheet-is-there': ({ file }) => ({
    message: `${file} est déjà là, et peut-être rempli : il n’est pas écrasé.`,
    fix: OTHER_NAME,
  }),
  'no-plan': ({ cause }) => ({
    message: `Il n’y a pas de plan dont faire une feuille. ${cause}`,
    fix: 'Regarder le fichier des fleurs et celui des tubes : un plan demande des fleurs, et du pollen qui puisse les atteindre.',
  }),
  'settings-not-json': ({ file, cause, line }) => ({
    message: `${file} ne contient pas de réglages : ce n’est pas du JSON${notJson(cause, line)}.`,
    fix: 'Enregistrer des réglages avec --save-settings, et donner ce fichier.',
  }),
  'settings-version': ({ file, version }) => ({
    message: `${file} n’a pas la forme de réglages que lit cette version : sa "version" est ${version}, pas 1.`,
    fix: 'Enregistrer de nouveau les réglages avec --save-settings, ou écrire "version": 1 dans le fichier.',
  }),
  'settings-key-unknown': ({ file, key, nearest }) => ({
    message: `${file} règle "${key}", qui n’est pas un réglage.`,
    fix: `${meant(nearest)}L’enlever, ou le corriger.`,
  }),
  'settings-value': ({ file, key, form }) => ({
    message: `${file} donne à "${key}" une valeur qu’il ne peut pas avoir.`,
    fix: `Écrire ${FORMS[String(form)]}.`,
  }),
  'settings-not-ours': ({ file }) => ({
    message: `${file} est déjà là et ne contient pas de réglages : il n’est pas écrasé.`,
    fix: 'Donner un autre nom après --save-settings, ou déplacer ce fichier.',
  }),
  'output-exists': ({ file }) => ({
    message: `${file} est déjà là, et rien n’est écrasé.`,
    fix: 'Donner un autre nom après -o.',
  }),
  'folder-not-empty': ({ folder }) => ({
    message: `${folder} contient déjà quelque chose, et rien n’est écrasé.`,
    fix: 'Donner un nouveau dossier après -o, par exemple : -o nouvelle-saison',
  }),
  'key-without-anonymous': () => ({
    message: 'L’option --key nomme la clé d’une copie codée, et aucune n’est demandée.',
    fix: 'Ajouter --anonymous, ou enlever --key.',
  }),
  'summary-has-no-rows': () => ({
    message: 'Un résumé ne montre rien de plantes seules : il n’en a pas de lignes à écrire.',
    fix: 'Écrire --anonymous=codes, ou prendre report, site ou analyse.',
  }),
  'key-not-ours': ({ file }) => ({
    message: `${file} ne contient pas la clé d’une copie codée : il n’est ni lu ni remplacé.`,
    fix: 'Donner le fichier de votre clé après --key, ou un nouveau nom, par exemple : --key ma-cle.json',
  }),
  'key-shared': ({ file, folder }) => ({
    message: `${file} est la clé qui rend les noms aux codes, et serait partagé avec ${folder}.`,
    fix: 'La garder ailleurs : donner un autre endroit après --key.',
  }),
  'dates-too-far': ({ file }) => ({
    message:
      'Les dates ne peuvent pas être décalées ensemble : elles sont trop loin les unes des autres, ou de celles de la clé.',
    fix: `Corriger les dates, ou commencer une nouvelle clé : --key avec un autre nom que ${file}.`,
  }),
  'leak-found': ({ file, place, what, value, more }) => ({
    message: `Rien n’a été écrit : ${file}, ${place}, montrerait ${what} « ${value} »${more ? ` (et ${more} de plus)` : ''}.`,
    fix: `${NOT_YOUR_FAULT} Merci de la signaler, sans le nom qu’elle montre.`,
  }),
  'output-not-writable': ({ file, cause }) => ({
    message: `${file} ne peut pas être écrit : ${causeOf(cause)}.`,
    fix: 'Vérifier que le dossier existe et que vous avez le droit d’y écrire.',
  }),
  'answer-too-long': () => ({
    message:
      'La réponse est plus longue qu’un texte ne peut l’être : il y a trop de constats dans les fichiers pour tout écrire d’un coup.',
    fix: 'Corriger d’abord ce que nomme fruitodds check, ou donner moins de fichiers à la fois ; sans --json la réponse est plus courte.',
  }),
  'internal-fault': ({ cause }) => ({
    message: `Quelque chose a mal tourné dans fruitodds : ${cause}.`,
    fix: `${NOT_YOUR_FAULT} Merci de la signaler avec ce message.`,
  }),
};

/** The sentences for a failure. */
export function failureWords(code: FailureCode, details: FailureDetails): FailureWords {
  return FAILURES[code](details);
}
