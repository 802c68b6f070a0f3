/** The crossing sheet: one line a flower, morning by morning. */
import type { SheetFlower } from '../../decisions/crossing-sheet.ts';
import type { Mix } from '../../decisions/mix.ts';
import { crossesUnmet } from '../told/sheet.ts';
import { pairName } from './choice-figures.ts';
import { daySaid } from './dates.ts';
import { counted, joined } from './numbers.ts';
import { mixGives, mixLabel } from './plan.ts';
import { storageLabel } from './storage.ts';

/** "12 juin 2027", "1er juin 2027". */
export function morningSaid(morning: string | null): string {
  return morning === null ? 'N’importe quel matin' : daySaid(morning);
}

/** Which pollen to take: fresh, or a vial to thaw. */
export function pollenToTake({
  storage,
  vial,
  pollenThere,
}: Pick<SheetFlower, 'storage' | 'vial' | 'pollenThere'>): string {
  if (vial === null) return pollenThere ? 'frais' : 'frais, mais aucun n’est attendu alors';
  return storage === 'frozen' ? `décongeler ${vial}` : `${vial}, ${storageLabel(storage)}`;
}

/** How many flowers and mornings, and what they could give. */
export function sheetAnswer(flowers: readonly SheetFlower[], mix: Mix): string {
  const mornings = new Set(flowers.map(({ morning }) => morning).filter((morning) => morning !== null)).size;
  const when = mornings === 0 ? '' : ` en ${counted(mornings, 'matin')}`;
  return `${counted(flowers.length, 'fleur')}${when}, selon le partage « ${mixLabel(mix.name)} » : ${mixGives(mix)} à attendre.`;
}

/** Vials to take out, with the number of flowers each serves. */
export function vialsToTake(flowers: readonly SheetFlower[]): string {
  const vials = new Map<string, SheetFlower[]>();
  for (const flower of flowers) {
    if (flower.vial !== null) vials.set(flower.vial, [...(vials.get(flower.vial) ?? []), flower]);
  }
  if (vials.size === 0) return 'Le pollen frais suffit à toutes les fleurs : aucun tube n’est nécessaire.';
  const named = [...vials].map(
    ([vial, own]) => `${vial} (${own[0]!.pollenParent}) pour ${counted(own.length, 'fleur')}`,
  );
  return `Tubes nécessaires : ${joined(named)}.`;
}

/** Crosses for which no common morning was found. */
export function unmetSaid(sheet: readonly SheetFlower[]): string {
  const crosses = crossesUnmet(sheet);
  if (crosses.length === 0) return '';
  const all = crosses.reduce((sum, { flowers }) => sum + flowers, 0);
  const named = crosses.map(({ flowers, ...pair }) => `${pairName(pair)} (${counted(flowers, 'fleur')})`);
  return (
    `Pour ${counted(all, 'fleur')}, aucun matin n’a été trouvé où le père devrait fleurir aussi : ${joined(named)}. ` +
    'Prendre du pollen du père mis de côté, ou un autre pollen.'
  );
}

/** Flowers by morning, in the order of the sheet. */
export function byMorning(
  flowers: readonly SheetFlower[],
): readonly { readonly morning: string; readonly flowers: readonly SheetFlower[] }[] {
  const mornings = [...new Set(flowers.map(({ morning }) => morning))];
  return mornings.map((morning) => ({
    morning: morningSaid(morning),
    flowers: flowers.filter((flower) => flower.morning === morning),
  }));
}

/** The note of a line in the file. */
export function sheetNote({ morning, pollenParent, pollenThere }: SheetFlower): string {
  if (morning === null) return '';
  return `prévu pour le ${morning}${pollenThere ? '' : ` ; aucune fleur de ${pollenParent} n’est attendue alors`}`;
}

/** What stands on the tag. */
export function tagText(flower: SheetFlower): string {
  return `${pairName(flower)}, ${flower.vial ?? 'frais'}`;
}
