/** Warum nicht gelesen oder geschrieben werden konnte, und was zu tun ist. */

import type { FailureDetails, FailureWords } from '../english-failures.ts';

const CAUSES: Readonly<Record<string, string>> = {
  ENOENT: 'eine solche Datei, einen solchen Ordner gibt es nicht',
  EISDIR: 'es ist ein Ordner',
  ENOTDIR: 'ein Teil des Pfads ist eine Datei, kein Ordner',
  EACCES: 'es ist nicht erlaubt',
  EPERM: 'es ist nicht erlaubt',
  EROFS: 'der Datenträger ist nur lesbar',
  ENOSPC: 'der Datenträger ist voll',
  ENAMETOOLONG: 'der Name ist zu lang',
};

function causeOf(cause: string | number | null | undefined): string {
  return CAUSES[String(cause)] ?? `das System sagt ${cause}`;
}

const FORMS: Readonly<Record<string, string>> = {
  list: 'eine Liste von Texten schreiben, etwa ["Mutter=seed_parent"]',
  flag: 'true schreiben, oder weglassen',
  text: 'einen Text in Anführungszeichen oder eine Zahl schreiben, wie auf der Befehlszeile',
};

/** Was in einer Kopie nichts zu suchen hat. */
const SECRETS: Readonly<Record<string, string>> = {
  'the plant': 'die Pflanze',
  'the vial': 'das Röhrchen',
  'the tag': 'das Etikett',
  'the grower': 'den Züchter',
  'the date': 'das Datum',
  'the file': 'die Datei',
  'the settings': 'die Einstellungen',
};

const meant = (nearest: string | number | null | undefined): string =>
  nearest ? `Ist ${nearest} gemeint? ` : '';

const ANOTHER_NAME = 'Hinter -o einen anderen Namen angeben, oder jene Datei wegräumen.';

/** Wo JSON nicht weitergeht, soweit es bekannt ist. */
function notJson(
  cause: FailureDetails[string] | undefined,
  line: FailureDetails[string] | undefined,
): string {
  if (cause === 'no-object') return ' (darin steht kein { … })';
  return line ? ` (Zeile ${line})` : '';
}

