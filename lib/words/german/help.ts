/** Was `fruitodds --help` sagt. */

export const helpWords = {
  title: 'fruitodds: Fruchtansatz von Handbestäubungen, von der Tabelle einer Saison zum Bericht.',
  commands: {
    check: 'was in den Dateien nicht stimmt, Zeile für Zeile',
    analyse: 'die Zahlen: Fruchtansatz, frisch gegen gelagert, Röhrchen',
    report: 'der Bericht, eine Seite zum Lesen, Drucken oder Verschicken',
    site: 'alle Seiten über die Saison, mit Dateien zum Herunterladen',
    sheet: 'der Plan der nächsten Saison zum Drucken; AUSGABE.csv: zum Ausfüllen',
    clean: 'die Dateien, wie sie verstanden wurden, sauber und beschrieben',
    template: 'leere Dateien zum Ausfüllen, die Spalten erklärt, ein Beispiel',
  },
  files:
    'Dateien sind CSV oder .xlsx; was eine enthält, sagen ihre Spalten. - liest die Standardeingabe. Zum Beispiel:',
  options: 'Optionen (ohne Angabe gilt, was in Klammern steht):',
  option: {
    vials: 'die Datei der Röhrchen mit gelagertem Pollen',
    flowers: 'die Datei der Blüten, die nächste Saison erwartet werden',
    json: 'das Ergebnis als JSON ausgeben',
    csv: 'mit `check`: was gefunden wurde als CSV ausgeben, eine Zeile je Fund',
    output: 'wohin: bei `report` und `sheet` eine Seite, sonst ein Ordner (auch -o)',
    'use-on': 'Tag, an dem der Pollen verwendet werden soll (ein Jahr nach der letzten Bestäubung)',
    'as-of': 'Tag, bis zu dem etwas geschehen ist (das späteste Datum der Dateien)',
    'date-order': 'wie Daten wie 03/04/2025 gemeint sind: dmy, mdy oder ymd',
    'date-system': 'ab welchem Jahr die Tabelle ihre Tageszahlen zählt: 1900 oder 1904 (1900)',
    map: 'einen eigenen Spaltenkopf als eine der Spalten lesen',
    same: 'zwei Namen einer Pflanze; der erste bleibt',
    storage: 'ein eigenes Wort für die Lagerung als fresh, room, refrigerated oder frozen lesen',
    level: 'Niveau der Spannen (0.95)',
    endpoint: 'initial: Früchte bei der Kontrolle; final: geerntete Früchte (initial)',
    'age-scale': 'Skala des Pollenalters: days oder log1p-days',
    worth: 'geringster Fruchtansatz, der eine Blüte wert ist, etwa 0.2 (die Hälfte von frisch)',
    'same-plants': 'Pflanzen verschiedener Züchter mit demselben Namen sind eine Pflanze',
    mix: 'bei `sheet`: most-fruit, balanced oder most-varieties (balanced)',
    must: 'Plan: die Kreuzung A × B bekommt mindestens 2 Blüten',
    'at-most': 'Plan: höchstens 5 Blüten bekommen Pollen von A; "A x B=5": von B auf A',
    settings: 'Optionen aus einer gespeicherten Datei nehmen; die hier angegebenen gehen vor',
    'save-settings': 'speichern, was über die Dateien gesagt wurde, für nächstes Jahr',
    language: 'Sprache der Seiten, Meldungen und Spaltenköpfe: en, de, es oder fr (en)',
    anonymous: 'eine kodierte Kopie zum Weitergeben; summary: ohne einzelne Pflanzen (codes)',
    key: 'wo der Schlüssel solcher Kopien aufbewahrt wird (fruitodds-key.json)',
    help: 'diesen Text zeigen (auch -h)',
    version: 'die Version zeigen',
  },
  status:
    'Rückgabewert: 0 in Ordnung; 1 getan, mit Fehlern oder Warnungen in den Dateien; 2 es ließ sich nichts tun.',
};

const PLACEHOLDERS: ReadonlyMap<string, string> = new Map([
  ['FILE', 'DATEI'],
  ['OUT', 'AUSGABE'],
  ['FOLDER', 'ORDNER'],
  ['DATE', 'DATUM'],
  ['ORDER', 'FOLGE'],
  ['YEAR', 'JAHR'],
  ['"HEADER=column"', '"KOPF=Spalte"'],
  ['LEVEL', 'NIVEAU'],
  ['ENDPOINT', 'ENDPUNKT'],
  ['SCALE', 'SKALA'],
  ['MIX', 'MISCHUNG'],
  ['LANGUAGE', 'SPRACHE'],
]);

export function placeholder(typed: string): string {
  return PLACEHOLDERS.get(typed) ?? typed;
}
