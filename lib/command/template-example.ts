import type { KnownKind } from '../season/columns.ts';

type Row = Readonly<Record<string, string>>;

const COMMON = { season: '2026', grower: 'Ivo', wave: '1', bagged: 'yes' };

/** What the notes of the example are about, and each in the language of the template. */
type Note = 'late' | 'lost' | 'silica';
type Notes = Readonly<Record<Note, string>>;

const CROSSES: readonly Row[] = [
  {
    ...COMMON,
    ...{
      cross_id: 'T-001',
      pollination_date: '2026-06-20',
      seed_parent: 'Lantern Creek',
      pollen_parent: 'Salt Moon',
    },
    ...{ storage: 'fresh', outcome: 'fruit', checked_on: '2026-07-06', harvested_on: '2026-08-15' },
    ...{ seeds: '212', sown: '50', germinated: '31', fruit_weight_g: '184.5', identified_by: 'Mara' },
  },
  {
    ...COMMON,
    ...{
      cross_id: 'T-002',
      pollination_date: '2026-06-20',
      seed_parent: 'Salt Moon',
      pollen_parent: 'Lantern Creek',
    },
    ...{ storage: 'fresh', outcome: 'none', checked_on: '2026-07-06', note: 'late' },
  },
  {
    ...COMMON,
    ...{
      cross_id: 'T-003',
      pollination_date: '2026-06-21',
      seed_parent: 'Lantern Creek',
      pollen_parent: 'Owl Hour',
    },
    ...{
      storage: 'frozen',
      vial: 'F-01',
      pollen_collected: '2025-07-02',
      outcome: 'dropped',
      checked_on: '2026-07-06',
    },
  },
  {
    ...COMMON,
    ...{
      cross_id: 'T-004',
      pollination_date: '2026-06-21',
      seed_parent: 'Salt Moon',
      pollen_parent: 'Owl Hour',
    },
    ...{ storage: 'refrigerated', pollen_age_days: '9', outcome: 'unknown', note: 'lost' },
  },
  {
    ...COMMON,
    ...{
      cross_id: 'T-005',
      pollination_date: '2026-06-22',
      seed_parent: 'Owl Hour',
      pollen_parent: 'Owl Hour',
    },
    ...{ storage: 'fresh', control: 'selfed', outcome: 'none', checked_on: '2026-07-07' },
  },
  {
    ...COMMON,
    ...{
      cross_id: 'T-006',
      pollination_date: '2026-06-22',
      seed_parent: 'Owl Hour',
      control: 'unpollinated',
    },
    ...{ outcome: 'none', checked_on: '2026-07-07' },
  },
  {
    ...COMMON,
    ...{
      cross_id: 'T-007',
      pollination_date: '2026-08-14',
      seed_parent: 'Owl Hour',
      pollen_parent: 'Salt Moon',
    },
    ...{ wave: '2', storage: 'frozen', vial: 'F-02', outcome: 'pending' },
  },
];

const VIALS: readonly Row[] = [
  {
    ...{ vial: 'F-01', pollen_parent: 'Owl Hour', collected: '2025-07-02', storage: 'frozen' },
    ...{ doses_left: '4', doses_filled: '5', thaws: '1' },
  },
  {
    ...{ vial: 'F-02', pollen_parent: 'Salt Moon', collected: '2026-06-19', storage: 'frozen' },
    ...{ doses_left: '6', doses_filled: '7', thaws: '1', note: 'silica' },
  },
];

const FLOWERS: readonly Row[] = [
  { seed_parent: 'Lantern Creek', flowers: '6', opens_from: '2027-06-10', opens_to: '2027-07-05' },
  { seed_parent: 'Salt Moon', flowers: '4' },
  { seed_parent: 'Owl Hour', flowers: '5', opens_from: '2027-06-20' },
];

/** Rows with what a note is about in words. */
function noted(rows: readonly Row[], notes: Notes): readonly Row[] {
  return rows.map(({ note, ...row }) => (note === undefined ? row : { ...row, note: notes[note as Note] }));
}

/** A few rows of each file, by our names of columns: invented plants, nothing to mend. */
export function exampleIn(notes: Notes): Readonly<Record<KnownKind, readonly Row[]>> {
  return { crosses: noted(CROSSES, notes), vials: noted(VIALS, notes), flowers: FLOWERS };
}
