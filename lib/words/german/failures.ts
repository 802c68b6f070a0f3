/** Warum der Befehl nichts tun konnte, und was zu tun ist. */

import type { Refusal } from '../../analysis/refusal.ts';
import type { Season } from '../../season/season.ts';
import type { FailureCode, FailureDetails, FailureWords } from '../english-failures.ts';
import { detailsOf } from '../told/refusals.ts';
import { FILE_FAILURES } from './file-failures.ts';
import { placeholder } from './help.ts';
import { headed, joined } from './numbers.ts';
import { problemWords } from './problems.ts';

type Sentence = (details: FailureDetails) => FailureWords;

const SEE_HELP = 'Siehe fruitodds --help.';
const COMMANDS = 'check, analyse, report, site, sheet, clean und template';

function meant(nearest: string | number | null | undefined): string {
  return nearest ? `Ist ${nearest} gemeint? ` : '';
}

const RULES: Readonly<Record<string, (allowed: string | number | null | undefined) => string>> = {
  'one-of': (allowed) => `Eines davon angeben: ${allowed}.`,
  date: () => 'Einen Tag, den es gibt, als JJJJ-MM-TT angeben, etwa 2026-09-30.',
  share: (allowed) => `Eine Zahl zwischen 0 und 1 angeben, mit Punkt, etwa ${allowed ?? 0.2}.`,
  'file-name': () => 'Den Namen einer Datei angeben, etwa report.html.',
  'storage-word': () => 'Als "EIGENES WORT=Lagerung" schreiben, etwa --storage "cool box=refrigerated".',
  'header-map': () => 'Als "EIGENER KOPF=Spalte" schreiben, etwa --map "Mutter=seed_parent".',
  'same-names': () => 'Als "A=B" schreiben, etwa --same "Nocturna=nocturna"; der erste Name wird behalten.',
  must: () =>
    'Die Kreuzung schreiben, die Mutterpflanze zuerst, und die wenigsten Blüten, etwa --must "Salt Moon x Copper Tide=2".',
  'at-most': () =>
    'Eine Pflanze oder Kreuzung und die meisten Blüten schreiben, etwa --at-most "Copper Tide=5" oder --at-most "Salt Moon x Copper Tide=1".',
  column: (allowed) =>
    `${meant(allowed)}Hinter dem = muss eine unserer Spalten stehen, etwa seed_parent; fruitodds template -o ORDNER erklärt sie alle.`,
};