export const FILE_FAILURES = {
  'file-not-expected': ({ file }) => ({
    message: `Eine Vorlage entsteht aus nichts, aber ${file} wurde genannt.`,
    fix: `Wohin sie geschrieben wird, sagt -o: fruitodds template -o ${file}`,
  }),
  'file-missing': ({ command }) => ({
    message: `Für ${command} wurde keine Datei genannt.`,
    fix: `Die Kreuzungsdatei nennen, zum Beispiel: fruitodds ${command} crosses.csv (oder - für die Standardeingabe)`,
  }),
  'file-unreadable': ({ file, cause }) => ({
    message: `${file} ist nicht lesbar: ${causeOf(cause)}.`,
    fix: 'Namen und Ordner prüfen, und ob die Datei gelesen werden darf.',
  }),
  'standard-input-twice': () => ({
    message: 'Die Standardeingabe (-) wurde zweimal genannt.',
    fix: '- nur für eine Datei schreiben, die anderen Dateien mit ihrem Namen.',
  }),
  'output-missing': ({ command }) => ({
    message: `Es ist nicht gesagt, wohin geschrieben werden soll (${command}).`,
    fix: `-o und einen Namen ergänzen, zum Beispiel: -o ${command === 'report' ? 'report.html' : command === 'sheet' ? 'sheet.html' : 'my-season'}`,
  }),
  'output-is-input': ({ file }) => ({
    message: `${file} ist eine der zu lesenden Dateien und würde überschrieben.`,
    fix: 'Einen anderen Namen zum Schreiben angeben.',
  }),
  'input-in-site': ({ file, folder }) => ({
    message: `${file} soll gelesen werden und steht in ${folder}, was die Seiten ersetzen würden.`,
    fix: 'Den Seiten einen eigenen Ordner geben, zum Beispiel: -o my-season',
  }),
  'site-not-ours': ({ folder, foreign }) => ({
    message: foreign
      ? `${folder} enthält auch ${foreign}, das keine früheren Seiten dort geschrieben haben; es ginge verloren.`
      : `${folder} ist eine Datei, und Seiten brauchen einen Ordner.`,
    fix: 'Aus dem Weg räumen, oder hinter -o einen neuen Ordner angeben, zum Beispiel: -o my-season',
  }),
  'output-other-kind': ({ file, command }) => ({
    message: `${file} hat den Namen einer anderen Art von Datei, als ${command} sie schreibt.`,
    fix: `Einen Namen angeben, der auf .html endet${command === 'sheet' ? ' (eine Seite) oder auf .csv (zum Ausfüllen)' : ''}. Für ein PDF die Seite im Browser drucken.`,
  }),
  'output-not-ours': ({ file }) => ({
    message: `${file} ist schon da und kein Bericht, darum wird es nicht überschrieben.`,
    fix: ANOTHER_NAME,
  }),
  'sheet-is-there': ({ file }) => ({
    message: `${file} ist schon da und vielleicht ausgefüllt, darum wird es nicht überschrieben.`,
    fix: ANOTHER_NAME,
  }),
  'settings-not-json': ({ file, cause, line }) => ({
    message: `${file} enthält keine Einstellungen: es ist kein JSON${notJson(cause, line)}.`,
    fix: 'Einstellungen mit --save-settings speichern und diese Datei angeben.',
  }),
  'settings-version': ({ file, version }) => ({
    message: `${file} hat nicht die Form von Einstellungen, die diese Version liest: "version" ist ${version}, nicht 1.`,
    fix: 'Einstellungen neu mit --save-settings speichern, oder "version": 1 in die Datei schreiben.',
  }),
  'settings-key-unknown': ({ file, key, nearest }) => ({
    message: `${file} setzt „${key}“; das ist keine Einstellung.`,
    fix: `${meant(nearest)}Herausnehmen, oder berichtigen.`,
  }),
  'settings-value': ({ file, key, form }) => ({
    message: `${file} setzt „${key}“ auf etwas, das es nicht sein kann.`,
    fix: `Bitte ${FORMS[String(form)]}.`,
  }),
  'settings-not-ours': ({ file }) => ({
    message: `${file} ist schon da und enthält keine Einstellungen, darum wird es nicht überschrieben.`,
    fix: 'Hinter --save-settings einen anderen Namen angeben, oder jene Datei wegräumen.',
  }),
  'output-exists': ({ file }) => ({
    message: `${file} ist schon da, und nichts wird überschrieben.`,
    fix: 'Hinter -o einen anderen Namen angeben.',
  }),
  'folder-not-empty': ({ folder }) => ({
    message: `${folder} enthält schon etwas, und nichts wird überschrieben.`,
    fix: 'Hinter -o einen neuen Ordner angeben, zum Beispiel: -o new-season',
  }),
  'key-not-ours': ({ file }) => ({
    message: `${file} enthält nicht den Schlüssel einer kodierten Kopie, darum wird es weder gelesen noch ersetzt.`,
    fix: 'Hinter --key die Datei mit dem Schlüssel angeben, oder einen neuen Namen, zum Beispiel: --key my-key.json',
  }),
  'key-shared': ({ file, folder }) => ({
    message: `${file} ist der Schlüssel, der Codes wieder zu Namen macht, und würde mit ${folder} weitergegeben.`,
    fix: 'Anderswo aufbewahren: hinter --key einen anderen Ort angeben.',
  }),
  'dates-too-far': ({ file }) => ({
    message:
      'Die Daten lassen sich nicht zusammen verschieben: sie liegen zu weit auseinander, oder zu weit von denen des Schlüssels.',
    fix: `Die Daten berichtigen, oder einen neuen Schlüssel beginnen: --key mit einem anderen Namen als ${file}.`,
  }),
  'leak-found': ({ file, place, what, value, more }) => ({
    message: `Nichts wurde geschrieben: ${file}, ${place}, würde zeigen: ${SECRETS[String(what)] ?? what} „${value}“${more ? ` (und ${more} mehr)` : ''}.`,
    fix: 'Das ist ein Fehler des Programms, nicht Ihrer Dateien. Bitte berichten, ohne den Namen, den es zeigt.',
  }),
  'output-not-writable': ({ file, cause }) => ({
    message: `${file} lässt sich nicht schreiben: ${causeOf(cause)}.`,
    fix: 'Prüfen, ob es den Ordner gibt und ob dort geschrieben werden darf.',
  }),
} satisfies Readonly<Record<string, (details: FailureDetails) => FailureWords>>;
