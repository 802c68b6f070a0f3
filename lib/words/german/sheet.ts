/** Das Kreuzungsblatt in Worten. */

import type { SheetFlower } from '../../decisions/crossing-sheet.ts';
import type { Mix } from '../../decisions/mix.ts';
import { crossesUnmet } from '../told/sheet.ts';
import { pairName } from './choice-figures.ts';
import { daySaid } from './dates.ts';
import { flowersIn } from './nouns.ts';
import { counted, joined } from './numbers.ts';
import { mixGives, mixLabel } from './plan.ts';
import { storageLabel } from './storage.ts';

export function morningSaid(morning: string | null): string {
  return morning === null ? 'An irgendeinem Morgen' : daySaid(morning);
}

export function pollenToTake({
  storage,
  vial,
  pollenThere,
}: Pick<SheetFlower, 'storage' | 'vial' | 'pollenThere'>): string {
  if (vial === null) return pollenThere ? 'frisch' : 'frisch, doch dann ist keiner zu erwarten';
  return storage === 'frozen' ? `${vial} auftauen` : `${vial}, ${storageLabel(storage)}`;
}

export function sheetAnswer(flowers: readonly SheetFlower[], mix: Mix): string {
  const mornings = new Set(flowers.map(({ morning }) => morning).filter((morning) => morning !== null)).size;
  const when = mornings === 0 ? '' : ` an ${counted(mornings, 'Morgen', 'Morgen')}`;
  return `${flowersIn(flowers.length)}${when}, nach der Mischung „${mixLabel(mix.name)}“: zu erwarten ${mixGives(mix)}.`;
}

export function vialsToTake(flowers: readonly SheetFlower[]): string {
  const vials = new Map<string, SheetFlower[]>();
  for (const flower of flowers) {
    if (flower.vial !== null) vials.set(flower.vial, [...(vials.get(flower.vial) ?? []), flower]);
  }
  if (vials.size === 0) return 'Frischer Pollen reicht für alle Blüten: kein Röhrchen ist nötig.';
  const named = [...vials].map(
    ([vial, own]) => `${vial} (${own[0]!.pollenParent}) für ${flowersIn(own.length)}`,
  );
  return `Nötige Röhrchen: ${joined(named)}.`;
}

export function unmetSaid(sheet: readonly SheetFlower[]): string {
  const crosses = crossesUnmet(sheet);
  if (crosses.length === 0) return '';
  const all = crosses.reduce((sum, { flowers }) => sum + flowers, 0);
  const named = crosses.map(({ flowers, ...pair }) => `${pairName(pair)} (${flowersIn(flowers)})`);
  return (
    `Für ${flowersIn(all)} fand sich kein Morgen, an dem auch der Pollenspender blühen dürfte: ${joined(named)}. ` +
    'Aufbewahrten Pollen des Spenders nehmen, oder anderen.'
  );
}

export function byMorning(
  flowers: readonly SheetFlower[],
): readonly { readonly morning: string; readonly flowers: readonly SheetFlower[] }[] {
  const mornings = [...new Set(flowers.map(({ morning }) => morning))];
  return mornings.map((morning) => ({
    morning: morningSaid(morning),
    flowers: flowers.filter((flower) => flower.morning === morning),
  }));
}

export function sheetNote({ morning, pollenParent, pollenThere }: SheetFlower): string {
  if (morning === null) return '';
  return `geplant für ${morning}${pollenThere ? '' : `; von ${pollenParent} ist dann keine Blüte zu erwarten`}`;
}

export function tagText(flower: SheetFlower): string {
  return `${pairName(flower)}, ${flower.vial ?? 'frisch'}`;
}