const FAILURES: Readonly<Record<Exclude<FailureCode, keyof typeof FILE_FAILURES>, Sentence>> = {
  'command-missing': () => ({
    message: 'Es wurde nichts verlangt.',
    fix: `Einen der Befehle ${COMMANDS} nennen, zum Beispiel: fruitodds check crosses.csv`,
  }),
  'command-unknown': ({ command, nearest }) => ({
    message: `Einen Befehl „${command}“ gibt es nicht.`,
    fix: `${meant(nearest)}Die Befehle sind ${COMMANDS}.`,
  }),
  'option-unknown': ({ option, nearest }) => ({
    message: `Eine Option ${option} gibt es nicht.`,
    fix: meant(nearest) + SEE_HELP,
  }),
  'option-not-available': ({ option }) => ({
    message: `${option} gibt es in dieser Version nicht.`,
    fix: `Weglassen. ${SEE_HELP}`,
  }),
  'option-not-for-command': ({ option, command, use }) => ({
    message: `Der Befehl ${command} kennt kein ${option}.`,
    fix: `${option} weglassen, oder ${joined(String(use).split(', '), 'oder')} verwenden.`,
  }),
  'options-exclude': ({ option, other }) => ({
    message: `${option} und ${other} gibt es nicht zugleich.`,
    fix: 'Eines davon weglassen.',
  }),
  'option-needs-value': ({ option, placeholder: typed }) => ({
    message: `Die Option ${option} braucht einen Wert.`,
    fix: `${option} ${placeholder(String(typed))} schreiben. ${SEE_HELP}`,
  }),
  'option-takes-no-value': ({ option, value }) => ({
    message: `Die Option ${option} hat keinen Wert, angegeben ist „${value}“.`,
    fix: `Nur ${option} schreiben.`,
  }),
  'option-value': ({ option, value, rule, allowed, file }) => ({
    message: `Die Option ${option} kann nicht „${value}“ sein${file ? `, wie es in ${file} steht` : ''}.`,
    fix: RULES[String(rule)]!(allowed),
  }),
  'option-twice': ({ option }) => ({
    message: `Die Option ${option} wurde zweimal angegeben.`,
    fix: 'Einmal angeben.',
  }),
  'plant-unknown': ({ option, plant, nearest }) => ({
    message: `${option} nennt ${plant}; diese Pflanze steht in keiner der Dateien.`,
    fix: `${meant(nearest)}Den Namen so schreiben, wie er in den Dateien steht.`,
  }),
  'wish-unclear': ({ option, value }) => ({
    message: `${option} „${value}“ kann als zwei Kreuzungen gelesen werden, denn es gibt Pflanzen mit beiden Namenspaaren.`,
    fix: 'Einer der Pflanzen in den Dateien einen anderen Namen geben.',
  }),
  'wish-without-flowers': ({ option }) => ({
    message: `Bei ${option} geht es um den Plan, und ohne Blütendatei gibt es keinen Plan.`,
    fix: '--flowers und eine Datei mit den Spalten seed_parent und flowers angeben, oder die Option weglassen.',
  }),
  'question-open': ({ cause, remedy, questions }) => ({
    message: `${Number(questions ?? 1) > 1 ? `${questions} Fragen` : 'Eine Frage'}, auf die nur Sie die Antwort wissen: ${cause}`,
    fix: String(remedy),
  }),
  'no-usable-row': ({ files, cause, remedy }) => ({
    message: `Keine Zeile von ${files} ist verwendbar.${cause ? ` ${cause}` : ''}`,
    fix: remedy
      ? String(remedy)
      : 'fruitodds check auf die Dateien anwenden: es nennt, was an jeder Zeile nicht stimmt.',
  }),
  'nothing-entered': ({ files, remedy }) => ({
    message: `In ${files} ist noch keine Blüte eingetragen.`,
    fix: String(remedy),
  }),
  'no-crosses': ({ files }) => ({
    message: `Unter ${files} ist keine Kreuzungsdatei.`,
    fix: 'Zuerst die Datei mit einer Zeile je bestäubter Blüte nennen. Eine Datei wird an ihren Spalten erkannt.',
  }),
  'no-usable-outcome': ({ rows }) => ({
    message: `Keine der ${rows} Zeilen hat schon ein Ergebnis: alle Etiketten sind verloren, es ist zu früh, oder es sind Kontrollen.`,
    fix: 'In die Spalte outcome fruit, dropped oder none schreiben, sobald die Blüten angesehen sind.',
  }),
  'no-plan': ({ cause }) => ({
    message: `Es gibt keinen Plan, aus dem ein Blatt zu machen wäre. ${cause}`,
    fix: 'Blütendatei und Röhrchendatei ansehen: ein Plan braucht Blüten, und Pollen, der sie erreicht.',
  }),
  'summary-has-no-rows': () => ({
    message:
      'Eine Zusammenfassung zeigt nichts über einzelne Pflanzen, also gibt es keine Zeilen zu schreiben.',
    fix: '--anonymous=codes schreiben, oder report, site oder analyse verwenden.',
  }),
  'key-without-anonymous': () => ({
    message: 'Die Option --key nennt den Schlüssel einer kodierten Kopie, und es wird keine verlangt.',
    fix: '--anonymous ergänzen, oder --key weglassen.',
  }),
  'answer-too-long': () => ({
    message:
      'Die Antwort ist länger, als ein Text sein kann: in den Dateien wurde zu viel gefunden, um alles auf einmal zu schreiben.',
    fix: 'Erst beheben, was fruitodds check nennt, oder weniger Dateien auf einmal angeben; ohne --json ist die Antwort kürzer.',
  }),
  'internal-fault': ({ cause }) => ({
    message: `In fruitodds selbst ging etwas schief: ${cause}.`,
    fix: 'Das ist ein Fehler des Programms, nicht Ihrer Dateien. Bitte mit dieser Meldung berichten.',
  }),
};

export function failureWords(code: FailureCode, details: FailureDetails): FailureWords {
  const all: Readonly<Record<FailureCode, Sentence>> = { ...FAILURES, ...FILE_FAILURES };
  return all[code](details);
}

export function refusalDetails(refusal: Refusal, season: Season): FailureDetails {
  return detailsOf(refusal, season, { problemWords, joined, headed });
}
