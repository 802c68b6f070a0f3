/** The columns of the three files: their names, what else growers call them, and what a cell of each holds. */

import type { FileKind } from './season.ts';
import { speltOut } from './umlauts.ts';
import { hasUnits, unitFactor } from './units.ts';

export type CellKind = 'name' | 'text' | 'date' | 'count' | 'decimal' | 'word' | 'yes-no';

/** One column of a file as the project names it. */
export interface Column {
  readonly name: string;
  readonly required: boolean;
  readonly cell: CellKind;
  /** What else growers write above it, in any case, with any spaces, dashes or underscores. */
  readonly synonyms: readonly string[];
}

export type KnownKind = Exclude<FileKind, 'unknown'>;

const must = (name: string, cell: CellKind, synonyms: string): Column => column(name, true, cell, synonyms);
const may = (name: string, cell: CellKind, synonyms = ''): Column => column(name, false, cell, synonyms);

function column(name: string, required: boolean, cell: CellKind, synonyms: string): Column {
  return { name, required, cell, synonyms: synonyms === '' ? [] : synonyms.split(', ') };
}

const MOTHER =
  'mother, mother plant, mom, mum, female, female parent, seed plant, pod parent, maternal parent, ♀, ' +
  'Mutter, Mutterpflanze, Samenmutter, Samenpflanze, weiblich, madre, planta madre, planta semillera, parental femenino, hembra, ' +
  'mère, plante mère, parent femelle, femelle';
const FATHER =
  'father, father plant, dad, male, male parent, pollen donor, pollen plant, donor, paternal parent, ♂, ' +
  'Vater, Vaterpflanze, Pollenspender, Pollenpflanze, männlich, padre, planta padre, donante, donante de polen, ' +
  'parental masculino, macho, père, plante père, donneur, donneur de pollen, parent mâle, mâle';
const STORAGE =
  'pollen storage, storage method, pollen type, type of pollen, fresh/frozen, fresh or frozen, stored, method, kept, kept in, stored in, how stored, ' +
  'Lagerung, Pollenlagerung, Pollenart, Pollenzustand, frisch/TK, frisch oder TK, gelagert, aufbewahrt, aufbewahrt in, Aufbewahrung, almacenamiento, conservación, conservado en, guardado en, tipo de polen, ' +
  'type de pollen, stockage, conservation, conservé, conservé dans';
const VIAL =
  'vial id, vial no, vial number, pollen vial, tube, tube id, lot, pollen lot, ' +
  'Röhrchen, Pollenröhrchen, Pollencharge, tubo, tubo de polen, vial de polen, lote, tube de pollen';
const NOTE =
  'notes, comment, comments, remark, remarks, Bemerkung, Bemerkungen, Notiz, Notizen, Anmerkung, nota, notas, observaciones, ' +
  'comentario, comentarios, remarque, remarques, commentaire, commentaires';
const COLLECTED =
  'collected on, date collected, collection date, date of collection, pollen date, pollen collected on, pollen collection date, ' +
  'pollen from, gesammelt, gesammelt am, Pollen vom, Pollendatum, Sammeldatum, Pollen gesammelt, fecha de recolección, recolectado, ' +
  'recolectado el, polen recolectado, polen recolectado el, polen del, polen de fecha, fecha del polen, Pollen gesammelt am, ' +
  'date de récolte du pollen, récolté le, pollen récolté, pollen récolté le, pollen du, date du pollen';

