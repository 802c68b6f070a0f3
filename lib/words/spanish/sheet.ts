/** The crossing sheet in words: mornings, pollens, tags. */

import type { SheetFlower } from '../../decisions/crossing-sheet.ts';
import type { Mix } from '../../decisions/mix.ts';
import { crossesUnmet } from '../told/sheet.ts';
import { pairName } from './choice-figures.ts';
import { daySaid } from './dates.ts';
import { flowersIn } from './nouns.ts';
import { counted, joined } from './numbers.ts';
import { mixGives, mixLabel } from './plan.ts';
import { storageLabel } from './storage.ts';

/** "10 de junio de 2026"; where no day is known, "Cualquier mañana". */
export function morningSaid(morning: string | null): string {
  return morning === null ? 'Cualquier mañana' : daySaid(morning);
}

/** "fresco", or what to take out of the store: "descongelar F-04". */
export function pollenToTake({
  storage,
  vial,
  pollenThere,
}: Pick<SheetFlower, 'storage' | 'vial' | 'pollenThere'>): string {
  if (vial === null) return pollenThere ? 'fresco' : 'fresco, aunque entonces no se espera';
  return storage === 'frozen' ? `descongelar ${vial}` : `${vial}, ${storageLabel(storage)}`;
}

export function sheetAnswer(flowers: readonly SheetFlower[], mix: Mix): string {
  const mornings = new Set(flowers.map(({ morning }) => morning).filter((morning) => morning !== null)).size;
  const when = mornings === 0 ? '' : ` en ${counted(mornings, 'mañana', 'mañanas')}`;
  return `${flowersIn(flowers.length)}${when}, según el reparto «${mixLabel(mix.name)}»: cabe esperar ${mixGives(mix)}.`;
}

export function vialsToTake(flowers: readonly SheetFlower[]): string {
  const vials = new Map<string, SheetFlower[]>();
  for (const flower of flowers) {
    if (flower.vial !== null) vials.set(flower.vial, [...(vials.get(flower.vial) ?? []), flower]);
  }
  if (vials.size === 0) return 'El polen fresco sirve para todas las flores: no hace falta ningún vial.';
  const named = [...vials].map(
    ([vial, own]) => `${vial} (${own[0]!.pollenParent}) para ${flowersIn(own.length)}`,
  );
  return `Viales que hacen falta: ${joined(named)}.`;
}

/** Crosses for which no common morning was found; empty where there is none. */
export function unmetSaid(sheet: readonly SheetFlower[]): string {
  const crosses = crossesUnmet(sheet);
  if (crosses.length === 0) return '';
  const all = crosses.reduce((sum, { flowers }) => sum + flowers, 0);
  const named = crosses.map(({ flowers, ...pair }) => `${pairName(pair)} (${flowersIn(flowers)})`);
  return (
    `Para ${flowersIn(all)} no se encontró ninguna mañana en la que se espere que florezca también el padre: ${joined(named)}. ` +
    'Conviene usar polen guardado del padre, u otro polen.'
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

/** The note of a flower in the sheet's file: the morning it was planned for. */
export function sheetNote({ morning, pollenParent, pollenThere }: SheetFlower): string {
  if (morning === null) return '';
  return `prevista para ${morning}${pollenThere ? '' : `; entonces no se espera ninguna flor de ${pollenParent}`}`;
}

/** What is written on a tag below its number. */
export function tagText(flower: SheetFlower): string {
  return `${pairName(flower)}, ${flower.vial ?? 'fresco'}`;
}
