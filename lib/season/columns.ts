/** The columns of the three files: their names, what else growers call them, and what a cell of each holds. */

import type { FileKind } from './season.ts';

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
  'mother, mother plant, female, female parent, seed plant, pod parent, maternal parent, ♀, Mutter, Mutterpflanze, madre, planta madre, mère, plante mère';
const FATHER =
  'father, father plant, male, male parent, pollen donor, pollen plant, donor, paternal parent, ♂, Vater, Vaterpflanze, padre, planta padre, père, plante père';
const STORAGE = 'pollen storage, storage method, stored, method, Lagerung, almacenamiento, stockage';
const VIAL = 'vial id, vial no, vial number, pollen vial, tube, tube id, lot, pollen lot, Röhrchen, tubo';
const NOTE =
  'notes, comment, comments, remark, remarks, Bemerkung, Notiz, nota, notas, observaciones, remarque';

/** Every column of every kind of file, in the order in which a template shows them. */
export const COLUMNS: Readonly<Record<KnownKind, readonly Column[]>> = {
  crosses: [
    must(
      'cross_id',
      'name',
      'tag, tag id, tag no, tag number, label, id, cross, cross no, cross number, Etikett, etiqueta, étiquette',
    ),
    must(
      'pollination_date',
      'date',
      'date pollinated, date of pollination, pollinated on, date, Bestäubungsdatum, bestäubt am, fecha de polinización, date de pollinisation',
    ),
    must('seed_parent', 'name', MOTHER),
    must('pollen_parent', 'name', FATHER),
    must('storage', 'word', STORAGE),
    may(
      'pollen_collected',
      'date',
      'pollen date, date collected, collected, collected on, collection date, date of collection, pollen collected on, pollen collection date, gesammelt am, fecha de recolección, date de récolte du pollen',
    ),
    may('pollen_age_days', 'count', 'pollen age, age days, age in days, age'),
    may('vial', 'name', VIAL),
    must('outcome', 'word', 'result, fruit set, Ergebnis, resultado, résultat'),
    may('season', 'text', 'year, Saison, temporada, saison'),
    may('grower', 'text', 'grower name, Züchter, cultivador, cultivateur'),
    may('wave', 'text', 'flush'),
    may('checked_on', 'date', 'date checked, check date, kontrolliert am'),
    may(
      'harvested_on',
      'date',
      'date harvested, harvest date, geerntet am, fecha de cosecha, date de récolte',
    ),
    may('bagged', 'yes-no', 'bag'),
    may('control', 'word'),
    may('seeds', 'count', 'seed count, seed number, number of seeds, Samen, semillas, graines'),
    may('sown', 'count', 'seeds sown'),
    may('germinated', 'count', 'seeds germinated'),
    may(
      'fruit_weight_g',
      'decimal',
      'fruit weight, fruit weight in g, weight g, weight, Fruchtgewicht, peso, poids',
    ),
    may('identified_by', 'text'),
    may('note', 'text', NOTE),
  ],
  vials: [
    must('vial', 'name', `${VIAL}, id`),
    must('pollen_parent', 'name', `${FATHER}, plant, parent`),
    must(
      'collected',
      'date',
      'collected on, date collected, collection date, date of collection, pollen collected, pollen date, date, gesammelt am',
    ),
    must('storage', 'word', STORAGE),
    may('doses_left', 'count', 'doses, doses remaining, flowers left'),
    may('thaws', 'count', 'times thawed, number of thaws'),
    may('note', 'text', NOTE),
  ],
  flowers: [
    must('seed_parent', 'name', `${MOTHER}, plant`),
    must(
      'flowers',
      'count',
      'expected flowers, flowers expected, number of flowers, flower count, Blüten, flores, fleurs',
    ),
    may('opens_from', 'date', 'opens, from, first flower'),
    may('opens_to', 'date', 'to, until, last flower'),
  ],
};

/** The kinds of file in the order in which a tie is decided. */
export const KINDS: readonly KnownKind[] = ['crosses', 'vials', 'flowers'];

/**
 * A header as it is compared: lower case, without accents, spaces, dashes, underscores and brackets.
 *
 * @example foldHeader('Pollination Date') // 'pollinationdate'
 */
export function foldHeader(header: string): string {
  const lower = header.trim().normalize('NFKD').toLowerCase();
  // A header of signs only is compared as it stands.
  return lower.replace(/[^\p{L}\p{N}♀♂]/gu, '') || lower;
}

const byHeader = new Map(KINDS.map((kind) => [kind, headerTable(COLUMNS[kind])]));

function headerTable(columns: readonly Column[]): Map<string, Column> {
  const table = new Map<string, Column>();
  for (const known of columns) for (const synonym of known.synonyms) table.set(foldHeader(synonym), known);
  for (const known of columns) table.set(foldHeader(known.name), known);
  return table;
}

/** The column that a header names in a kind of file, by its own name or by a synonym; undefined where none. */
export function columnNamed(header: string, kind: KnownKind): Column | undefined {
  return byHeader.get(kind)!.get(foldHeader(header));
}
