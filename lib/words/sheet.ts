/** The crossing sheet in words: mornings, pollens, tags. */

import type { SheetFlower } from '../decisions/crossing-sheet.ts';
import type { Mix } from '../decisions/mix.ts';
import { pairName } from './choice-figures.ts';
import { counted, joined } from './numbers.ts';
import { mixGives, mixLabel } from './plan.ts';
import { storageLabel } from './storage.ts';
import { crossesUnmet } from './told/sheet.ts';

const MONTHS = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October'],
  ...['November', 'December'],
] as const;

/**
 * "10 June 2026"; where no day is known, "any morning".
 *
 * @example
 * morningSaid('2026-06-10'); // '10 June 2026'
 * morningSaid(null); // 'Any morning'
 */
export function morningSaid(morning: string | null): string {
  if (morning === null) return 'Any morning';
  const [year, month, day] = morning.split('-').map(Number);
  return `${day} ${MONTHS[month! - 1]} ${year}`;
}

/**
 * "fresh", or what to take out of the store: "thaw F-04", "R-02, refrigerated".
 *
 * @example
 * pollenToTake({ storage: 'frozen', vial: 'F-04', pollenThere: true }); // 'thaw F-04'
 * pollenToTake({ storage: 'refrigerated', vial: 'R-02', pollenThere: true }); // 'R-02, refrigerated'
 */
export function pollenToTake({
  storage,
  vial,
  pollenThere,
}: Pick<SheetFlower, 'storage' | 'vial' | 'pollenThere'>): string {
  if (vial === null) return pollenThere ? 'fresh' : 'fresh, though none is expected then';
  return storage === 'frozen' ? `thaw ${vial}` : `${vial}, ${storageLabel(storage)}`;
}

/**
 * What the sheet carries out, in one sentence.
 *
 * @example
 * const flower = { crossId: '2026-001', morning: '2026-06-10', seedParent: 'Salt Moon', pollenParent: 'Copper Tide', storage: 'frozen', vial: 'F-04', pollenThere: true };
 * sheetAnswer([flower], analysis.plan.frontier[0]); // '1 flower on 1 morning, by the mix “most fruit”: about 31 fruits of 8 crosses expected.'
 */
export function sheetAnswer(flowers: readonly SheetFlower[], mix: Mix): string {
  const mornings = new Set(flowers.map(({ morning }) => morning).filter((morning) => morning !== null)).size;
  const when = mornings === 0 ? '' : ` on ${counted(mornings, 'morning')}`;
  return `${counted(flowers.length, 'flower')}${when}, by the mix “${mixLabel(mix.name)}”: ${mixGives(mix)} expected.`;
}

/**
 * What to take out of the store, vial by vial: "F-04 (Copper Tide) for 2 flowers".
 *
 * @example
 * const flower = { crossId: '2026-001', morning: '2026-06-10', seedParent: 'Salt Moon', pollenParent: 'Copper Tide', storage: 'frozen', vial: 'F-04', pollenThere: true };
 * vialsToTake([flower, { ...flower, crossId: '2026-002' }]); // 'Vials that are needed: F-04 (Copper Tide) for 2 flowers.'
 */
export function vialsToTake(flowers: readonly SheetFlower[]): string {
  const vials = new Map<string, SheetFlower[]>();
  for (const flower of flowers) {
    if (flower.vial !== null) vials.set(flower.vial, [...(vials.get(flower.vial) ?? []), flower]);
  }
  if (vials.size === 0) return 'Fresh pollen serves all flowers: no vial is needed.';
  const named = [...vials].map(
    ([vial, own]) => `${vial} (${own[0]!.pollenParent}) for ${counted(own.length, 'flower')}`,
  );
  return `Vials that are needed: ${joined(named)}.`;
}

/**
 * Crosses that the sheet could give no morning on which both plants flower; empty where there is none.
 *
 * @example
 * const flower = { crossId: '2026-001', seedParent: 'Salt Moon', pollenParent: 'Old Ferry', vial: null, pollenThere: false };
 * unmetSaid([flower]); // 'For 1 flower no morning was found on which its father is expected to flower too: Salt Moon × Old Ferry (1 flower). Use…'
 */
export function unmetSaid(sheet: readonly SheetFlower[]): string {
  const crosses = crossesUnmet(sheet);
  if (crosses.length === 0) return '';
  const all = crosses.reduce((sum, { flowers }) => sum + flowers, 0);
  const named = crosses.map(({ flowers, ...pair }) => `${pairName(pair)} (${counted(flowers, 'flower')})`);
  return (
    `For ${counted(all, 'flower')} no morning was found on which ${all === 1 ? 'its' : 'their'} father is expected to flower too: ${joined(named)}. ` +
    'Use pollen of the father that was kept, or other pollen.'
  );
}

/**
 * Flowers by morning, in the order of the sheet.
 *
 * @example
 * const flower = { crossId: '2026-001', morning: '2026-06-10', seedParent: 'Salt Moon', pollenParent: 'Copper Tide', storage: 'frozen', vial: 'F-04', pollenThere: true };
 * byMorning([flower]).map(({ morning, flowers }) => [morning, flowers.length]); // [['10 June 2026', 1]]
 */
export function byMorning(
  flowers: readonly SheetFlower[],
): readonly { readonly morning: string; readonly flowers: readonly SheetFlower[] }[] {
  const mornings = [...new Set(flowers.map(({ morning }) => morning))];
  return mornings.map((morning) => ({
    morning: morningSaid(morning),
    flowers: flowers.filter((flower) => flower.morning === morning),
  }));
}

/**
 * The note of a flower in the sheet's file: the morning it was planned for, and that its fresh pollen is not expected then.
 *
 * @example sheetNote({ morning: '2026-06-10', pollenThere: true }) // 'planned for 2026-06-10'
 */
export function sheetNote({ morning, pollenParent, pollenThere }: SheetFlower): string {
  if (morning === null) return '';
  return `planned for ${morning}${pollenThere ? '' : `; no flower of ${pollenParent} is expected then`}`;
}

/**
 * What is written on a tag below its number.
 *
 * @example tagText({ seedParent: 'Salt Moon', pollenParent: 'Copper Tide', vial: 'F-04' }) // 'Salt Moon × Copper Tide, F-04'
 */
export function tagText(flower: SheetFlower): string {
  return `${pairName(flower)}, ${flower.vial ?? 'fresh'}`;
}