/** Every column of every kind of file, in the order in which a template shows them. */
export const COLUMNS: Readonly<Record<KnownKind, readonly Column[]>> = {
  crosses: [
    must(
      'cross_id',
      'name',
      'tag, tag id, tag no, tag number, label, id, no, number, cross, cross no, cross number, ' +
        'Etikett, Etikettnummer, Kreuzung, Kreuzungsnummer, Kreuzung Nr, Nummer, Nr, etiqueta, número de etiqueta, número, cruce, ' +
        'cruza, ' +
        'étiquette, numéro, n°, croisement',
    ),
    must(
      'pollination_date',
      'date',
      'date pollinated, date of pollination, pollinated on, pollinated, date, Bestäubungsdatum, bestäubt am, bestäubt, Datum, ' +
        'fecha de polinización, polinizado el, fecha, date de pollinisation, pollinisé le',
    ),
    must('seed_parent', 'name', MOTHER),
    must('pollen_parent', 'name', FATHER),
    must('storage', 'word', STORAGE),
    may('pollen_collected', 'date', `collected, ${COLLECTED}`),
    may(
      'pollen_age_days',
      'count',
      'pollen age, age days, age in days, age, Pollenalter, Alter, Alter in Tagen, edad del polen, edad, edad en días, ' +
        'âge du pollen, âge, âge en jours',
    ),
    may('vial', 'name', VIAL),
    must(
      'outcome',
      'word',
      'result, fruit set, fruit, set, set fruit, took, success, Ergebnis, Fruchtansatz, Frucht, Ansatz, angesetzt, Erfolg, ' +
        'resultado, cuajado, cuajó, fruto, éxito, résultat, nouaison, noué, réussite',
    ),
    may('season', 'text', 'year, Saison, Jahr, temporada, año, saison, année'),
    may('grower', 'text', 'grower name, Züchter, Gärtner, cultivador, productor, cultivateur, obtenteur'),
    may('wave', 'text', 'flush, Blütenwelle, Welle, oleada, ola, vague'),
    may(
      'checked_on',
      'date',
      'date checked, check date, checked, looked at, kontrolliert am, kontrolliert, geprüft am, Kontrolle, angesehen, ' +
        'revisado, revisado el, fecha de revisión, comprobado, contrôlé le, contrôlé, vérifié le, vérifié, date de contrôle',
    ),
    may(
      'harvested_on',
      'date',
      'date harvested, harvest date, harvested, geerntet am, geerntet, Erntedatum, fecha de cosecha, cosechado, cosechado el, ' +
        'date de récolte, cueilli le',
    ),
    may('bagged', 'yes-no', 'bag, eingetütet, verpackt, Tüte, embolsada, embolsado, ensaché, ensachée'),
    may('control', 'word', 'control type, Kontrollart, tipo de control, témoin'),
    may(
      'seeds',
      'count',
      'seed count, seed number, number of seeds, Samen, Samenzahl, Anzahl Samen, semillas, número de semillas, ' +
        'graines, nombre de graines',
    ),
    may(
      'sown',
      'count',
      'seeds sown, gesät, ausgesät, sembradas, semillas sembradas, semées, graines semées',
    ),
    may(
      'germinated',
      'count',
      'seeds germinated, gekeimt, germinadas, semillas germinadas, germées, graines germées',
    ),
    may(
      'fruit_weight_g',
      'decimal',
      'fruit weight, fruit weight in g, weight in g, weight, Fruchtgewicht, Gewicht, Gewicht in g, Fruchtgewicht in g, peso, peso del fruto, peso en g, poids, poids du fruit, poids en g',
    ),
    may('identified_by', 'text', 'bestimmt von, identificado por, identifié par'),
    may('note', 'text', NOTE),
  ],
  vials: [
    must('vial', 'name', `${VIAL}, id`),
    must('pollen_parent', 'name', `${FATHER}, plant, parent, Pflanze, planta, plante`),
    must('collected', 'date', `pollen collected, date, Datum, fecha, ${COLLECTED}`),
    must('storage', 'word', STORAGE),
    may(
      'doses_left',
      'count',
      'doses, doses remaining, flowers left, Dosen, Dosen übrig, restliche Dosen, dosis, dosis restantes, doses restantes',
    ),
    may(
      'doses_filled',
      'count',
      'doses made, doses total, total doses, doses at start, Dosen gesamt, Dosen abgefüllt, dosis totales, doses au total',
    ),
    may('thaws', 'count', 'times thawed, number of thaws, aufgetaut, descongelaciones, décongélations'),
    may('note', 'text', NOTE),
  ],
  flowers: [
    must('seed_parent', 'name', `${MOTHER}, plant, Pflanze, planta, plante`),
    must(
      'flowers',
      'count',
      'expected flowers, flowers expected, number of flowers, flower count, Blüten, Blütenzahl, erwartete Blüten, flores, ' +
        'número de flores, fleurs, nombre de fleurs',
    ),
    may(
      'opens_from',
      'date',
      'opens, from, first flower, von, ab, erste Blüte, desde, primera flor, première fleur',
    ),
    may(
      'opens_to',
      'date',
      'to, until, last flower, bis, letzte Blüte, hasta, última flor, jusque, dernière fleur',
    ),
  ],
};

/** The kinds of file in the order in which a tie is decided. */
export const KINDS: readonly KnownKind[] = ['crosses', 'vials', 'flowers'];

const ASCII = /^[\t -~]*$/;

/**
 * A header as it is compared: lower case, without accents, spaces, dashes, underscores and brackets.
 *
 * @example foldHeader('Pollination Date') // 'pollinationdate'
 */
export function foldHeader(header: string): string {
  if (ASCII.test(header)) {
    // Most headers are: the tables of Unicode need not be loaded for them.
    const plain = header.trim().toLowerCase();
    return plain.replace(/[^a-z0-9]/g, '') || plain;
  }
  const lower = header.trim().normalize('NFKD').toLowerCase();
  // A header of signs only is compared as it stands.
  return lower.replace(/[^\p{L}\p{N}♀♂]/gu, '') || lower;
}

const byHeader = new Map(KINDS.map((kind) => [kind, headerTable(COLUMNS[kind])]));

function headerTable(columns: readonly Column[]): Map<string, Column> {
  const table = new Map<string, Column>();
  for (const known of columns)
    for (const synonym of known.synonyms)
      for (const spelling of [speltOut(synonym), synonym]) table.set(foldHeader(spelling), known);
  for (const known of columns) table.set(foldHeader(known.name), known);
  return table;
}

/** What may stand in brackets behind a header: "Weight (g)", "Date (day/month)". */
const BRACKETS = /^(.+?)\s*[([]([^()[\]]*)[)\]]\s*[:?]?$/su;

/**
 * The column that a header names in a kind of file, by its own name or by a synonym, with or without what stands behind it
 * in brackets; undefined where none, or where the brackets name another unit than the column's.
 *
 * @example columnNamed('Weight (g)', 'crosses')?.name // 'fruit_weight_g'
 */
export function columnNamed(header: string, kind: KnownKind): Column | undefined {
  const table = byHeader.get(kind)!;
  const whole = table.get(foldHeader(header));
  const [, before, within] = (whole === undefined ? BRACKETS.exec(header) : null) ?? [];
  if (before === undefined) return whole;
  const column = table.get(foldHeader(before));
  const fits = column === undefined || !hasUnits(column.name) || unitFactor(column.name, within) === 1;
  return fits ? column : undefined;
}
