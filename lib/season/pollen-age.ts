/** How old the pollen was when it was used: from its date, the days given, or the register of vials. */

import { daysBetween } from './dates.ts';
import type { RowCells } from './row-cells.ts';
import type { Cross, Vial } from './season.ts';

/** What the vials files say. */
export interface VialRegister {
  /** Whether there is any vials file. */
  readonly given: boolean;
  /** Every vial that one names, also in rows that are left out. */
  readonly named: ReadonlySet<string>;
  /** The vials whose rows are sound. */
  readonly vials: ReadonlyMap<string, Vial>;
}

/** Ten years, the longest that anybody is expected to keep pollen in a freezer. */
const TEN_YEARS_DAYS = 3653;
/** Pollen gathered in the evening and used the next morning is still called fresh. */
const FRESH_DAYS = 1;

interface AgeSource {
  readonly column: 'pollen_collected' | 'pollen_age_days' | 'vial';
  readonly days: number;
}

/** Days from a collection date, or null with a warning where it lies after the pollination. */
function daysSince(
  collected: string,
  { pollinationDate, vial }: Cross,
  cells: RowCells,
  column: AgeSource['column'],
): number | null {
  const days = daysBetween(collected, pollinationDate);
  if (days >= 0) return days;
  const code = column === 'vial' ? 'vial-before-collected' : 'collected-after-pollination';
  cells.report('warning', code, { column, details: { collected, pollinationDate, vial: vial ?? '' } });
  return null;
}

function freshAge(cross: Cross, cells: RowCells): 0 {
  const { pollenCollected, ageDays: given } = cross;
  const days = pollenCollected === null ? null : daysSince(pollenCollected, cross, cells, 'pollen_collected');
  const column = days === null ? 'pollen_age_days' : 'pollen_collected';
  const oldest = days ?? given;
  if (oldest !== null && oldest > FRESH_DAYS) {
    cells.report('warning', 'fresh-collected-earlier', { column, details: { days: oldest } });
  }
  return 0;
}

/** What the register says of a cross's vial against what its row says. */
function compareVial({ pollenParent, storage }: Cross, vial: Vial, cells: RowCells): void {
  if (pollenParent !== null && vial.pollenParent !== pollenParent) {
    const details = { vial: vial.vial, cross: pollenParent, register: vial.pollenParent };
    cells.report('warning', 'vial-father-differs', { column: 'pollen_parent', details });
  }
  if (storage !== null && vial.storage !== storage) {
    const details = { vial: vial.vial, cross: storage, register: vial.storage };
    cells.report('warning', 'vial-storage-differs', { column: 'storage', details });
  }
}

function registeredVial(cross: Cross, register: VialRegister, cells: RowCells): Vial | undefined {
  if (cross.vial === null) return undefined;
  const vial = register.vials.get(cross.vial);
  if (vial !== undefined) compareVial(cross, vial, cells);
  else if (register.given && !register.named.has(cross.vial))
    cells.report('warning', 'vial-unknown', { column: 'vial' });
  return vial;
}

/** Every age that a stored cross has, the most trusted first: the date of its collection, the days given, its vial. */
function ageSources(cross: Cross, vial: Vial | undefined, cells: RowCells): AgeSource[] {
  const { pollenCollected, ageDays: given } = cross;
  const sources: AgeSource[] = [];
  const add = (column: AgeSource['column'], days: number | null): void => {
    if (days !== null) sources.push({ column, days });
  };
  if (pollenCollected !== null)
    add('pollen_collected', daysSince(pollenCollected, cross, cells, 'pollen_collected'));
  add('pollen_age_days', given);
  if (vial !== undefined) add('vial', daysSince(vial.collected, cross, cells, 'vial'));
  return sources;
}

function storedAge(cross: Cross, vial: Vial | undefined, cells: RowCells): number | null {
  const sources = ageSources(cross, vial, cells);
  if (sources.length === 0) {
    // An impossible date or an unknown vial has been reported already: one fault, one finding.
    const reported = cells.reported('pollen_collected', 'pollen_age_days', 'vial');
    if (!reported) cells.report('warning', 'age-missing', { details: { vial: cross.vial ?? '' } });
    return null;
  }
  const [used] = sources;
  const other = sources.find(({ days }) => days !== used.days);
  if (other !== undefined) {
    const details = { days: used.days, usedColumn: used.column, otherDays: other.days };
    cells.report('warning', 'age-disagrees', { column: other.column, details });
  }
  if (used.days > TEN_YEARS_DAYS) {
    cells.report('warning', 'age-over-ten-years', { column: used.column, details: { days: used.days } });
  }
  return used.days;
}

/**
 * Whole days from collection to pollination: 0 for fresh pollen by definition, null where nothing tells it (the row
 * then counts in raw rates, never in models of age).
 */
export function pollenAge(cross: Cross, register: VialRegister, cells: RowCells): number | null {
  if (cross.control === 'unpollinated') return null;
  const vial = registeredVial(cross, register, cells);
  return cross.storage === 'fresh' ? freshAge(cross, cells) : storedAge(cross, vial, cells);
}
